import { type HammerAnchors, type HammerPlan, type KeyTouch, type Levers, type PlanKey, type Register, type TouchAnalysis, leverRatiosOf, plannedHammersOf, registerOf, targetOf } from '#action';
import { type ActionTerms, type Instrument, type KeyColour, type KeyNumber, type Reading, type TouchIntent, compassOf, keysOf } from '#instrument';
import { medianOf } from '#numerics';
import type { Issue } from '#result';
import { type Grams, grams, millimetres, ratio } from '#units';
import { type KeyPlace, boredOf, inertiaOf, reachOf, regulationOf } from './plan-bed.ts';
import { type SizesAt, leadsAt, sizesAt } from './plan-sizes.ts';

/** What the planned touch of an instrument is read from. */
export interface PlanMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'sections'>;
  /** Standing readings; those of other cycles and states are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly intent: TouchIntent;
  readonly terms: ActionTerms | null;
  /** The touch as found. */
  readonly touch: TouchAnalysis;
}

/** What had to be taken for granted, and for which keys; words under `plan.assumed.<name>`. */
export interface PlanAssumption {
  readonly what: 'hammersAsFound' | 'smoothingUsual' | 'smoothedWhole' | 'ratioAsFound' | 'wippenAsFound' | 'wippenMedian' | 'noSpring' | 'frictionFound' | 'frictionUsual' | 'lossUsual' | 'noLeadsNoted' | 'leadsAsTheyLie' | 'reachUnknown' | 'massUnknown' | 'regulationUnknown';
  readonly keys: readonly KeyNumber[];
}

/** Why a key cannot be planned; words under `plan.missing.<name>`. */
export interface PlanMissing {
  readonly what: 'arms' | 'ratio' | 'hammer' | 'wippen';
  readonly keys: readonly KeyNumber[];
}

export interface GatheredPlan {
  readonly keys: readonly PlanKey[];
  readonly missing: readonly PlanMissing[];
  readonly assumed: readonly PlanAssumption[];
  /** What is wrong with the curve of hammers; the keys are then planned with the hammers as found. */
  readonly issues: readonly Issue[];
}

/** Smoothing of a measured set where none is stated: follows what runs over an octave, not a single hammer. @source PRACTICE */
export const USUAL_LAMBDA = 1000;

interface Gathering extends PlanMaterial {
  readonly sizes: SizesAt;
  readonly areLeadsNoted: boolean;
  readonly hammers: readonly (Grams | null)[];
}

/**
 * Gathers intent, terms and the touch as found into what the plan of every key takes, and lists what had to be assumed.
 *
 * What the terms state goes first; where they are silent the hammers, the ratio by weights of the colour and the wippen stay as found,
 * and friction is the median found in its register, or the middle of what is usual there. A missing ratio by weights is never
 * filled from the lever arms. A key without arms, ratio, hammer or wippen is not planned and is named.
 * @source OWN · PRACTICE usual friction
 */
export function touchPlanInputOf(material: PlanMaterial): GatheredPlan {
  const sizes = sizesAt(material.readings, material.cycle, 'found');
  const { touch: { keys }, terms } = material;
  const found = keys.map(({ figures }) => figures.hammerWeightG?.value ?? null);
  const hammers = plannedHammersOf(hammerPlanOf(material), found);
  const areLeadsNoted = keys.some(({ key }) => leadsAt(sizes, key).length > 0);
  const gathering: Gathering = { ...material, sizes, areLeadsNoted, hammers: hammers.ok ? hammers.value : found };
  const tried = keys.map((key) => ({ key, plan: planKeyOf(gathering, key) }));
  const planned = tried.flatMap(({ plan }) => (typeof plan === 'string' ? [] : [plan]));
  const missing = (['arms', 'ratio', 'hammer', 'wippen'] as const).map((what) => ({ what, keys: tried.filter(({ plan }) => plan === what).map(({ key }) => key.key) }));
  return { keys: planned, missing: missing.filter((each) => each.keys.length > 0), assumed: assumptionsOf(gathering, planned, terms), issues: hammers.ok ? [] : hammers.issues };
}

