import { defineOperation, field } from '#operation';
import { type Issue, map, refuse } from '#result';
import { z } from 'zod';
import { USUAL_LAMBDA } from '../along-keys.ts';
import { evenProperties, toneEvennessOf } from '../evenness.ts';
import { MOST_NOTES, fields, offsetShape } from '../schemas.ts';

/** How even brightness, level or sustain is along the keys. */
export const toneEvennessOperation = defineOperation({
  name: 'tone-evenness',
  input: z.strictObject({
    property: z.enum(evenProperties).describe('brightness, level, or sustain (by its logarithm)'),
    notes: z.array(z.strictObject({ key: fields.key, value: field.number({ min: -1e6, max: 1e6 }), uncertainty: fields.uncertainty() })).min(1).max(MOST_NOTES),
    lambda: fields.lambda(USUAL_LAMBDA),
  }),
  output: z.strictObject({
    keys: z.array(z.strictObject({ ...offsetShape, ratio: field.number({ describe: 'Of sustain: value over curve' }).optional() })),
    scatter: field.number({ describe: 'Robust standard deviation of the offsets; of sustain, of the logarithm of the ratio' }),
    stepRms: field.number({ describe: 'Root mean square of the steps between neighbours beyond the curve; of sustain, in logarithms' }),
    outliers: z.array(field.count()).describe('Keys more than 3.5 scatters off'),
  }),
  formula: ['min Σ wᵢ(yᵢ − zᵢ)² + λ·Σ(Δ³z)²', 'w = (1 − (r/4.685·s)²)², s = 1.4826·MAD(r)', 'outlier: |r| > 3.5·s', 'sustain: y = ln T'],
  sources: ['EILERS-WHITTAKER', 'TUKEY-BIWEIGHT', 'IGLEWICZ-HOAGLIN'],
  example: { property: 'brightness', notes: [[40, 3.1], [41, 3.05], [42, 3.0], [43, 3.6], [44, 2.92], [45, 2.9], [46, 2.84], [47, 2.8]].map(([key, value]) => ({ key, value })) },
  run: ({ property, notes, lambda }) => {
    const below = property !== 'sustain' ? [] : notes.flatMap(({ value }, index): readonly Issue[] => (value < LEAST_S ? [{ code: 'range', path: `notes[${String(index)}].value`, given: value, allowed: `at least ${String(LEAST_S)} s`, params: { min: LEAST_S, of: 'number' } }] : []));
    if (below.length > 0) return refuse(...below);
    return map(toneEvennessOf(property, notes, lambda), ({ keys, ratios, scatter, stepRms, outliers }) => ({
      keys: keys.map((key, index) => ({ ...key, ...(ratios === undefined ? {} : { ratio: ratios[index] ?? 1 }) })), scatter, stepRms, outliers: [...outliers],
    }));
  },
});

/** No tone dies faster. */
const LEAST_S = 1e-3;
