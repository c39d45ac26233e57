import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { endShape, fields, flatWinding, issuesOfGiven, windingSchemas } from '../schemas.ts';
import { woundFiguresOf } from '../wound-string.ts';

/** A wound string at its pitch and length: tension, per cent of breaking, partials, inharmonicity. */
export const woundStringOperation = defineOperation({
  name: 'wound-string',
  input: z.union(windingSchemas({
    frequencyHz: fields.frequencyHz,
    speakingLengthMm: fields.speakingLengthMm,
    ...endShape,
    youngsModulusGPa: fields.youngsModulusGPa,
    strengthModel: fields.strengthModel,
    certificateMPa: fields.certificateMPa,
  })),
  output: z.strictObject({
    linearDensityGPerM: field.gramsPerMetre(),
    overallDiameterMm: field.millimetres(),
    tensionN: field.newtons({ describe: 'Partial 1 exactly at the frequency given, ends pinned' }),
    flexibleTensionN: field.newtons({ describe: 'As of a flexible string wound from end to end' }),
    stressMPa: field.megapascals({ describe: 'In the core' }),
    breakingPct: field.percent({ describe: 'Of the core' }),
    impedanceKgPerS: field.kilogramsPerSecond(),
    partialsHz: z.array(field.hertz()),
    inharmonicityB: field.ratio({ describe: 'Fitted to the first partials; a string with bare ends has no single B' }),
    fitPartials: field.count({ describe: 'How many partials B is fitted to' }),
    coreOnlyInharmonicityB: field.ratio({ describe: 'As if wound from end to end' }),
    firstOrderInharmonicityB: field.ratio({ describe: 'Core and bare ends to first order' }),
  }),
  formula: [
    'partial 1 exactly at f: E·I·y⁗ − T·y″ − μ(x)·ω²·y = 0, pieces of one μ each, ends pinned',
    'B: least squares of (fₙ/n)² on n², n ≤ 8',
    'core only: B = π²·E·I/(T·L²)',
    'first order: + (2π²/(3·μ·L³))·[(μ − μ_c)·Σa³ + (μ − μ₁)·Σ((a + s)³ − a³)]',
  ],
  sources: ['WITTRICK-WILLIAMS-1971', 'FLETCHER-1964', 'ASTM-A228', 'OWN'],
  example: { frequencyHz: 65.4064, speakingLengthMm: 1200, coreDiameterMm: 1.1, wraps: [{ wireDiameterMm: 0.9 }], bareFrontMm: 18, bareRearMm: 16 },
  run: (input) => map(issuesOfGiven(input, woundFiguresOf(flatWinding(input))), (figures) => ({ ...figures, partialsHz: [...figures.partialsHz] })),
});
