/** What the browser fetches before the first page is usable: scripts and styles of index.html and what they import at once, in kB gzip. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { report } from './measure.mjs';

const folder = path.resolve(import.meta.dirname, '../dist/web-app');
const page = await readFile(path.join(folder, 'index.html'), 'utf8');
const wanted = new Set([...page.matchAll(/(?:src|href)="\/?([^"]+\.(?:js|css))"/gu)].map((match) => match[1]));
const sizes = {};
for (const name of wanted) {
  const bytes = await readFile(path.join(folder, name));
  sizes[name] = gzipSync(bytes, { level: 9 }).length;
  if (!name.endsWith('.js')) continue;
  for (const match of bytes.toString().matchAll(/(?:^|[;}\s])import\s*(?:[\w*{}$,\s]+from\s*)?["']\.\/([^"']+\.js)["']/gu)) wanted.add(path.posix.join(path.posix.dirname(name), match[1]));
}
const sum = (ending) => Object.entries(sizes).filter(([name]) => name.endsWith(ending)).reduce((total, [, size]) => total + size, 0) / 1000;
report('bundle', { unit: 'kB gzip', initialJs: sum('.js'), initialCss: sum('.css'), budgetJs: 250, files: Object.keys(sizes).length });
