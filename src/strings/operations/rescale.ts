import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { type RescaleCandidate, limitNames } from '../rescale/problem.ts';
import { rescale } from '../rescale/rescale.ts';
import { endShape, fields, flatWinding, windingSchemas } from '../schemas.ts';

/** No piano has more keys, and no stock more sizes. */
const MOST_NOTES = 128;
const MOST_CANDIDATES = 1000;

const wireShape = { youngsModulusGPa: fields.youngsModulusGPa, strengthModel: fields.strengthModel, certificateMPa: fields.certificateMPa } as const;
const candidate = z.union([z.strictObject({ diameterMm: fields.diameterMm, densityKgM3: fields.densityKgM3, ...wireShape }), ...windingSchemas({ ...endShape, ...wireShape })]);

const weight = (describe: string) => field.number({ min: 0, max: 1e6, describe }).optional();
const weights = z.strictObject({
  tensionSmoothness: weight('Of the square of the second difference of ln T'),
  inharmonicitySmoothness: weight('Of the square of the second difference of ln B'),
  impedanceSmoothness: weight('Of the square of the second difference of ln N·Z'),
  sizeChange: weight('Of each change of size against the note below'),
  tensionDeviation: weight('Of the square of ln T less ln of its target'),
});

const breaking = (describe: string) => field.percent({ min: 0, max: 1000, describe }).optional();
const tension = (describe: string) => field.newtons({ min: 0, max: 100_000, describe }).optional();
const total = (describe: string) => field.newtons({ min: 1, max: 10_000_000, describe }).optional();
const stringLimits = {
  minBreakingPct: breaking('Least percent of breaking of a string'),
  maxBreakingPct: breaking('Largest percent of breaking of a string'),
  minTensionN: tension('Least tension of a string'),
  maxTensionN: tension('Largest tension of a string'),
} as const;

/** The sizes that make a scale as even as they can, proven. */
export const rescaleOperation = defineOperation({
  name: 'rescale',
  input: z.strictObject({
    notes: z.array(z.strictObject({
      key: field.count({ min: 1, max: MOST_NOTES, describe: 'Key; lowest first, none left out' }),
      frequencyHz: fields.frequencyHz,
      speakingLengthMm: fields.speakingLengthMm,
      strings: field.count({ min: 1, max: 4, describe: 'Strings in the unison' }).default(3),
      targetTensionN: field.newtons({ min: 1, max: 100_000, describe: 'Tension wanted of one string; without it this note has no deviation' }).optional(),
      candidates: z.array(candidate).min(1).max(MOST_CANDIDATES).describe('What the note could be strung with'),
      lockedCandidate: field.count({ min: 0, max: MOST_CANDIDATES - 1, describe: 'Place of the candidate that is kept' }).optional(),
      limits: z.strictObject(stringLimits).describe('Limits of this note, before those of the whole').optional(),
      weights: weights.describe('Weights of the terms that end at this note, before those of the whole').optional(),
    })).min(1).max(MOST_NOTES).describe('Notes, lowest first'),
    weights: weights.describe('What the objective is made of; what is not given weighs nothing'),
    limits: z.strictObject({
      ...stringLimits,
      totalTensionN: total('Tension of all strings together, held to 0.1 %'),
      maxTotalTensionN: total('Most that all strings may pull together'),
    }).describe('Limits of the whole').optional(),
  }),
  output: z.strictObject({
    choices: z.array(z.strictObject({
      key: field.count(),
      candidateIndex: field.count({ describe: 'Place in the list of candidates, from 0' }),
      tensionN: field.newtons({ describe: 'Of one string, as of a flexible one' }),
      breakingPct: field.percent(),
      inharmonicityB: field.ratio({ describe: 'Pinned; of a wound string the exact fit' }),
      impedanceKgPerS: field.kilogramsPerSecond({ describe: 'Of one string' }),
    })),
    objective: field.number(),
    lowerBound: field.number({ describe: 'No choice within the limits comes below' }),
    proven: z.boolean().describe('Whether objective and bound lie within 0.1 %'),
    totalTensionN: field.newtons({ describe: 'Of all strings together' }),
    activeLimits: z.array(z.strictObject({ limit: z.enum(limitNames), keys: z.array(field.count()) })).describe('Limits that hold the choice back, and where'),
  }),
  formula: [
    'min Σ w_d·(ln T − ln T_target)² + w_s·[size differs from the note below]',
    '+ Σ w_T·(Δ² ln T)² + w_B·(Δ² ln B)² + w_Z·(Δ² ln N·Z)², Δ² over a note and the two below',
    'exact: W(j, l) = min over m of u(m) + p(l, m) + t(j, l, m) + W(l, m)',
    'total held: max over λ of min J + λ·(Σ N·T − total); λ ≥ 0 at the upper edge',
  ],
  sources: ['BELLMAN-1957', 'EVERETT-1963', 'FLETCHER-1964', 'WITTRICK-WILLIAMS-1971'],
  example: {
    notes: [
      { key: 49, frequencyHz: 440, speakingLengthMm: 404, strings: 3, candidates: [{ diameterMm: 0.95 }, { diameterMm: 0.975 }, { diameterMm: 1 }] },
      { key: 50, frequencyHz: 466.1638, speakingLengthMm: 384, strings: 3, candidates: [{ diameterMm: 0.95 }, { diameterMm: 0.975 }, { diameterMm: 1 }] },
      { key: 51, frequencyHz: 493.8833, speakingLengthMm: 362, strings: 3, candidates: [{ diameterMm: 0.925 }, { diameterMm: 0.95 }, { diameterMm: 0.975 }] },
      { key: 52, frequencyHz: 523.2511, speakingLengthMm: 345, strings: 3, candidates: [{ diameterMm: 0.925 }, { diameterMm: 0.95 }, { diameterMm: 0.975 }] },
    ],
    weights: { tensionSmoothness: 1, inharmonicitySmoothness: 0.2, sizeChange: 0.0005 },
    limits: { maxBreakingPct: 65 },
  },
  run: ({ notes, weights: all, limits }) => map(
    rescale({ notes: notes.map((note) => ({ ...note, candidates: note.candidates.map(flat) })), weights: all, limits }),
    ({ choices, activeLimits, ...rest }) => ({ ...rest, choices: [...choices], activeLimits: activeLimits.map(({ limit, keys }) => ({ limit, keys: [...keys] })) }),
  ),
});

const flat = (given: z.output<typeof candidate>): RescaleCandidate => ('diameterMm' in given ? given : flatWinding(given));
