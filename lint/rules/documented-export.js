/** Every function, class and constant that leaves a file of the pure floors says in a docstring what it is. */
export default {
  meta: { type: 'problem', schema: [], messages: { missing: 'Exported {{name}} has no docstring' } },
  create(context) {
    const source = context.sourceCode;
    const isDocumented = (node) => source.getCommentsBefore(node).some(({ type, value }) => type === 'Block' && value.startsWith('*'));
    return {
      ExportNamedDeclaration(node) {
        const declaration = node.declaration;
        if (declaration === null || isDocumented(node)) return;
        if (declaration.type === 'TSTypeAliasDeclaration' || declaration.type === 'TSInterfaceDeclaration') return;
        const names = declaration.type === 'VariableDeclaration' ? declaration.declarations.map(({ id }) => id.name ?? 'value') : [declaration.id?.name ?? 'value'];
        for (const name of names) context.report({ node: declaration, messageId: 'missing', data: { name } });
      },
    };
  },
};
