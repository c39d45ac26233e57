import { defineOperation, field } from '#operation';
import { andThen, ok, refuse } from '#result';
import { grams } from '#units';
import { z } from 'zod';
import { keyLeads } from '../leads/key-leads.ts';
import { NODE_LIMIT } from '../leads/key-leads-problem.ts';
import { placesOffKey } from '../leads/key-leads-reach.ts';
import { leadRemediesOf } from '../leads/key-leads-remedy.ts';
import { leadCountsOf, leadWayNames, leadWaysOf } from '../leads/lead-ways.ts';
import { leadFields } from '../leads/schemas.ts';
import { fields } from '../schemas.ts';

const weight = (describe: string) => field.grams({ min: 0, max: 10_000, describe });

/** No key takes more leads, and no grid is finer than needed. */
const MOST_LEADS = 12;
const MOST_PLACES = 2000;
const MOST_DRILLS = 20;
const MOST_HOLES = 30;

const lead = z.strictObject({ diameterMm: leadFields.diameterMm, positionMm: leadFields.positionMm, boreMm: leadFields.boreMm, densityGPerMm3: leadFields.densityGPerMm3 });
const placed = lead.extend({ hole: z.enum(['existing', 'new']) });
const insert = z.strictObject({ diameterMm: leadFields.diameterMm, densityGPerMm3: leadFields.leadDensityGPerMm3.unwrap(), costG: weight('What it counts for beyond a lead').default(grams(0)) });
const length = (describe: string) => field.millimetres({ min: 0.01, max: 10_000, describe }).optional();

const input = z.strictObject({
  keyFrontMm: leadFields.keyFrontMm,
  keyWidthMm: leadFields.keyWidthMm,
  gapMm: field.millimetres({ min: 0, max: 1000, describe: 'Wood between two leads, and between a new hole and an old one; 3 mm or more is usual' }),
  bareFrontWeightG: leadFields.bareFrontWeightG,
  targetFrontWeightG: field.grams({ min: -10_000, max: 10_000, describe: 'Front weight wanted' }),
  toleranceG: weight('Either side of the target; at most 0.1 leaves little to finish'),
  maxLeads: field.count({ max: MOST_LEADS, describe: 'Most leads in the key' }),
  gridMm: z.array(leadFields.positionMm).max(MOST_PLACES).describe('Where the middle of a new hole may be, from the balance point; none for old holes only'),
  diametersMm: z.array(leadFields.diameterMm).max(MOST_DRILLS).describe('Drills there are for new holes'),
  existingHoles: z.array(lead).max(MOST_HOLES).describe('Holes in the key, with or without lead, by their true drilled diameters'),
  newHoleCostG: weight('What a new hole costs, in grams of effective mass: 50 uses old holes first, 0 looks at inertia alone').default(grams(50)),
  leadCostG: weight('What each lead counts for, in an old hole or a new one: few pieces rather than many').default(grams(0)),
  plugCostG: weight('What an old hole counts for whose lead is taken out, to be plugged or to get another metal').default(grams(0)),
  trimCostG: weight('What drilling a lead out counts for').default(grams(0)),
  trimDrillsMm: z.array(leadFields.diameterMm).max(MOST_DRILLS).describe('Drills for drilling a lead out through its middle; of new leads the smallest may be; 1.5 mm of metal stay around it; none: no lead is drilled out').default([]),
  otherInserts: z.array(insert).max(MOST_DRILLS).describe('Inserts of other metals the shop has, for new holes and for old ones of their diameter').default([]),
  compare: z.boolean().describe('Answer other ways beside the optimum: the leads as they lie, old holes alone, fewest pieces, least inertia').default(false),
  keepOutsMm: z.array(z.array(leadFields.positionMm).length(2)).max(100).describe('Stretches no new hole may reach into: balance hole, front mortise, capstan, splices').optional(),
  leadDensityGPerMm3: leadFields.leadDensityGPerMm3,
  woodDensityGPerMm3: leadFields.woodDensityGPerMm3,
  keyFrontLengthMm: length('Balance point to the front edge; given, places in front of it are refused'),
  keyBackLengthMm: length('Balance point to the back end; given, places behind it are refused'),
  hammerWeightG: fields.hammerWeightG.optional(),
  weightRatio: fields.weightRatio.optional(),
  nodeLimit: field.count({ min: 1, max: 100_000_000, describe: 'Steps of the search before the best so far is answered' }).default(NODE_LIMIT),
});

