import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { leadBreakPointOf, leadEffectOf, meetingLeadsOf } from '../leads/lead.ts';
import { leadsOffKey, wideBores } from '../leads/on-key.ts';
import { leadFields, leadList } from '../leads/schemas.ts';

const reach = { min: 0.01, max: 10_000 };

const input = z.strictObject({
  bareFrontWeightG: leadFields.bareFrontWeightG,
  keyFrontMm: leadFields.keyFrontMm,
  keyWidthMm: leadFields.keyWidthMm,
  leads: leadList,
  leadDensityGPerMm3: leadFields.leadDensityGPerMm3,
  woodDensityGPerMm3: leadFields.woodDensityGPerMm3,
  keyFrontLengthMm: field.millimetres({ ...reach, describe: 'Balance point to the front edge; given, holes in front of it are refused' }).optional(),
  keyBackLengthMm: field.millimetres({ ...reach, describe: 'Balance point to the back end; given, holes behind it are refused' }).optional(),
});

/** What the leads of a key weigh at its front, and what inertia they add. */
export const leadEffectOperation = defineOperation({
  name: 'lead-effect',
  input,
  output: z.strictObject({
    netMassesG: z.array(field.grams()).describe('Each lead less the wood drilled out for it'),
    frontWeightG: field.grams(),
    inertiaGMm2: field.gramSquareMillimetres({ describe: 'Of the leads alone, about the balance point' }),
    effectiveMassG: field.grams({ describe: 'That inertia as a mass at the measuring point' }),
    breakPointsMPerS2: z.array(field.metresPerSecondSquared().nullable()).describe('Acceleration of the key front above which each lead holds the key back; null for a lead that never helps'),
    meeting: z.array(z.array(field.count())).describe('Pairs of leads, counted from 0, whose holes meet if they lie on one line'),
  }),
  formula: ['m = (ρ·(d² − b²) − ρ_wood·d²)·π/4·w', 'FW = FW₀ + Σ m·x/a', 'I = Σ m·x² + (ρ·(d⁴ − b⁴) − ρ_wood·d⁴)·π/32·w', 'm_eff = I/a²', 'break point: g·a/x'],
  sources: ['OWN', 'METALS-MEMORY', 'BIRKETT-LIST'],
  example: {
    bareFrontWeightG: 2, keyFrontMm: 225, keyWidthMm: 13,
    leads: [{ diameterMm: 12.7, positionMm: 180 }, { diameterMm: 12.7, positionMm: 160 }, { diameterMm: 9.5, positionMm: -40 }],
  },
  run: (given) => {
    const { keyFrontLengthMm, keyBackLengthMm, ...key } = given;
    const issues = [...wideBores(key.leads), ...leadsOffKey(key.leads, { keyFrontLengthMm, keyBackLengthMm })];
    if (issues.length > 0) return refuse(...issues);
    const effect = leadEffectOf(key);
    return ok({
      ...effect,
      netMassesG: [...effect.netMassesG],
      breakPointsMPerS2: key.leads.map((lead) => leadBreakPointOf(lead, key.keyFrontMm) ?? null),
      meeting: meetingLeadsOf(key.leads).map((pair) => [...pair]),
    });
  },
});
