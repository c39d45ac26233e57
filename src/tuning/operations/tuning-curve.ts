import { octaveTypes } from '#instrument';
import { defineOperation, field } from '#operation';
import { type Issue, map, refuse } from '#result';
import { cents, hertz } from '#units';
import { z } from 'zod';
import { type CurveQuestion, USUAL_ANCHOR_KEY, USUAL_SMOOTHNESS, frequencyAt, tuningCurveOf, usualOctaveRules } from '../tuning-curve.ts';
import { fields } from '../schemas.ts';
import { temperamentOffsetsOf } from '../temperament.ts';

const rule = z.strictObject({ fromKey: fields.key, toKey: fields.key, type: z.enum(octaveTypes), weight: field.number({ above: 0, max: 1000, describe: 'Against the other octaves' }).default(1) });
const octave = z.strictObject({
  lowerKey: fields.key, upperKey: fields.key, type: z.enum(octaveTypes),
  beatlessCents: field.cents({ describe: 'Over 2:1 where this octave does not beat' }), setCents: field.cents({ describe: 'Over 2:1 on the curve' }),
});
/** Semitones from C to A. */
const A_ABOVE_C = 9;

/** The stretch of a whole instrument from the inharmonicity of its strings, with a temperament laid over it. */
export const tuningCurveOperation = defineOperation({
  name: 'tuning-curve',
  input: z.strictObject({
    keys: z.array(z.union([
      z.strictObject({ key: fields.key, inharmonicityB: fields.inharmonicityB, inharmonicityUncertainty: field.ratio({ min: 0, max: 1, describe: 'Standard uncertainty of B' }).optional() }),
      z.strictObject({ key: fields.key, partialsHz: fields.partialsHz(1) }),
    ])).min(1).max(128).describe('Lowest first; keys may be left out'),
    octaves: z.array(rule).min(1).max(40).describe('Which octave is listened to where, by the lower note').default([...usualOctaveRules]),
    anchorKey: field.count({ min: 1, max: 128, describe: 'Key of A4, which stays at its pitch' }).default(USUAL_ANCHOR_KEY),
    a4Hz: field.hertz({ min: 200, max: 900, describe: 'Pitch of A4' }).default(hertz(440)),
    smoothness: field.number({ min: 1e-6, max: 1e9, describe: 'Weight of an even course against beatless octaves' }).default(USUAL_SMOOTHNESS),
    temperament: fields.temperament.default('equal'),
    root: fields.root.default('C'),
  }),
  output: z.strictObject({
    offsetsCents: z.array(field.cents()).describe('Of partial 1 off equal temperament, key by key, temperament included'),
    stretchCents: z.array(field.cents()).describe('The same without the temperament'),
    frequenciesHz: z.array(field.hertz()).describe('Of partial 1'),
    uncertaintiesCents: z.array(field.cents()).describe('Standard uncertainty carried from that of B').optional(),
    octaves: z.array(octave),
  }),
  formula: ['min Σ w·(x_upper − x_lower − s)² + λ·Σ(Δ³x)², x(A4) = 0', 's: stretch at which the octave of its register’s type does not beat (octave-stretch)', 'offset = x + temperament', 'f = a4·2^((key − key of A4)/12 + offset/1200)'],
  sources: ['OWN', 'FLETCHER-1964', 'EILERS-WHITTAKER', 'PRACTICE'],
  example: {
    keys: [37, 39, 41, 43, 45, 47, 49, 51, 53, 55, 57, 59, 61].map((key) => ({ key, inharmonicityB: Number((0.0004 * 2 ** ((key - 40) / 8)).toPrecision(3)) })),
    octaves: [{ fromKey: 1, toKey: 128, type: '4:2' }], anchorKey: 49, a4Hz: 440, smoothness: 100, temperament: 'equal', root: 'C',
  },
  run: ({ keys, octaves, anchorKey, smoothness, temperament, root, a4Hz }) => {
    const faults = [...orderFaults(keys), ...ruleFaults(octaves)];
    if (faults.length > 0) return refuse(...faults);
    const question: CurveQuestion = {
      rules: octaves, anchorKey, smoothness,
      keys: keys.map((one) => ('partialsHz' in one ? { key: one.key, string: { partialsHz: one.partialsHz } } : { key: one.key, string: { inharmonicityB: one.inharmonicityB }, ...(one.inharmonicityUncertainty === undefined ? {} : { inharmonicityUncertainty: one.inharmonicityUncertainty }) })),
    };
    const tempered = temperamentOffsetsOf(temperament, root);
    return map(tuningCurveOf(question), ({ offsetsCents: stretchCents, uncertaintiesCents, octaves: heard }) => {
      const offsets = keys.map(({ key }, index) => (stretchCents[index] ?? 0) + (tempered[(((key - anchorKey + A_ABOVE_C) % 12) + 12) % 12] ?? 0));
      return {
        offsetsCents: offsets.map(cents), stretchCents: [...stretchCents], octaves: [...heard],
        frequenciesHz: keys.map(({ key }, index) => frequencyAt(a4Hz, key - anchorKey, offsets[index] ?? 0)),
        ...(uncertaintiesCents === undefined ? {} : { uncertaintiesCents: [...uncertaintiesCents] }),
      };
    });
  },
});

function orderFaults(keys: readonly { readonly key: number }[]): readonly Issue[] {
  return keys.flatMap(({ key }, index): readonly Issue[] => {
    const before = keys[index - 1]?.key ?? 0;
    return key > before ? [] : [{ code: 'order', path: `keys[${String(index)}].key`, given: key, allowed: `a key above ${String(before)}, the one before`, params: { above: before } }];
  });
}

function ruleFaults(rules: readonly z.output<typeof rule>[]): readonly Issue[] {
  return rules.flatMap(({ fromKey, toKey }, index): readonly Issue[] => (fromKey <= toKey ? [] : [{ code: 'order', path: `octaves[${String(index)}].toKey`, given: toKey, allowed: `key ${String(fromKey)} or above`, params: { min: fromKey } }]));
}

