import type { AnalysedBearing } from '#belly';
import { medianOf } from '#numerics';
import { type Block, type Cell, bare, cell } from '#report';
import { sectionWords, stateColumns } from './belly-words.ts';
import type { ProofInput, ProvedBelly } from './input.ts';

const sides = ['frontDeg', 'rearDeg', 'totalDeg'] as const;
const words = { frontDeg: 'belly.figure.front', rearDeg: 'belly.figure.rear', totalDeg: 'belly.figure.total' } as const;

/** Angles by section, front, rear and total apart: the median and what it runs from and to; sections nobody read say so. */
export function anglesOf(bellies: readonly ProvedBelly[], input: ProofInput): readonly Block[] {
  const { say } = input;
  const named = bellies[0]?.analysis.sections ?? [];
  const runs = named.length === 0 ? [{ label: say('belly.loads.whole'), holds: () => true }] : named.map((section) => ({ label: sectionWords(section, input), holds: (key: number) => key >= section.firstKey && key <= section.lastKey }));
  const rows = runs.flatMap(({ label, holds }) => sides.map((side) => [
    cell(`${label}: ${say(words[side])}`, side === 'totalDeg' ? 'strong' : 'plain'),
    ...bellies.map(({ analysis }) => angleCell(analysis.notes.filter(({ key }) => holds(key)), side, input)),
  ]));
  const title = say('proof.belly.angles');
  return [
    { type: 'heading', level: 2, text: title },
    { type: 'table', strips: 1, rowHeads: true, caption: title, columns: stateColumns(title, bellies, input), rows },
  ];
}

function angleCell(notes: readonly AnalysedBearing[], side: (typeof sides)[number], input: ProofInput): Cell {
  const values = notes.flatMap(({ figures }) => figures?.[side] ?? []);
  if (values.length === 0) return cell(input.say('proof.notMeasured'), 'quiet');
  const degrees = (value: number): string => `${bare(value, input, { decimals: 2 })}°`;
  return cell(input.say('proof.belly.angle', { median: degrees(medianOf(values)), from: degrees(Math.min(...values)), to: degrees(Math.max(...values)), count: values.length }));
}
