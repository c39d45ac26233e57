/** The browser's number field loses commas and changes figures under the mouse wheel. */
export default {
  meta: { type: 'problem', schema: [], messages: { number: 'No type="number": use a text field with inputMode="decimal"' } },
  create(context) {
    return {
      JSXAttribute(node) {
        if (node.name.name === 'type' && node.value?.type === 'Literal' && node.value.value === 'number') context.report({ node, messageId: 'number' });
      },
    };
  },
};
