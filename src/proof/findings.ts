import type { Cause, Finding, KeyTouch, TouchAnalysis } from '#action';
import { type KeyNumber, compassOf } from '#instrument';
import { medianOf } from '#numerics';
import { type Block, type Cell, cell, noteRuns } from '#report';
import { type ProofInput, provedStates } from './input.ts';
import { grams } from './words.ts';

/** All findings of one cause over the compass. */
interface Gathered {
  readonly cause: Cause;
  readonly stage: number;
  readonly keys: readonly KeyNumber[];
  readonly amounts: readonly number[];
  readonly remedies: readonly string[];
}

/** What was found and what was to be done about it; and what remains. */
export function findingsOf(input: ProofInput): readonly Block[] {
  const { say, instrument } = input;
  if (instrument.kind === null) return [{ type: 'heading', level: 1, text: say('proof.findings') }, { type: 'note', text: say('proof.findings.kindNotStated') }];
  return provedStates(input).flatMap(({ state, touch }): readonly Block[] => {
    const gathered = gather(touch.keys);
    const title = say(`proof.findings.${state}`);
    return [
      { type: 'heading', level: 1, text: title },
      ...(gathered.length === 0 ? [{ type: 'paragraph', size: 'body', text: say('proof.findings.none') } as const] : [{ type: 'paragraph', size: 'small', text: say('proof.findings.how') } as const, tableOf(title, gathered, input)]),
      ...withinNote(touch, input),
    ];
  });
}

/** Findings by cause, in the order of work: what must be cleared, friction, ratio, hammer, lead. */
function gather(keys: readonly KeyTouch[]): readonly Gathered[] {
  const acted = keys.flatMap(({ key, findings }) => findings.filter(({ withinUncertainty }) => !withinUncertainty).map((finding) => ({ key, finding })));
  const causes = [...new Set(acted.map(({ finding }) => finding.cause))];
  const gathered = causes.map((cause): Gathered => {
    const own = acted.filter(({ finding }) => finding.cause === cause);
    return {
      cause,
      stage: Math.min(...own.map(({ finding }) => finding.stage)),
      keys: own.map(({ key }) => key),
      amounts: own.flatMap(({ finding }) => finding.amountG ?? []),
      remedies: [...new Set(own.flatMap(({ finding }) => finding.remedies))],
    };
  });
  return gathered.sort((a, b) => a.stage - b.stage || b.keys.length - a.keys.length);
}

function tableOf(caption: string, gathered: readonly Gathered[], input: ProofInput): Block {
  const { say, instrument } = input;
  const compass = compassOf(instrument);
  return {
    type: 'table', strips: 1, rowHeads: true, caption,
    columns: [
      { label: say('proof.findings.cause'), align: 'start', width: 4 },
      { label: say('proof.findings.keys'), align: 'start', width: 3.6 },
      { label: say('proof.findings.amount'), align: 'end', width: 1.7 },
      { label: say('proof.findings.remedies'), align: 'start', width: 7.2 },
    ],
    rows: gathered.map(({ cause, keys, amounts, remedies }): readonly Cell[] => [
      cell(word('cause', cause, input), 'strong'),
      cell(`${String(keys.length)}: ${noteRuns(keys, compass)}`),
      amounts.length === 0 ? cell('–', 'quiet') : cell(grams(medianOf(amounts), input, { signed: true })),
      remedies.length === 0 ? cell(say('proof.findings.withOthers'), 'quiet') : cell(remedies.map((remedy) => word('remedy', remedy, input)).join(' → ')),
    ]),
  };
}

function withinNote(touch: TouchAnalysis, { say }: ProofInput): readonly Block[] {
  const isWithin = ({ withinUncertainty }: Finding): boolean => withinUncertainty;
  const count = touch.keys.filter(({ findings }) => findings.some(isWithin)).length;
  return count === 0 ? [] : [{ type: 'paragraph', size: 'small', text: say('proof.findings.within', { count }) }];
}

/** Word of a cause or remedy. @throws Error when the catalogue lacks it: a broken invariant. */
function word(area: 'cause' | 'remedy', name: string, { say }: ProofInput): string {
  const key = `${area}.${name}`;
  if (!say.knows(key)) throw new Error(`no words for ${key}`);
  return say(key);
}
