/** Words on a screen come from the message catalogue: no letters as JSX text, nor in the attributes people read or hear. */
const READ = new Set(['aria-label', 'aria-description', 'aria-roledescription', 'alt', 'title', 'placeholder', 'label', 'description', 'errorMessage']);
const LETTERS = /\p{L}{2,}/u;

export default {
  meta: { type: 'problem', schema: [], messages: { words: 'Words on a screen come from the message catalogue: {{text}}' } },
  create(context) {
    const report = (node, text) => {
      if (LETTERS.test(text)) context.report({ node, messageId: 'words', data: { text: text.trim().slice(0, 40) } });
    };
    return {
      JSXText: (node) => { report(node, node.value); },
      JSXAttribute(node) {
        if (node.name.type === 'JSXIdentifier' && READ.has(node.name.name) && node.value?.type === 'Literal') report(node, String(node.value.value));
      },
    };
  },
};
