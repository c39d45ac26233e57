import { operationByName } from '#catalogue';
import { compassOf } from '#instrument';
import { runOperation } from '#operation';
import { type ProofInput, buildProof, demoProof } from '#proof';
import type { Cell, FigureName } from '#report';
import { describe, expect, it } from 'vitest';
import type { Piano } from '../api/piano.tsx';
import { byPlace, type ReadingBook } from '../api/reading-book.ts';
import { proofTellers } from './proof-tellers.ts';

function deskOf(input: ProofInput) {
  const readings = input.readings ?? [];
  const of = (state: string) => byPlace(readings.filter((reading) => reading.state === state));
  const book: ReadingBook = { found: of('found'), planned: of('planned'), finished: of('finished') };
  const { cycle, intent, instrument, terms } = input as ProofInput & { readonly terms: Piano['scale'] };
  const piano = { id: 'demo', cycle, instrument, intent, scale: terms, compass: compassOf(instrument) } as unknown as Piano;
  return proofTellers({ piano, book, locale: 'en', touch: (state) => (state === 'planned' ? null : input[state]) });
}

/** Every figure of the proof that names itself, with the text it is printed as. */
function named(input: ProofInput): readonly { readonly text: string; readonly figure: FigureName }[] {
  const ofCells = (cells: readonly Cell[]) => cells.flatMap(({ text, opens }) => (opens === undefined ? [] : [{ text, figure: opens }]));
  return buildProof(input).blocks.flatMap((block) => (block.type === 'table' ? block.rows.flatMap(ofCells) : block.type === 'headline' ? block.items.flatMap(({ value, opens }) => (opens === undefined ? [] : [{ text: value, figure: opens }])) : []));
}

/** What the operation answers in the field, as the proof prints it. */
function answered({ operation, input, output = '' }: { readonly operation: string; readonly input: object; readonly output?: string }): number {
  const declared = operationByName(operation);
  if (declared === undefined) throw new Error(`no operation ${operation}`);
  const result = runOperation(declared, input);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  const value = (result.value as Readonly<Record<string, unknown>>)[output];
  return Array.isArray(value) ? value.length : Number(value);
}

describe('the figures of a proof on screen', () => {
  const input = demoProof();
  const tell = deskOf(input);

  it('open to the calculation that answers what is printed', () => {
    const figures = named(input).filter(({ figure: { key = 40, of } }) => of === 'keys' || key % 9 === 4);
    expect(new Set(figures.map(({ figure }) => figure.of))).toEqual(new Set(['keys', 'touch', 'string', 'bearing']));
    for (const { text, figure } of figures) {
      const story = tell(figure)?.();
      if (story === undefined) throw new Error(`${figure.what} ${String(figure.key)} does not open`);
      const scale = figure.output === 'inharmonicityB' ? 1e6 : 1;
      const printed = Number.parseFloat(text.replace('\u2212', '-').replace(/^[~≈]\s*/u, ''));
      const decimals = /\.(\d+)/u.exec(text)?.[1]?.length ?? 0;
      expect(Math.abs(answered(story) * scale - printed), `${figure.what} ${String(figure.key)}: ${text}`).toBeLessThanOrEqual(0.5000001 * 10 ** -decimals);
    }
  });

  it('stay text where the row cannot be told of', () => {
    const { found } = input;
    if (found === null) throw new Error('the demo was not weighed');
    const { stepG: _, ...summary } = found.summary;
    const without = deskOf({ ...input, found: { ...found, summary } });
    expect(without({ of: 'keys', state: 'found', output: 'median', what: 'Median' })).toBeUndefined();
  });
});
