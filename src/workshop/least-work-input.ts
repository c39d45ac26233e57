import { type KeyParts, type KeyTouch, type LeastWorkProblem, type Levers, type Register, type TouchAnalysis, type WorkKey, type WorkTarget, askedUpWeightOf, registerOf, targetOf } from '#action';
import { type ActionTerms, type BenchOperation, type BenchSetUp, type Instrument, type KeyNumber, type BenchPart, type Reading, type TouchIntent, benchParts, benchSetUps, compassOf } from '#instrument';
import { type Grams, grams, ratio } from '#units';
import { benchJobs, jobsOf, needsOf } from './bench-jobs.ts';
import { type FrictionExcess, frictionExcessOf } from './friction-excess.ts';
import { leastFeltOf } from './hammer-input.ts';
import { leadBedOf } from './plan-bed.ts';
import { type SizesAt, leadsAt, sizesAt } from './plan-sizes.ts';
import { leversOf } from './touch-plan.ts';
import { type KeyAmount, frictionAmountsOf, hammerAmountsOf, leadAmountsOf, ratioAmountsOf } from './work-amounts.ts';

/** What the least work on an instrument is worked out from. */
export interface WorkMaterial {
  readonly instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi'>;
  /** Standing readings; those of other cycles and states are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly intent: TouchIntent;
  readonly terms: ActionTerms | null;
  /** The touch as found. */
  readonly touch: TouchAnalysis;
}

/** What had to be taken for granted, and for which keys; words under `leastWork.assumed.<name>`. */
export interface WorkAssumption {
  readonly what: 'keyFrictionUnweighed' | 'excessStated' | 'excessReckoned' | 'excessUsual' | 'lighterHalf' | 'noUsualFriction' | 'noParts' | 'noLevers' | 'feltUnread' | 'feltSpent' | 'newHammer' | 'usualLead' | 'leadsUnnoted' | 'frontUnweighed' | 'noLeastUp' | 'anyLead' | 'excessUsualUpright' | 'noPlannedFriction';
  readonly keys: readonly KeyNumber[];
}

/** Why a key does not enter; words under `leastWork.left.<name>`. */
export interface WorkLeft {
  readonly why: 'outcome' | 'upAboveDown' | 'unweighed';
  readonly keys: readonly KeyNumber[];
}

export interface GatheredWork {
  /** Absent where no key was weighed, or no job has minutes. */
  readonly problem?: LeastWorkProblem;
  readonly left: readonly WorkLeft[];
  /** Jobs and set-ups nobody put a time to: those jobs are not offered, those set-ups are counted as taking none. */
  readonly untimed: { readonly operations: readonly BenchOperation[]; readonly setUps: readonly BenchSetUp[] };
  readonly assumed: readonly WorkAssumption[];
  /** Room that the doubt of the weighings asks for, by register. */
  readonly rooms: readonly WorkRoom[];
  /** Parts that jobs offered use up and nobody put a price to. */
  readonly unpriced: readonly BenchPart[];
}

/** The room a register asks for. */
export interface WorkRoom {
  readonly register: Register['name'];
  /** Expanded uncertainty of its least certain weight; absent where one of its keys states none. */
  readonly doubtG?: Grams;
  /** What is kept of every limit; absent where none is asked, or the doubt is as wide as the tolerance. */
  readonly guardG?: Grams;
}

interface Entry {
  readonly touch: KeyTouch;
  readonly excess: FrictionExcess | undefined;
  readonly parts: KeyParts | undefined;
  readonly levers: Levers | undefined;
  readonly felt: 'enough' | 'spent' | 'unread';
  readonly hasLeads: boolean;
  readonly amounts: readonly KeyAmount[];
}

/** Coverage factor of the expanded uncertainty. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/**
 * Gathers the touch as found, what is asked and the shop's minutes into the question of the least work, with what each job can do at each
 * key as the diagnosis estimates it, and lists what had to be assumed. Jobs without minutes are not offered; nothing is put in for them.
 * Keys that gave no number, or contradict themselves, stay out and are named.
 * @source OWN · PRACTICE where estimates say so
 */
