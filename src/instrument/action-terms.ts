import { currencyOf } from '#money';
import { z } from 'zod';

/** Jobs on one key that the shop may put a time to. */
export const benchOperations = [
  'cleanKeyPins', 'easeKeyBushing', 'rebushKey', 'repinWippen', 'repinHammer', 'treatRoller', 'replaceRoller', 'moveCapstan', 'moveRoller',
  'trimHammer', 'changeHammer', 'addLead', 'moveLead', 'removeLead',
] as const;
export type BenchOperation = (typeof benchOperations)[number];

/** What is set up once for all the keys that need it. */
export const benchSetUps = ['actionOut', 'keysOut', 'stackOff', 'hammersOff', 'weighing'] as const;
export type BenchSetUp = (typeof benchSetUps)[number];

/** What a job uses up, one for each key; words under `benchPart.<name>`. */
export const benchParts = ['bushing', 'wippenPin', 'hammerPin', 'roller', 'hammer', 'lead'] as const;
export type BenchPart = (typeof benchParts)[number];

/** Metals other than lead that new inserts may be of. */
export const insertMetals = ['bismuth', 'brass', 'tungstenPlastic', 'other'] as const;
export type InsertMetal = (typeof insertMetals)[number];

const keyRegisters = ['bass', 'middle', 'treble'] as const;

const within = (least: number, most: number) => z.number().min(least).max(most).nullable().default(null);
const above = (most: number) => z.number().gt(0).max(most).nullable().default(null);
/** No part costs more, in the smallest unit. */
const MOST_MINOR = 100_000_000;
const minutes = z.number().min(0).max(2000);
const key = z.number().int().min(1).max(128);

/** What a register is to be regulated to; the one of blow, dip and aftertouch that floats follows from the others. */
const regulationSpecSchema = z.strictObject({
  register: z.enum(keyRegisters),
  blowMm: within(5, 120), letOffMm: within(0, 30), dropMm: within(0, 30), dipMm: within(1, 30), aftertouchMm: within(-5, 10), checkMm: within(0, 80),
});

/** A stretch of every key where no hole may come, from the balance pin toward the front; negative behind the pin. */
const keepOutSchema = z.strictObject({ fromMm: z.number().min(-500).max(500), toMm: z.number().min(-500).max(500) })
  .refine(({ fromMm, toMm }) => fromMm < toMm, { path: ['toMm'], message: 'more than where it begins' });

const hammerFields = {
  /** `anchors`: a quadratic through three; `smoothed`: the measured set, smoothed at its own level; null: as found. */
  hammerCurve: z.enum(['anchors', 'smoothed']).nullable().default(null),
  hammerAnchors: z.array(z.strictObject({ key, weightG: z.number().min(0.1).max(60) })).max(3).default([]),
  /** Smoothing of the measured set: 100 follows its sections, 10 000 is nearly a quadratic. */
  hammerLambda: above(1e9),
  /** Hammer hours: how it is used, how long, how often it was reshaped, and what the shop reckons with. */
  hammerUse: z.enum(['home', 'teaching', 'concert']).nullable().default(null),
  hoursPerWeek: within(0, 168),
  hammerAgeYears: within(0, 200),
  reshapeCount: z.number().int().min(0).max(20).nullable().default(null),
  reshapeHours: above(100000),
  mostReshapes: z.number().int().min(0).max(20).nullable().default(null),
  leastFeltBassMm: within(0, 60),
  leastFeltTrebleMm: within(0, 60),
};

const touchFields = {
  /** Ratios by weights and by distance are two figures of two kinds; neither stands in for the other. */
  weightRatioNatural: above(20), weightRatioSharp: above(20), distanceRatioNatural: above(20), distanceRatioSharp: above(20),
  plannedWippenG: within(0.1, 120),
  plannedSpringG: within(0, 150),
  /** Friction expected once the work is done; null: as found. */
  frictionBassG: within(0, 100), frictionMiddleG: within(0, 100), frictionTrebleG: within(0, 100),
};

const shiftFields = {
  /** Away from the hammer centre. */
  rollerShiftMm: within(-5, 5),
  /** Away from the player. */
  capstanShiftMm: within(-20, 20),
  boreShiftMm: within(-10, 10),
  hammerChangeG: within(-5, 5),
  hammerChangePct: within(-50, 50),
  topOldMm: within(0, 20), topOldGPerMm3: above(0.03), topNewMm: within(0, 20), topNewGPerMm3: above(0.03),
  topAreaMm2: above(10000), topCentroidMm: within(0, 200), topPlanedMm: within(0, 20),
};

