/** Colours stand in the token file alone. */
const COLOUR = /#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})\b|\b(?:rgb|rgba|hsl|hsla|oklch|oklab|lab|lch)\(/iu;

export default {
  meta: { type: 'problem', schema: [], messages: { colour: 'A literal colour; use a token: {{text}}' } },
  create(context) {
    const check = (node, text) => {
      const found = COLOUR.exec(text);
      if (found !== null) context.report({ node, messageId: 'colour', data: { text: found[0] } });
    };
    return {
      Literal(node) {
        if (typeof node.value === 'string') check(node, node.value);
      },
      TemplateElement(node) {
        check(node, node.value.raw);
      },
    };
  },
};