export function leastWorkInputOf(material: WorkMaterial): GatheredWork {
  const { touch: { keys }, terms, instrument: { kind } } = material;
  const sizes = sizesAt(material.readings, material.cycle, 'found');
  const areLeadsNoted = keys.some(({ key }) => leadsAt(sizes, key).length > 0);
  const offered = jobsOf(kind).filter((operation) => minutesOf(terms, operation) !== undefined);
  const entries = keys.filter((touch) => leftOf(touch) === undefined).map((touch) => entryOf(touch, { material, sizes, areLeadsNoted, offered }));
  const needed = benchSetUps.filter((setUp) => offered.some((operation) => needsOf(operation, kind).includes(setUp)));
  const rooms = roomsOf(material, entries);
  return {
    ...(entries.length === 0 || offered.length === 0 ? {} : { problem: problemOf(material, entries, { offered, needed, rooms }) }),
    left: (['outcome', 'upAboveDown', 'unweighed'] as const).map((why) => ({ why, keys: keys.filter((touch) => leftOf(touch) === why).map(({ key }) => key) })).filter((one) => one.keys.length > 0),
    untimed: { operations: jobsOf(kind).filter((operation) => !offered.includes(operation)), setUps: needed.filter((setUp) => setUpMinutesOf(terms, setUp) === undefined) },
    assumed: assumptionsOf(material, entries, { sizes, areLeadsNoted, offered }),
    rooms,
    unpriced: benchParts.filter((part) => offered.some((operation) => benchJobs[operation].part === part) && priceOf(terms, part) === undefined),
  };
}

function leftOf({ figures, balanceWeightG, upAboveDown }: KeyTouch): WorkLeft['why'] | undefined {
  if (figures.outcome !== undefined) return 'outcome';
  if (upAboveDown) return 'upAboveDown';
  return balanceWeightG === undefined ? 'unweighed' : undefined;
}

const minutesOf = (terms: ActionTerms | null, operation: BenchOperation): number | undefined => terms?.operationMinutes.find((one) => one.operation === operation)?.minutes;
const priceOf = (terms: ActionTerms | null, part: BenchPart | undefined): number | undefined => terms?.partPrices.find((one) => one.part === part)?.priceMinor;
const setUpMinutesOf = (terms: ActionTerms | null, setUp: BenchSetUp): number | undefined => terms?.setUpMinutes.find((one) => one.setUp === setUp)?.minutes;

interface Gathering {
  readonly sizes: SizesAt;
  readonly areLeadsNoted: boolean;
  readonly offered: readonly BenchOperation[];
}

function entryOf(touch: KeyTouch, { material, sizes, areLeadsNoted, offered }: Gathering & { readonly material: WorkMaterial }): Entry {
  const { key, colour, figures, weightRatio, reference } = touch;
  const { terms, instrument } = material;
  const compass = compassOf(instrument);
  const levers = leversOf(sizes, colour);
  const parts = partsOf(touch);
  const felt = feltOf(sizes.ofKey(key, 'feltOverWoodMm'), leastFeltOf(terms)[registerOf(compass, key).name]);
  const leads = leadsAt(sizes, key);
  const excess = frictionExcessOf({ touch, kind: instrument.kind, levers, terms });
  const amounts = [
    ...frictionAmountsOf(excess),
    ...(parts === undefined || levers === undefined || weightRatio === undefined ? [] : ratioAmountsOf(weightRatio, levers)),
    ...(parts === undefined ? [] : hammerAmountsOf(parts, reference?.hammerWeightG ?? parts.hammerWeightG, felt === 'spent')),
    ...leadAmountsOf({ figures, keyFrontMm: sizes.ofColour(colour, 'keyFrontMm'), bed: leadBedOf({ key, colour, compass, sizes, terms }), leads, areLeadsNoted, terms }),
  ];
  return { touch, excess, parts, levers, felt, hasLeads: leads.length > 0, amounts: amounts.filter(({ operation }) => offered.includes(operation)) };
}

