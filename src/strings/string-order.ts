import { copperWire, steelWire } from '#materials';
import { type Issue, type Result, ok, refuse } from '#result';
import { type Grams, type KilogramsPerCubicMetre, type Millimetres, grams, millimetres } from '#units';
import { type CoreShape, wireDensityOf } from './section.ts';
import type { Winding, Wrap } from './winding.ts';
import type { WoundEnds } from './wound-string.ts';

/** How much wire a string takes beyond its lengths between the pins. */
export interface WireAllowances {
  readonly pinTurns: number;
  readonly pinDiameterMm: Millimetres;
  /** For the loop, or this string's half of the bend round the hitch pin. */
  readonly hitchMm: Millimetres;
  /** To hold and cut off. */
  readonly spareMm: Millimetres;
}

/** Three coils on a 7 mm pin, a loop, a hand's breadth to spare. @source PRACTICE */
export const usualAllowances: WireAllowances = { pinTurns: 3, pinDiameterMm: millimetres(7), hitchMm: millimetres(60), spareMm: millimetres(100) };

/** Where the wire of one string runs. */
export interface WireRun {
  /** Tuning pin to agraffe or bar. */
  readonly frontLengthMm: Millimetres;
  readonly speakingLengthMm: Millimetres;
  /** Bridge to hitch pin. */
  readonly backLengthMm: Millimetres;
}

interface OrderedBase extends WireRun {
  /** How many alike. */
  readonly count: number;
}

export type OrderedString = OrderedBase & ({ readonly diameterMm: Millimetres; readonly densityKgM3?: KilogramsPerCubicMetre } | (Winding & WoundEnds));

/** Wire of one size to be bought. */
export interface OrderLine {
  readonly use: 'plain' | 'core' | 'wrap';
  readonly diameterMm: Millimetres;
  readonly shape: CoreShape;
  readonly densityKgM3: KilogramsPerCubicMetre;
  /** Strings it goes into. */
  readonly strings: number;
  readonly lengthMm: Millimetres;
  readonly massG: Grams;
}

/**
 * Wire for one string: front + speaking + back length + turns·π·(pin + d) + loop + spare; mm.
 * Leaves out the rise to pins and over the bridge. @source OWN
 */
export function wireLengthOf({ frontLengthMm, speakingLengthMm, backLengthMm }: WireRun, diameterMm: Millimetres, { pinTurns, pinDiameterMm, hitchMm, spareMm }: WireAllowances): Millimetres {
  return millimetres(frontLengthMm + speakingLengthMm + backLengthMm + pinTurns * Math.PI * (pinDiameterMm + diameterMm) + hitchMm + spareMm);
}

/** A layer of wrap: how far it covers, its turns, and the wire in it. */
export interface WrapLength {
  readonly coveredMm: Millimetres;
  readonly turns: number;
  readonly lengthMm: Millimetres;
}

/**
 * Wrap wire of each layer, inner first: turns = covered/d, wire = π·(D_in + d)·turns; mm.
 * The first layer covers the speaking length but for the bare ends, the second leaves the steps too. Close-laid round wire;
 * a hexagonal core as a round one of its size across flats; what is cut off at the ends is not in it. @source OWN
 */
export function wrapLengthsOf(string: { readonly speakingLengthMm: Millimetres; readonly coreDiameterMm: Millimetres; readonly wraps: readonly Wrap[] } & WoundEnds): readonly WrapLength[] {
  const { speakingLengthMm, coreDiameterMm, wraps, bareFrontMm = 0, bareRearMm = 0, stepFrontMm = 0, stepRearMm = 0 } = string;
  return wraps.map(({ wireDiameterMm }, layer) => {
    const coveredMm = millimetres(speakingLengthMm - bareFrontMm - bareRearMm - (layer === 0 ? 0 : stepFrontMm + stepRearMm));
    const inner = wraps.slice(0, layer).reduce<number>((sum, wrap) => sum + 2 * wrap.wireDiameterMm, coreDiameterMm);
    const turns = coveredMm / wireDiameterMm;
    return { coveredMm, turns, lengthMm: millimetres(Math.PI * (inner + wireDiameterMm) * turns) };
  });
}

/**
 * The wire that a set of strings takes, by use and size, thin to stout: plain and core wire with allowances, wrap wire net.
 * Refuses by place a string known only by its overall diameter (nobody can wind that) and a count below one.
 * @source OWN
 */
export function wireOrderOf(strings: readonly OrderedString[], allowances: WireAllowances = usualAllowances): Result<readonly OrderLine[]> {
  const issues = strings.flatMap(faultsOf);
  if (issues.length > 0) return refuse(...issues);
  const lines = new Map<string, OrderLine>();
  for (const line of strings.flatMap((string) => linesOf(string, allowances))) {
    const name = [line.use, line.shape, line.diameterMm, line.densityKgM3].join(' ');
    const known = lines.get(name);
    lines.set(name, known === undefined ? line : { ...line, strings: known.strings + line.strings, lengthMm: millimetres(known.lengthMm + line.lengthMm), massG: grams(known.massG + line.massG) });
  }
  return ok([...lines.values()].sort((a, b) => USES.indexOf(a.use) - USES.indexOf(b.use) || a.diameterMm - b.diameterMm));
}

const USES: readonly OrderLine['use'][] = ['plain', 'core', 'wrap'];

function faultsOf(string: OrderedString, place: number): readonly Issue[] {
  const at = `[${String(place)}]`;
  const count: readonly Issue[] = Number.isInteger(string.count) && string.count > 0 ? [] : [{ code: 'range', path: `${at}.count`, given: string.count, allowed: 'a whole number of at least 1', params: { min: 1 } }];
  return 'overallDiameterMm' in string
    ? [...count, { code: 'required', path: `${at}.wraps`, given: undefined, allowed: 'the wrap wires: an overall diameter alone cannot be wound', params: { reason: 'wrapsToOrder' } }]
    : count;
}

function linesOf(string: OrderedString, allowances: WireAllowances): readonly OrderLine[] {
  if ('diameterMm' in string) return [lineOf('plain', string.diameterMm, 'round', string.densityKgM3 ?? steelWire.densityKgM3.value, string.count, wireLengthOf(string, string.diameterMm, allowances))];
  const { coreDiameterMm, coreShape = 'round', coreDensityKgM3 = steelWire.densityKgM3.value, count } = string;
  const core = lineOf('core', coreDiameterMm, coreShape, coreDensityKgM3, count, wireLengthOf(string, coreDiameterMm, allowances));
  const wraps = 'wraps' in string ? string.wraps : [];
  const lengths = wrapLengthsOf({ ...string, wraps });
  return [core, ...wraps.map(({ wireDiameterMm, densityKgM3 = copperWire.densityKgM3.value }, layer) => lineOf('wrap', wireDiameterMm, 'round', densityKgM3, count, lengths[layer]?.lengthMm ?? millimetres(0)))];
}

function lineOf(use: OrderLine['use'], diameterMm: Millimetres, shape: CoreShape, densityKgM3: KilogramsPerCubicMetre, strings: number, eachMm: Millimetres): OrderLine {
  const lengthMm = millimetres(strings * eachMm);
  return { use, diameterMm, shape, densityKgM3, strings, lengthMm, massG: grams((wireDensityOf({ diameterMm, shape, densityKgM3 }) * lengthMm) / 1000) };
}
