// Writes docs/validation.md from the published figures in the source. Needs no build.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const resolve = { conditions: ['wrestplank', 'module', 'node'], noExternal: [/^#/u] };
const { module } = await runnerImport('./src/catalogue/index.ts', {
  configFile: false,
  root: fileURLToPath(new URL('..', import.meta.url)),
  environments: { inline: { resolve } },
});
writeFileSync(new URL('../docs/validation.md', import.meta.url), module.validationPage(module.publishedFigures));