/** Parts of a key, where all were weighed and agree with its touch. */
function partsOf({ figures, keyRatio, weightRatio }: KeyTouch): KeyParts | undefined {
  const { frontWeightG, hammerWeightG, wippenWeightG, helperSpringG } = figures;
  if (frontWeightG === undefined || hammerWeightG === undefined || wippenWeightG === undefined || keyRatio === undefined || weightRatio === undefined || weightRatio <= 0) return undefined;
  return { frontWeightG: frontWeightG.value, hammerWeightG: hammerWeightG.value, wippenWeightG: wippenWeightG.value, keyRatio: ratio(keyRatio), ...(helperSpringG === undefined ? {} : { helperSpringG: helperSpringG.value }) };
}

function feltOf(read: number | undefined, least: number): Entry['felt'] {
  if (read === undefined) return 'unread';
  return read <= least ? 'spent' : 'enough';
}

interface Asked {
  readonly offered: readonly BenchOperation[];
  readonly needed: readonly BenchSetUp[];
  readonly rooms: readonly WorkRoom[];
}

function problemOf(material: WorkMaterial, entries: readonly Entry[], { offered, needed, rooms }: Asked): LeastWorkProblem {
  const { intent, terms, instrument } = material;
  const timed = needed.flatMap((name) => {
    const minutes = setUpMinutesOf(terms, name);
    return minutes === undefined ? [] : [{ name, minutes }];
  });
  const least = askedUpWeightOf(intent);
  const target: WorkTarget = {
    quantity: intent.even === 'balanceWeight' ? 'balanceWeight' : 'downWeight', toleranceG: grams(intent.toleranceG),
    ...(least === undefined ? {} : { minUpWeightG: grams(least) }),
  };
  return {
    keys: entries.map((entry) => workKeyOf(entry, material, rooms)),
    operations: offered.map((name) => {
      const { changes, group, renews, part } = benchJobs[name];
      const partsMinor = priceOf(terms, part);
      return { name, changes, minutes: minutesOf(terms, name) ?? 0, setups: needsOf(name, instrument.kind).filter((setUp) => timed.some((one) => one.name === setUp)), ...(partsMinor === undefined ? {} : { partsMinor }), ...(group === undefined ? {} : { group }), ...(renews === undefined ? {} : { renews }) };
    }),
    setups: timed,
    target,
  };
}

function workKeyOf({ touch, parts, amounts }: Entry, { intent, terms, instrument }: WorkMaterial, rooms: readonly WorkRoom[]): WorkKey {
  const { key, figures: { downWeightG, upWeightG }, frictionG = 0, correctedFrictionG } = touch;
  if (downWeightG === undefined || upWeightG === undefined) throw new Error('only weighed keys enter');
  const register = registerOf(compassOf(instrument), key);
  const guardG = rooms.find(({ register: name }) => name === register.name)?.guardG;
  const frictionToG = mostFrictionOf(register, terms, instrument);
  const biasG = correctedFrictionG === undefined ? 0 : frictionG - correctedFrictionG;
  return {
    key, downWeightG: downWeightG.value, upWeightG: upWeightG.value, targetG: grams(targetOf(intent, key)),
    ...(parts === undefined ? {} : { parts }),
    ...(guardG === undefined ? {} : { guardG }),
    ...(frictionToG === undefined ? {} : { frictionToG: grams(frictionToG + biasG) }),
    amounts,
  };
}

/** The most friction a key of a register may keep, the slack of what is usual left on top; undefined where nothing is asked. */
function mostFrictionOf({ name, frictionG: [, usual], slackG }: Register, terms: ActionTerms | null, { kind }: WorkMaterial['instrument']): number | undefined {
  if (terms?.frictionLimit === 'planned') {
    const planned = { bass: terms.frictionBassG, middle: terms.frictionMiddleG, treble: terms.frictionTrebleG }[name];
    return planned === null ? undefined : planned + slackG;
  }
  return terms?.frictionLimit === 'usual' && kind === 'grand' ? usual + slackG : undefined;
}