const leadFields = {
  /** Diameters the shop drills and has leads for. */
  drillsMm: z.array(z.number().min(2).max(40)).max(12).default([]),
  leadGapMm: within(0, 50), leadGridMm: above(50), leadToleranceG: above(20),
  mostLeads: z.number().int().min(0).max(8).nullable().default(null),
  /** What a new hole counts as beside the inertia of the leads: high reuses old holes first, 0 asks for least inertia alone. */
  newHoleCostG: within(0, 10000),
  /** What each lead, each plug and each lead drilled out counts as, in the same grams. */
  leadCostG: within(0, 10000), plugCostG: within(0, 10000), trimCostG: within(0, 10000),
  /** Drills the shop drills leads out with. */
  trimDrillsMm: z.array(z.number().min(1).max(36)).max(12).default([]),
  keepOuts: z.array(keepOutSchema).max(12).default([]),
  /** What new inserts are of where not of lead, and its density; null: lead, or the usual density of that metal. */
  insertMetal: z.enum(insertMetals).nullable().default(null), insertGPerMm3: above(0.03),
  leadGPerMm3: above(0.03), woodGPerMm3: above(0.002),
  /** Front weight above which a key is called loaded too heavily. */
  mostFrontWeightG: within(0, 200),
};

const inertiaFields = {
  wippenInertiaGMm2: above(1e7), shankG: above(60), shankLengthMm: above(500),
};

const workFields = {
  operationMinutes: z.array(z.strictObject({ operation: z.enum(benchOperations), minutes })).max(benchOperations.length).default([]),
  setUpMinutes: z.array(z.strictObject({ setUp: z.enum(benchSetUps), minutes })).max(benchSetUps.length).default([]),
  /** What the shop pays for one part, in the smallest unit of its money. */
  partPrices: z.array(z.strictObject({ part: z.enum(benchParts), priceMinor: z.number().int().min(0).max(MOST_MINOR) })).max(benchParts.length).default([]),
  currency: z.string().refine((code) => currencyOf(code) === code, 'a currency of ISO 4217').nullable().default(null),
  /** Where friction above the usual sits as far as no weighing tells; null: spread as friction usually is. */
  excessSits: z.enum(['key', 'centres', 'roller']).nullable().default(null),
  /** `usual`: friction too must come within what is usual, so that no lead hides it; `planned`: within what the plan expects of its register; null: only what the touch asks. */
  frictionLimit: z.enum(['usual', 'planned']).nullable().default(null),
  /** `doubt`: work leaves room for the doubt of the weighings inside every limit; null: none. */
  workRoom: z.enum(['doubt']).nullable().default(null),
};

const regulationFields = {
  /** Which of the three follows from the other two. */
  regulationFloats: z.enum(['dip', 'blow', 'aftertouch']).nullable().default(null),
  regulation: z.array(regulationSpecSchema).max(keyRegisters.length).default([]),
  keyLevelMm: within(-30, 30), sharpHeightMm: within(0, 40), spreadMm: within(50, 200),
  /** Felt that gives and lost motion, at the key front. */
  lossMm: within(0, 5),
  /** At the key front: dip, aftertouch, level and sharps. */
  regulationToleranceMm: above(10),
  blowToleranceMm: above(10), letOffToleranceMm: above(10), dropToleranceMm: above(10), checkToleranceMm: above(20), spreadToleranceMm: above(10),
};

const uprightFields = {
  /** Hammer centre to where the jack pushes the butt. */
  buttMm: above(100),
  tiltDeg: within(-30, 30),
  /** Hammer-return spring about the hammer centre, and damper at the capstan, asked of every key. */
  plannedSpringTorqueGMm: within(0, 5000),
  plannedDamperG: within(0, 300),
};

const given = (list: readonly string[]): boolean => new Set(list).size === list.length;

/** What is stated and asked of the action of one stay; `null` or an empty list means not stated, and what was taken instead is told. */
export const actionTermsSchema = z.strictObject({
  ...hammerFields, ...touchFields, ...shiftFields, ...leadFields, ...inertiaFields, ...workFields, ...regulationFields, ...uprightFields,
  remark: z.string().max(4000).default(''),
}).refine(({ hammerCurve, hammerAnchors }) => hammerCurve !== 'anchors' || hammerAnchors.length === 3, { path: ['hammerAnchors'], message: 'three anchors' })
  .refine(({ hammerAnchors }) => hammerAnchors.every((anchor, index) => anchor.key > (hammerAnchors[index - 1]?.key ?? 0)), { path: ['hammerAnchors'], message: 'each anchor at a key above the one before' })
  .refine(({ regulation }) => given(regulation.map(({ register }) => register)), { path: ['regulation'], message: 'each register once' })
  .refine(({ operationMinutes }) => given(operationMinutes.map(({ operation }) => operation)), { path: ['operationMinutes'], message: 'each operation once' })
  .refine(({ setUpMinutes }) => given(setUpMinutes.map(({ setUp }) => setUp)), { path: ['setUpMinutes'], message: 'each once' })
  .refine(({ partPrices }) => given(partPrices.map(({ part }) => part)), { path: ['partPrices'], message: 'each part once' })
  .refine(({ partPrices, currency }) => partPrices.length === 0 || currency !== null, { path: ['currency'], message: 'the currency of the prices' })
  .refine(({ insertMetal, insertGPerMm3 }) => insertMetal !== 'other' || insertGPerMm3 !== null, { path: ['insertGPerMm3'], message: 'the density of that metal' })
  .refine(({ hammerChangeG, hammerChangePct }) => hammerChangeG === null || hammerChangePct === null, { path: ['hammerChangePct'], message: 'grams or per cent, not both' });
export type ActionTerms = z.output<typeof actionTermsSchema>;
export type ActionTermsDraft = z.input<typeof actionTermsSchema>;
