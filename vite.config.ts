import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { type Plugin, defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The accessible components bring their own words in some thirty languages; the program speaks two. */
function keepSpokenLanguages(spoken: readonly string[]): Plugin {
  const words = /[\\/]node_modules[\\/](?:react-aria|react-stately|react-aria-components|@react-aria|@react-stately)[\\/].*[\\/]([a-z]{2}-[A-Z]{2})\.m?js$/u;
  return {
    name: 'keep-spoken-languages',
    enforce: 'pre',
    load(id) {
      const language = words.exec(id)?.[1];
      return language === undefined || spoken.includes(language) ? null : 'export default {};';
    },
  };
}

/** Floors 0 to 3 are pure: a page takes what it uses of them and leaves the rest of the door behind. */
const rolldownOptions = { treeshake: { moduleSideEffects: [{ test: /[\\/]src[\\/](?!web[\\/])/u, sideEffects: false }] } };

export default defineConfig({
  root: here('./src/web'),
  publicDir: false,
  plugins: [keepSpokenLanguages(['en-US', 'de-DE']), react()],
  resolve: {
    alias: [
      { find: /^#(\w+)$/u, replacement: here('./src/$1/index.ts') },
      { find: /^zod$/u, replacement: here('./src/web/zod.ts') },
    ],
  },
  build: {
    outDir: here('./dist/web-app'),
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    rolldownOptions,
  },
  worker: { format: 'es', rolldownOptions },
  server: { proxy: { '/api': process.env['WRESTPLANK_API'] ?? 'http://127.0.0.1:4949' } },
});