/** The room each register asks for and gets. */
function roomsOf({ intent, terms, instrument }: WorkMaterial, entries: readonly Entry[]): readonly WorkRoom[] {
  return (['bass', 'middle', 'treble'] as const).flatMap((register): readonly WorkRoom[] => {
    const own = entries.filter(({ touch: { key } }) => registerOf(compassOf(instrument), key).name === register);
    if (own.length === 0) return [];
    const doubtG = doubtOf(own, intent);
    if (doubtG === undefined) return [{ register }];
    return [{ register, doubtG, ...(terms?.workRoom === 'doubt' && doubtG < intent.toleranceG ? { guardG: doubtG } : {}) }];
  });
}

/** Expanded uncertainty of the least certain weight that is judged; undefined where one of them states none. */
function doubtOf(entries: readonly Entry[], intent: TouchIntent): Grams | undefined {
  const judged = entries.flatMap(({ touch: { figures, standardUncertaintyG } }) => [
    intent.even === 'balanceWeight' ? standardUncertaintyG : figures.downWeightG?.standardUncertaintyG,
    ...(askedUpWeightOf(intent) === undefined ? [] : [figures.upWeightG?.standardUncertaintyG]),
  ]);
  const known = judged.flatMap((one) => one ?? []);
  return known.length === 0 || known.length < judged.length ? undefined : grams(COVERAGE * Math.max(...known));
}

function assumptionsOf({ intent, terms, instrument }: WorkMaterial, entries: readonly Entry[], { areLeadsNoted, offered }: Gathering): readonly WorkAssumption[] {
  const does = (...names: readonly BenchOperation[]): boolean => names.some((name) => offered.includes(name));
  const has = ({ amounts }: Entry, ...names: readonly BenchOperation[]): boolean => amounts.some(({ operation }) => names.includes(operation));
  const where = (what: WorkAssumption['what'], holds: (entry: Entry) => boolean): WorkAssumption => ({ what, keys: entries.filter(holds).map(({ touch }) => touch.key) });
  const rubs = offered.some((name) => benchJobs[name].changes === 'friction');
  const isApart = (how: FrictionExcess['apart']) => ({ excess }: Entry): boolean => rubs && excess?.apart === how && excess.wippenG + excess.hammerG + excess.rollerG > 0;
  const isGrand = instrument.kind === 'grand';
  const hasDrills = (terms?.drillsMm ?? []).length > 0;
  return [
    where('noLeastUp', () => askedUpWeightOf(intent) === undefined && terms?.frictionLimit == null),
    where('keyFrictionUnweighed', ({ excess }) => rubs && excess !== undefined && !excess.isKeyWeighed),
    where('excessStated', ({ excess }) => rubs && excess?.apart === 'stated'),
    where('excessReckoned', isApart('reckoned')),
    where(isGrand ? 'excessUsual' : 'excessUsualUpright', isApart('usual')),
    where('noPlannedFriction', ({ touch }) => terms?.frictionLimit === 'planned' && mostFrictionOf(registerOf(compassOf(instrument), touch.key), terms, instrument) === undefined),
    where('lighterHalf', (entry) => has(entry, 'cleanKeyPins', 'treatRoller')),
    where('noUsualFriction', ({ touch }) => rubs && touch.usualFrictionG === undefined),
    where('noParts', ({ parts }) => isGrand && parts === undefined && does('moveCapstan', 'moveRoller', 'trimHammer', 'changeHammer')),
    where('noLevers', ({ parts, levers }) => parts !== undefined && levers === undefined && does('moveCapstan', 'moveRoller')),
    where('feltUnread', (entry) => entry.felt === 'unread' && has(entry, 'trimHammer')),
    where('feltSpent', ({ felt, parts }) => felt === 'spent' && parts !== undefined && does('trimHammer')),
    where('newHammer', (entry) => has(entry, 'changeHammer')),
    where('usualLead', (entry) => has(entry, 'addLead') && !hasDrills),
    where('leadsUnnoted', () => !areLeadsNoted && does('removeLead', 'moveLead')),
    where('frontUnweighed', ({ touch }) => touch.figures.frontWeightG === undefined && does('addLead', 'removeLead')),
    where('anyLead', (entry) => has(entry, 'addLead', 'moveLead', 'removeLead')),
  ].filter(({ keys }) => keys.length > 0);
}
