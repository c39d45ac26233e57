import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { gramSquareMillimetres, grams, millimetres } from '#units';
import { z } from 'zod';
import { effectiveMassOf, hammerInertiaOf, hammerWeightOf, keyInertiaOf } from '../effective-mass.ts';
import { leadsOffKey } from '../leads/on-key.ts';
import { leadFields, leadList } from '../leads/schemas.ts';
import { fields } from '../schemas.ts';

const mass = (describe: string) => field.grams({ min: 0, max: 10_000, describe });
const length = (describe: string) => field.millimetres({ min: 0.01, max: 10_000, describe });

/** What of an action has to be set moving, as a mass at the key front. */
export const effectiveMassOperation = defineOperation({
  name: 'effective-mass',
  input: z.strictObject({
    levers: fields.levers,
    keyMassG: mass('Key without its leads'),
    keyFrontLengthMm: length('Balance point to the front edge'),
    keyBackLengthMm: length('Balance point to the back end'),
    keyWidthMm: leadFields.keyWidthMm,
    leads: leadList,
    leadDensityGPerMm3: leadFields.leadDensityGPerMm3,
    woodDensityGPerMm3: leadFields.woodDensityGPerMm3,
    addedMassG: field.grams({ min: -1000, max: 1000, describe: 'Put on the key beside its leads, a new key top say; below 0 taken off' }).default(grams(0)),
    addedAtMm: field.millimetres({ min: -10_000, max: 10_000, describe: 'Where, from the balance point toward the front' }).default(millimetres(0)),
    wippenInertiaGMm2: field.gramSquareMillimetres({ min: 0, max: 1e9, describe: 'Wippen about its centre; a swing test gives it' }),
    hammerHeadG: mass('Hammer head without the shank'),
    shankG: mass('Shank'),
    shankLengthMm: length('Hammer centre to the end of the shank'),
  }),
  output: z.strictObject({
    keyG: field.grams(),
    wippenG: field.grams(),
    hammerG: field.grams(),
    effectiveMassG: field.grams({ describe: 'Sum of the three, at the measuring point' }),
    hammerWeightG: field.grams({ describe: 'What this hammer and shank weigh at the strike point, shank level' }),
  }),
  formula: [
    'm_eff = I_key/a² + I_w·(K/w_c)² + I_h·(R/L)²',
    'I_key = M·(f³ + b³)/(3·(f + b)) + Σ m·(x² + d²/8) + m_t·x_t²',
    'I_h = m·L² + s·l²/3',
    'SW = m + s·l/(2·L)',
  ],
  sources: ['OWN', 'METALS-MEMORY'],
  example: {
    levers: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
    keyMassG: 60, keyFrontLengthMm: 238, keyBackLengthMm: 170, keyWidthMm: 13, leads: [{ diameterMm: 12.7, positionMm: 170 }],
    wippenInertiaGMm2: 64_700, addedMassG: 0, addedAtMm: 0, hammerHeadG: 7.8, shankG: 2.4, shankLengthMm: 130,
  },
  run: ({ levers, addedMassG, addedAtMm, wippenInertiaGMm2, hammerHeadG, shankG, shankLengthMm, ...key }) => {
    const issues = leadsOffKey(key.leads, key);
    if (issues.length > 0) return refuse(...issues);
    const hammer = { hammerHeadG, shankG, shankLengthMm };
    const inertias = { keyGMm2: gramSquareMillimetres(keyInertiaOf(key) + addedMassG * addedAtMm ** 2), wippenGMm2: wippenInertiaGMm2, hammerGMm2: hammerInertiaOf(hammer, levers.hammerMm) };
    return ok({ ...effectiveMassOf(levers, inertias), hammerWeightG: hammerWeightOf(hammer, levers.hammerMm) });
  },
});
