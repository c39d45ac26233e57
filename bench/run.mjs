/**
 * Runs benchmarks on the built program, one after the other, and writes what they say to bench/RESULTS.md: all of them, or those named.
 * A section says when it was measured and how busy the machine was; those not run stay as they are, and so does what was written by hand.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { ensureBuilt } from '../scripts/lib/build.mjs';

const NAMES = ['bundle', 'calc-array', 'plots', 'proof-pdf', 'strings', 'leads', 'least-work', 'kinematics', 'commit-latency', 'cold-start', 'keystroke', 'what-if', 'plan-what-if', 'tone', 'three-point-hours', 'room', 'scale'];
const FILE = path.join(import.meta.dirname, 'RESULTS.md');
const HEAD = '# Results\n\nWritten by `node bench/run.mjs [NAME …]`. What matters are the ratios: both rivals ran in turns in one run. Each script says at its head what is measured against what.\n';

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !NAMES.includes(name));
if (unknown.length > 0) throw new Error(`no such benchmark: ${unknown.join(', ')}; there are ${NAMES.join(', ')}`);

const round = (value) => (typeof value === 'number' ? Number(value.toPrecision(3)) : value);
const shown = (value) => (value !== null && typeof value === 'object' ? Object.entries(value).map(([key, inner]) => `${key} ${shown(inner)}`).join(', ') : String(round(value)));

/** One section of the results: the figures of a benchmark, measured now. */
function measured(name) {
  process.stderr.write(`${name}\n`);
  const load = os.loadavg()[0].toFixed(2);
  const text = execFileSync(process.execPath, [path.join(import.meta.dirname, `${name}.mjs`)], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1 << 26 });
  const { name: _, ...figures } = JSON.parse(text.trim().split('\n').at(-1));
  return [
    `## ${name}`, '', `\`node bench/${name}.mjs\`, ${new Date().toISOString().slice(0, 10)}, Node ${process.versions.node}, ${String(os.cpus().length)} cores, load ${load} at its start`, '',
    '| figure | value |', '|---|---|', ...Object.entries(figures).map(([key, value]) => `| ${key} | ${shown(value)} |`), '',
  ].join('\n');
}

/** The sections that stand in the file, by name. */
function standing() {
  const parts = existsSync(FILE) ? readFileSync(FILE, 'utf8').split(/^## /mu).slice(1) : [];
  return new Map(parts.map((part) => [part.split('\n', 1)[0], `## ${part}`]));
}

await ensureBuilt();
const sections = standing();
for (const name of wanted.length === 0 ? NAMES : wanted) {
  sections.set(name, measured(name));
  const others = [...sections.keys()].filter((one) => !NAMES.includes(one));
  writeFileSync(FILE, [HEAD, ...[...NAMES, ...others].flatMap((one) => (sections.has(one) ? [sections.get(one).trimEnd() + '\n'] : []))].join('\n'));
}
