/** A door (`src/<module>/index.ts`) re-exports by name and does nothing else. */
export default {
  meta: { type: 'problem', schema: [], messages: { other: 'A door re-exports by name and does nothing else' } },
  create(context) {
    return {
      'Program > *'(node) {
        const good = node.type === 'ExportNamedDeclaration' && node.source !== null;
        if (!good) context.report({ node, messageId: 'other' });
      },
    };
  },
};
