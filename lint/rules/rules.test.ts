import { RuleTester } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, it } from 'vitest';
import catalogueOnly from './catalogue-only.js';
import colourTokens from './colour-tokens.js';
import documentedExport from './documented-export.js';
import doorShape from './door-shape.js';
import noNumberInput from './no-number-input.js';

RuleTester.describe = describe;
RuleTester.it = it;
RuleTester.itOnly = it;

const tester = new RuleTester({ languageOptions: { parser: tseslint.parser, parserOptions: { ecmaFeatures: { jsx: true } } } });

tester.run('catalogue-only', catalogueOnly as never, {
  valid: ['<p>{say("a")}</p>', '<p> · </p>', '<p aria-label={say("a")} className="wide" />', '<kbd>F2</kbd>'],
  invalid: [
    { code: '<p>Saved</p>', errors: 1 },
    { code: '<p aria-label="Down weight" />', errors: 1 },
  ],
});

tester.run('colour-tokens', colourTokens as never, {
  valid: ['const a = "var(--ink)"', 'const a = "#room"', 'const note = `key #${n}`'],
  invalid: [
    { code: 'const a = "#fff"', errors: 1 },
    { code: 'const a = `1px solid rgb(1 2 3)`', errors: 1 },
  ],
});

tester.run('documented-export', documentedExport as never, {
  valid: ['/** Says a. */\nexport const a = 1', 'export type A = 1', 'const a = 1', '/** Does a. */\nexport function a() {}'],
  invalid: [
    { code: 'export const a = 1', errors: 1 },
    { code: '// says a\nexport function a() {}', errors: 1 },
  ],
});

tester.run('door-shape', doorShape as never, {
  valid: ["export { a } from './a.ts'", "export type { A } from './a.ts'"],
  invalid: [
    { code: "export * from './a.ts'", errors: 1 },
    { code: "import { a } from './a.ts'; export { a }", errors: 2 },
    { code: 'export const a = 1', errors: 1 },
  ],
});

tester.run('no-number-input', noNumberInput as never, {
  valid: ['<input type="text" inputMode="decimal" />'],
  invalid: [{ code: '<input type="number" />', errors: 1 }],
});