const set = { leads: z.array(placed), frontWeightG: field.grams(), costG: field.grams({ describe: 'Effective mass of the leads, and what the work counts for' }) } as const;
const counts = {
  pieces: field.count({ describe: 'Leads in the key' }), drilled: field.count({ describe: 'New holes' }), trimmed: field.count({ describe: 'Leads drilled out' }), plugged: field.count({ describe: 'Old holes plugged' }), exchanged: field.count({ describe: 'Leads taken out for another metal' }),
  inertiaG: field.grams({ describe: 'Effective mass of the leads at the measuring point' }),
} as const;

/** The leads that give a key its front weight, old holes first, proven. */
export const keyLeadsOperation = defineOperation({
  name: 'key-leads',
  input,
  output: z.strictObject({
    feasible: z.boolean().describe('Whether the target is met; if not, the leads are those that come nearest'),
    ...set,
    plugs: z.array(lead).describe('Old holes to be plugged with wood'),
    proven: z.boolean().describe('Whether no legal set is cheaper, or none meets the target'),
    finish: z.strictObject(set).describe('The same leads with one new hole moved off the grid so that the target is met exactly').optional(),
    counts: z.strictObject(counts).describe('What the answer asks of the bench'),
    ways: z.array(z.strictObject({ way: z.enum(leadWayNames), ...set, ...counts, missG: field.grams({ describe: 'By how much it misses the tolerance; 0 where it does not' }), proven: z.boolean() })).describe('Other ways, each costed as the answer is; those with the same leads left out').optional(),
    reachableG: z.array(field.grams()).length(2).describe('Least and largest front weight within reach').optional(),
    missG: field.grams({ describe: 'By how much the nearest set misses the tolerance' }).optional(),
    wouldReach: z.strictObject({
      maxLeads: field.count({ describe: 'So many leads' }).optional(),
      diameterMm: field.millimetres({ describe: 'A further drill' }).optional(),
      densityGPerMm3: field.gramsPerCubicMillimetre({ describe: 'Heavier inserts' }).optional(),
      targetChangeG: field.grams({ describe: 'Another target' }),
      hammerChangeG: field.grams({ describe: 'Another hammer, given the ratio' }).optional(),
      ratioChange: field.ratio({ describe: 'Another ratio, given the hammer' }).optional(),
    }).describe('Single changes, each of which alone would bring the target within reach').optional(),
  }),
  formula: [
    'min Σ I/a² + c_new·(new holes) + c_lead·(leads) + c_trim·(drilled out) + c_plug·(taken out)',
    'I = m·x² + (ρ·(d⁴ − b⁴) − ρ_wood·d⁴)·π/32·w',
    '|FW₀ + Σ m·x/a − FW*| ≤ tolerance; leads ≤ most',
    '|x_i − x_j| ≥ (d_i + d_j)/2 + gap, a new hole also from every old one',
    'bound: max over λ of λ·(moment lacking) + min over spaced sets of Σ (cost − λ·m·x)',
  ],
  sources: ['OWN', 'LAND-DOIG-1960', 'BELLMAN-1957', 'EVERETT-1963', 'PRACTICE', 'METALS-MEMORY'],
  example: {
    keyFrontMm: 225, keyWidthMm: 13, gapMm: 3, bareFrontWeightG: 2, targetFrontWeightG: 26, toleranceG: 0.1, maxLeads: 4,
    gridMm: [60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170, 180, 190], diametersMm: [9.5, 12.7],
    existingHoles: [{ diameterMm: 12.7, positionMm: 176 }], newHoleCostG: 50, keepOutsMm: [[-40, 40]],
  },
  run: ({ keyFrontLengthMm, keyBackLengthMm, hammerWeightG, weightRatio, compare, keepOutsMm = [], ...given }) => {
    const problem = { ...given, keepOutsMm: keepOutsMm.flatMap(([from, to]) => (from === undefined || to === undefined ? [] : [[from, to] as const])) };
    const issues = placesOffKey(problem, { keyFrontLengthMm, keyBackLengthMm });
    return issues.length > 0 ? refuse(...issues) : andThen(keyLeads(problem), (answer) => {
      const wouldReach = leadRemediesOf(problem, answer, { hammerWeightG, weightRatio });
      const { leads, plugs, finish, reachableG, ...rest } = answer;
      return ok({
        ...rest, leads: [...leads], plugs: [...plugs], counts: leadCountsOf(leads, problem),
        ...(compare ? { ways: leadWaysOf(problem, answer).map((way) => ({ ...way, leads: [...way.leads] })) } : {}),
        ...(finish === undefined ? {} : { finish: { ...finish, leads: [...finish.leads] } }),
        ...(reachableG === undefined ? {} : { reachableG: [...reachableG] }),
        ...(wouldReach === undefined ? {} : { wouldReach }),
      });
    });
  },
});
