import { keyStrokeOf, leverRatiosOf } from '#action';
import { actionTermsSchema, compassOf, instrumentDraftSchema, keysOf } from '#instrument';
import { describe, expect, it } from 'vitest';
import { standingOf } from './demo-work.ts';
import { demoShop } from './demo.ts';
import { strokeInputOf } from './stroke-input.ts';

const [grand] = demoShop();
if (grand === undefined) throw new Error('the demo has no grand');
const instrument = instrumentDraftSchema.parse(grand.draft);
const { readings } = standingOf(grand.steps);
const terms = grand.steps.flatMap((step) => (step.kind === 'action' ? [actionTermsSchema.parse(step.terms)] : []))[0] ?? null;
const strokes = keysOf(compassOf(instrument)).map((key) => {
  const { measures, missing } = strokeInputOf({ instrument, readings, cycle: 1, terms, key });
  return { key, measures, missing, result: measures === undefined ? undefined : keyStrokeOf(measures, 41) };
});

describe('the stroke of the invented grand', () => {
  it('can be followed on every key', () => {
    expect(strokes.filter(({ result }) => result?.ok !== true).map(({ key, missing, result }) => ({ key, missing, result }))).toEqual([]);
  });

  it('gives at the measured position the ratio of its levers, and its centres stand the spread apart', () => {
    for (const { key, measures, result } of strokes) {
      if (measures === undefined || result?.ok !== true) continue;
      expect(result.value.measured.rates?.actionRatio, `key ${String(key)}`).toBeCloseTo(leverRatiosOf(measures.levers).actionRatio, 9);
      expect(Math.abs(result.value.spreadMm - 112.5), `key ${String(key)}`).toBeLessThan(0.05);
    }
  });
});
