/** Runs every benchmark on the built program, one after the other, and writes what they say to bench/RESULTS.md. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { ensureBuilt } from '../scripts/lib/build.mjs';

const NAMES = ['bundle', 'calc-array', 'plots', 'proof-pdf', 'strings', 'commit-latency', 'cold-start', 'keystroke', 'what-if'];
await ensureBuilt();
const load = os.loadavg()[0].toFixed(2);
const results = NAMES.map((name) => {
  process.stderr.write(`${name}\n`);
  const text = execFileSync(process.execPath, [path.join(import.meta.dirname, `${name}.mjs`)], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1 << 26 });
  return { name, result: JSON.parse(text.trim().split('\n').at(-1)) };
});

const round = (value) => (typeof value === 'number' ? Number(value.toPrecision(3)) : value);
const shown = (value) => (value !== null && typeof value === 'object' ? Object.entries(value).map(([key, inner]) => `${key} ${shown(inner)}`).join(', ') : String(round(value)));
const sections = results.map(({ name, result: { name: _, ...figures } }) => [
  `## ${name}`, '', `\`node bench/${name}.mjs\``, '', '| figure | value |', '|---|---|', ...Object.entries(figures).map(([key, value]) => `| ${key} | ${shown(value)} |`), '',
].join('\n'));
const head = `# Results\n\nWritten by \`node bench/run.mjs\`. ${new Date().toISOString().slice(0, 10)}, Node ${process.versions.node}, ${String(os.cpus().length)} cores, load ${load} at the start.\nWhat matters are the ratios: both rivals ran in turns in one run. Each script says at its head what is measured against what.\n\n`;
writeFileSync(path.join(import.meta.dirname, 'RESULTS.md'), head + sections.join('\n'));