function hammerPlanOf({ terms, instrument: { sections } }: PlanMaterial): HammerPlan {
  if (terms?.hammerCurve === 'anchors') return { after: 'anchors', anchors: terms.hammerAnchors.map(({ key, weightG }) => ({ key, weightG: grams(weightG) })) as unknown as HammerAnchors };
  return terms?.hammerCurve === 'smoothed' ? { after: 'smoothed', lambda: terms.hammerLambda ?? USUAL_LAMBDA, sections } : { after: 'found' };
}

function planKeyOf(gathering: Gathering, touch: KeyTouch): PlanKey | PlanMissing['what'] {
  const { terms, sizes, instrument, intent, areLeadsNoted } = gathering;
  const { key, colour, figures } = touch;
  const levers = leversOf(sizes, colour);
  if (levers === undefined) return 'arms';
  const weightRatio = terms?.[colour === 'natural' ? 'weightRatioNatural' : 'weightRatioSharp'] ?? gathering.touch.weightRatio[colour].value;
  if (weightRatio === undefined) return 'ratio';
  const hammerWeightG = gathering.hammers[key - 1];
  if (hammerWeightG == null) return 'hammer';
  const wippen = terms?.plannedWippenG ?? figures.wippenWeightG?.value ?? medianWippenOf(gathering, colour);
  if (wippen === undefined) return 'wippen';
  const place: KeyPlace = { key, colour, compass: compassOf(instrument), sizes, terms };
  const distanceRatio = ratio(terms?.[colour === 'natural' ? 'distanceRatioNatural' : 'distanceRatioSharp'] ?? leverRatiosOf(levers).actionRatio);
  return {
    key, colour, hammerWeightG, wippenWeightG: grams(wippen), levers, weightRatio: ratio(weightRatio), distanceRatio,
    springG: grams(terms?.plannedSpringG ?? figures.helperSpringG?.value ?? 0),
    frictionG: frictionFor(gathering, registerOf(place.compass, key).name),
    asked: { even: intent.even === 'balanceWeight' ? 'balanceWeight' : 'downWeight', targetG: grams(targetOf(intent, key)), upWeightMinG: grams(intent.upWeightMinG) },
    found: foundOf(touch),
    ...(terms?.mostFrontWeightG == null ? {} : { mostFrontWeightG: grams(terms.mostFrontWeightG) }),
    ...defined('reach', reachOf(place, levers.keyFrontMm, areLeadsNoted)),
    ...defined('inertia', inertiaOf(place)),
    ...defined('regulation', regulationOf(place, distanceRatio, levers.keyFrontMm)),
    ...defined('bored', boredOf(place)),
  };
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly (keyof Levers)[];

/** The six lever arms of a colour, where all were measured. */
export function leversOf(sizes: SizesAt, colour: KeyColour): Levers | undefined {
  const arms = ARMS.flatMap((arm) => {
    const value = sizes.ofColour(colour, arm);
    return value === undefined || value <= 0 ? [] : [[arm, millimetres(value)] as const];
  });
  return arms.length < ARMS.length ? undefined : (Object.fromEntries(arms) as unknown as Levers);
}

function foundOf({ figures, balanceWeightG, frictionG }: KeyTouch): PlanKey['found'] {
  return {
    ...defined('downWeightG', figures.downWeightG?.value), ...defined('upWeightG', figures.upWeightG?.value),
    ...defined('frontWeightG', figures.frontWeightG?.value), ...defined('hammerWeightG', figures.hammerWeightG?.value),
    ...defined('balanceWeightG', balanceWeightG === undefined ? undefined : grams(balanceWeightG)), ...defined('frictionG', frictionG === undefined ? undefined : grams(frictionG)),
  };
}

function defined<K extends string, V>(name: K, value: V | undefined): Partial<Record<K, V>> {
  return value === undefined ? {} : ({ [name]: value } as Record<K, V>);
}

function medianWippenOf({ touch }: Gathering, colour: KeyColour): number | undefined {
  const known = touch.keys.flatMap((key) => (key.colour === colour && key.figures.wippenWeightG !== undefined ? [key.figures.wippenWeightG.value] : []));
  return known.length === 0 ? undefined : medianOf(known);
}

const STATED = { bass: 'frictionBassG', middle: 'frictionMiddleG', treble: 'frictionTrebleG' } as const satisfies Record<Register['name'], keyof ActionTerms>;

function frictionFor(gathering: Gathering, name: Register['name']): Grams {
  const stated = gathering.terms?.[STATED[name]];
  if (stated != null) return grams(stated);
  const found = frictionsFound(gathering, name);
  if (found.length > 0) return grams(medianOf(found));
  const compass = compassOf(gathering.instrument);
  const [low, high] = keysOf(compass).map((key) => registerOf(compass, key)).find((register) => register.name === name)?.frictionG ?? [0, 0];
  return grams((low + high) / 2);
}

function frictionsFound({ touch, instrument }: PlanMaterial, name: Register['name']): readonly number[] {
  const compass = compassOf(instrument);
  return touch.keys.flatMap(({ key, frictionG }) => (frictionG !== undefined && registerOf(compass, key).name === name ? [frictionG] : []));
}

function assumptionsOf(gathering: Gathering, planned: readonly PlanKey[], terms: ActionTerms | null): readonly PlanAssumption[] {
  const { touch, sizes, instrument, areLeadsNoted } = gathering;
  const compass = compassOf(instrument);
  const figuresOf = new Map(touch.keys.map(({ key, figures }) => [key, figures]));
  const where = (what: PlanAssumption['what'], holds: (plan: PlanKey) => boolean): PlanAssumption => ({ what, keys: planned.filter(holds).map(({ key }) => key) });
  const isFrictionStated = (key: KeyNumber): boolean => terms?.[STATED[registerOf(compass, key).name]] != null;
  const isFrictionFound = (key: KeyNumber): boolean => frictionsFound(gathering, registerOf(compass, key).name).length > 0;
  const hasWippen = (key: KeyNumber): boolean => figuresOf.get(key)?.wippenWeightG !== undefined;
  const isSmoothed = terms?.hammerCurve === 'smoothed';
  return [
    where('hammersAsFound', () => (terms?.hammerCurve ?? null) === null),
    where('smoothingUsual', () => isSmoothed && terms.hammerLambda === null),
    where('smoothedWhole', () => isSmoothed && instrument.sections.length === 0),
    where('ratioAsFound', ({ colour }) => terms?.[colour === 'natural' ? 'weightRatioNatural' : 'weightRatioSharp'] == null),
    where('wippenAsFound', ({ key }) => terms?.plannedWippenG == null && hasWippen(key)),
    where('wippenMedian', ({ key }) => terms?.plannedWippenG == null && !hasWippen(key)),
    where('noSpring', ({ key }) => terms?.plannedSpringG == null && figuresOf.get(key)?.helperSpringG === undefined),
    where('frictionFound', ({ key }) => !isFrictionStated(key) && isFrictionFound(key)),
    where('frictionUsual', ({ key }) => !isFrictionStated(key) && !isFrictionFound(key)),
    where('lossUsual', ({ regulation }) => regulation !== undefined && terms?.lossMm == null),
    where('noLeadsNoted', ({ key }) => areLeadsNoted && leadsAt(sizes, key).length === 0),
    where('leadsAsTheyLie', ({ inertia }) => inertia !== undefined),
    where('reachUnknown', ({ reach }) => reach === undefined),
    where('massUnknown', ({ inertia }) => inertia === undefined),
    where('regulationUnknown', ({ regulation }) => regulation === undefined),
  ].filter(({ keys }) => keys.length > 0);
}
