import { compass88, scaleTermsSchema } from '#instrument';
import { analyseScale } from '#strings';
import { demoShop, scaleInputOf, standingOf } from '#workshop';
import { woundStringOperation, plainStringOperation } from '#strings';
import { runOperation } from '#operation';
import { describe, expect, it } from 'vitest';
import { stringStory } from './stories.ts';

const [grand] = demoShop();
if (grand === undefined) throw new Error('the demo has no grand');
const { readings } = standingOf(grand.steps);
const terms = scaleTermsSchema.parse(grand.steps.find((step) => step.kind === 'scale')?.terms);
const instrument = { firstMidi: 21, lastMidi: 108, a4Hz: 440, sections: grand.draft.sections ?? [] };

/** Paths of every figure an input holds: `speakingLengthMm`, `wraps[0].wireDiameterMm`. */
function pathsOf(value: unknown, path = ''): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((one, index) => pathsOf(one, `${path}[${String(index)}]`));
  if (typeof value === 'object' && value !== null) return Object.entries(value).flatMap(([name, inner]) => pathsOf(inner, path === '' ? name : `${path}.${name}`));
  return typeof value === 'number' ? [path] : [];
}

describe.each(['found', 'planned'] as const)('figures of a string, %s', (state) => {
  const { notes } = analyseScale(scaleInputOf({ instrument, readings, cycle: 1, state, terms }).input);

  it('are what the operation answers, and every input says where it came from', () => {
    for (const note of notes) {
      const story = stringStory('Tension', 'tensionN', { note, state, terms, readings: readings.filter((reading) => reading.state === state || reading.state === 'found'), compass: compass88 });
      if (story === undefined) throw new Error(`key ${String(note.key)} has no string`);
      const operation = story.operation === 'plain-string' ? plainStringOperation : woundStringOperation;
      const answer = runOperation<unknown, { readonly tensionN: number; readonly inharmonicityB: number }>(operation as never, story.input);
      expect(answer).toMatchObject({ ok: true, value: { tensionN: note.figures?.tensionN, breakingPct: note.figures?.breakingPct } });
      expect(answer.ok ? answer.value.inharmonicityB : 0).toBeCloseTo(note.figures?.inharmonicityB ?? 1, 12);
      for (const path of pathsOf(story.input)) {
        const { how, readings: behind = [] } = story.origins?.[path] ?? {};
        expect(how !== undefined || behind.length > 0, `key ${String(note.key)}, ${path}`).toBe(true);
      }
    }
  });

  it('go back, for a length laid in, to the two measured lengths either side', () => {
    const laid = notes.find(({ key }) => key === 37);
    if (laid === undefined) throw new Error('no key 37');
    const story = stringStory('Tension', 'tensionN', { note: laid, state, terms, readings, compass: compass88 });
    expect(story?.origins?.['speakingLengthMm']).toMatchObject({ how: 'lengthBetween', readings: [{ index: 35 }, { index: 40 }] });
  });
});
