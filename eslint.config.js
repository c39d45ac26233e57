import reactHooks from 'eslint-plugin-react-hooks';
import jsxA11y from 'eslint-plugin-jsx-a11y';
import tseslint from 'typescript-eslint';
import catalogueOnly from './lint/rules/catalogue-only.js';
import colourTokens from './lint/rules/colour-tokens.js';
import documentedExport from './lint/rules/documented-export.js';
import doorShape from './lint/rules/door-shape.js';
import noNumberInput from './lint/rules/no-number-input.js';

const house = {
  rules: {
    'catalogue-only': catalogueOnly,
    'colour-tokens': colourTokens,
    'documented-export': documentedExport,
    'door-shape': doorShape,
    'no-number-input': noNumberInput,
  },
};

const PURE = 'src/{result,units,numerics,money,text,operation,instrument,materials,law,sources,strings,belly,action,tone,sound,tuning,room,climate,workshop,plot,report,estimate,proof,order,catalogue}/**/*.ts';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'test-results/', '**/museum/**'] },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    plugins: { house },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/restrict-template-expressions': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
      'eqeqeq': ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
      'max-lines': ['error', { max: 400 }],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
      'max-depth': ['error', 4],
    },
  },
  { files: [PURE], ignores: ['**/*.test.ts', '**/index.ts'], rules: { 'house/documented-export': 'error', 'no-restricted-globals': ['error', 'window', 'document', 'fetch', 'localStorage', 'process', 'setTimeout', 'setInterval'], 'no-restricted-properties': ['error', { object: 'Date', property: 'now' }, { object: 'Math', property: 'random' }] } },
  { files: ['src/*/index.ts'], rules: { 'house/door-shape': 'error' } },
  {
    files: ['src/web/**/*.{ts,tsx}', 'src/plot/**/*.ts'],
    ignores: ['**/*.test.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks, 'jsx-a11y': jsxA11y },
    rules: {
      ...jsxA11y.flatConfigs.recommended.rules,
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      'house/catalogue-only': 'error',
      'house/colour-tokens': 'error',
      'house/no-number-input': 'error',
      'max-lines': ['error', { max: 250 }],
      'max-lines-per-function': ['error', { max: 200, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ['**/*.test.{ts,tsx}', 'e2e/**/*.ts', 'bench/**/*.ts'], rules: { 'max-lines-per-function': 'off', 'no-console': 'off', '@typescript-eslint/no-unsafe-assignment': 'off', '@typescript-eslint/no-unsafe-member-access': 'off', '@typescript-eslint/no-base-to-string': 'off' } },
  { files: ['src/text/**/*.ts'], rules: { 'max-lines-per-function': 'off' } },
);
