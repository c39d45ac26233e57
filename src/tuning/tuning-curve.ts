import type { KeyNumber, OctaveType } from '#instrument';
import { carriedUncertaintiesOf, solveSymmetricBanded } from '#numerics';
import { type Result, ok, refuse } from '#result';
import { type Cents, type Hertz, cents, ratio } from '#units';
import { OCTAVE, upperPartialOf } from './octave-type.ts';
import { stretchOf } from './octave-stretch.ts';
import { type StiffNote, partialRatioOf } from './stiff-note.ts';

/** One note the curve is laid through. */
export interface CurveKey {
  readonly key: KeyNumber;
  readonly string: StiffNote;
  /** Standard uncertainty of B. */
  readonly inharmonicityUncertainty?: number;
}

/** Which octave is listened to where; keys are those of the lower note. */
export interface OctaveRule {
  readonly fromKey: KeyNumber;
  readonly toKey: KeyNumber;
  readonly type: OctaveType;
  /** Against the other octaves; 1 for as much as any. */
  readonly weight: number;
}

export interface CurveQuestion {
  /** Lowest first; keys may be left out. */
  readonly keys: readonly CurveKey[];
  readonly rules: readonly OctaveRule[];
  /** The key that stays where it is: A4. */
  readonly anchorKey: KeyNumber;
  /** Weight λ of an even course against beatless octaves. */
  readonly smoothness: number;
}

/** An octave of the curve: what would not beat, and what the curve gives. */
export interface CurveOctave {
  readonly lowerKey: KeyNumber;
  readonly upperKey: KeyNumber;
  readonly type: OctaveType;
  /** Cents over 2:1 at which it does not beat. */
  readonly beatlessCents: Cents;
  /** Cents over 2:1 on the curve. */
  readonly setCents: Cents;
}

export interface TuningCurve {
  /** Of partial 1 off equal temperament, in the order of the keys given. */
  readonly offsetsCents: readonly Cents[];
  /** Standard uncertainty carried from that of B; absent where no key states one. */
  readonly uncertaintiesCents?: readonly Cents[];
  readonly octaves: readonly CurveOctave[];
}

/**
 * Octave types as the trade has them: 6:3 in the bass, 4:2 from C3, 2:1 from C5 up; by the lower note. Where they change is a
 * matter of taste: edit them.
 * @source PRACTICE
 */
export const usualOctaveRules: readonly OctaveRule[] = [
  { fromKey: 1, toKey: 27, type: '6:3', weight: 1 },
  { fromKey: 28, toKey: 51, type: '4:2', weight: 1 },
  { fromKey: 52, toKey: 128, type: '2:1', weight: 1 },
];

/** A4 on a keyboard that begins with A0. */
export const USUAL_ANCHOR_KEY = 49;
/** Evens out bends of a few keys and leaves those of an octave. @source OWN tried on model scales */
export const USUAL_SMOOTHNESS = 100;
const THIRD_DIFFERENCE = [-1, 3, -3, 1] as const;

/**
 * The stretch of a whole instrument as one problem of weighted least squares. Unknown: x, cents of partial 1 off equal
 * temperament, for every key from the lowest to the highest given. Minimised:
 * Σ w·(x_upper − x_lower − s)² over all octaves, s the stretch at which the octave of its register's type does not beat,
 * + λ·Σ(Δ³x)², with x = 0 at the anchor. Octaves alone tie only every twelfth key; the second sum ties the twelve chains to
 * each other and passes a quadratic unpunished. Strictly convex as soon as two octaves are given, hence one answer.
 *
 * Ignores unisons, fifths and the ear. Refuses an anchor outside the keys, fewer than two octaves, and partials that are not
 * listed as far as an octave asks for them.
 * @source OWN @source FLETCHER-1964 partials @source EILERS-WHITTAKER smoothness
 */
export function tuningCurveOf(question: CurveQuestion): Result<TuningCurve> {
  const { keys } = question;
  const octaves = octavesOf(question);
  if (!octaves.ok) return octaves;
  const isOpen = new Set(octaves.value.map(({ lowerKey }) => lowerKey)).size < 2;
  const offsets = isOpen ? undefined : solved(question, octaves.value.map(({ beatlessCents }) => beatlessCents), octaves.value);
  if (offsets === undefined) return refuse({ code: 'unsolvable', path: 'keys', given: octaves.value.length, allowed: 'keys that make at least two octaves with the octave types given, the anchor among them', params: { reason: 'tooFewOctaves' } });
  const at = (key: KeyNumber): number => offsets.get(key) ?? Number.NaN;
  const uncertainties = uncertaintiesOf(question, octaves.value);
  return ok({
    offsetsCents: keys.map(({ key }) => cents(at(key))),
    ...(uncertainties === undefined ? {} : { uncertaintiesCents: uncertainties }),
    octaves: octaves.value.map(({ rule, lowerKey, upperKey, beatlessCents }) => ({ lowerKey, upperKey, type: rule.type, beatlessCents, setCents: cents(at(upperKey) - at(lowerKey)) })),
  });
}

interface RuledOctave {
  readonly rule: OctaveRule;
  readonly lowerKey: KeyNumber;
  readonly upperKey: KeyNumber;
  readonly beatlessCents: Cents;
}

function octavesOf({ keys, rules }: CurveQuestion): Result<readonly RuledOctave[]> {
  const byKey = new Map(keys.map((one, index) => [one.key, { ...one, index }]));
  const octaves: RuledOctave[] = [];
  for (const lower of byKey.values()) {
    const upper = byKey.get(lower.key + OCTAVE);
    if (upper === undefined) continue;
    for (const rule of rules.filter(({ fromKey, toKey }) => lower.key >= fromKey && lower.key <= toKey)) {
      const k = upperPartialOf(rule.type);
      const beatlessCents = stretchOf(lower.string, upper.string, k);
      if (beatlessCents === undefined) return refuse(tooShort(partialRatioOf(lower.string, 2 * k) === undefined ? { ...lower, n: 2 * k } : { ...upper, n: k }));
      octaves.push({ rule, lowerKey: lower.key, upperKey: upper.key, beatlessCents });
    }
  }
  return ok(octaves);
}

const tooShort = ({ index, string, n }: { readonly index: number; readonly string: StiffNote; readonly n: number }) => ({
  code: 'length' as const, path: `keys[${String(index)}].partialsHz`, given: 'partialsHz' in string ? string.partialsHz.length : 0, allowed: `at least ${String(n)} entries for the octave type here`, params: { min: n, of: 'array' },
});

/** Solves the normal equations for given stretches; `undefined` where they leave the curve open. */
function solved({ keys, anchorKey, smoothness }: CurveQuestion, stretches: readonly number[], octaves: readonly RuledOctave[]): ReadonlyMap<KeyNumber, number> | undefined {
  const first = keys[0]?.key ?? 0;
  const count = (keys.at(-1)?.key ?? 0) - first + 1;
  const anchor = anchorKey - first;
  if (anchor < 0 || anchor >= count) return undefined;
  const bands = Array.from({ length: OCTAVE + 1 }, () => new Float64Array(count));
  const right = new Float64Array(count);
  octaves.forEach(({ rule, lowerKey }, index) => { addOctave({ bands, right, lower: lowerKey - first, weight: rule.weight, stretch: stretches[index] ?? 0 }); });
  for (let row = 0; row + 3 < count; row += 1) addSmoothness(bands, row, smoothness);
  hold(bands, right, anchor);
  const solution = solveSymmetricBanded(bands, right);
  return solution === undefined ? undefined : new Map(Array.from(solution, (value, index) => [first + index, value]));
}

function addOctave({ bands, right, lower, weight, stretch }: { readonly bands: readonly Float64Array[]; readonly right: Float64Array; readonly lower: number; readonly weight: number; readonly stretch: number }): void {
  add(bands[0], lower, weight);
  add(bands[0], lower + OCTAVE, weight);
  add(bands[OCTAVE], lower, -weight);
  add(right, lower, -weight * stretch);
  add(right, lower + OCTAVE, weight * stretch);
}

function addSmoothness(bands: readonly Float64Array[], row: number, weight: number): void {
  for (let a = 0; a < 4; a += 1) {
    for (let b = 0; b <= a; b += 1) add(bands[a - b], row + b, weight * (THIRD_DIFFERENCE[a] ?? 0) * (THIRD_DIFFERENCE[b] ?? 0));
  }
}

/** Takes the anchor out of the problem: its row and column become those of x = 0. */
function hold(bands: readonly Float64Array[], right: Float64Array, anchor: number): void {
  bands.forEach((band, offset) => {
    band[anchor] = offset === 0 ? 1 : 0;
    if (offset > 0 && anchor >= offset) band[anchor - offset] = 0;
  });
  right[anchor] = 0;
}

function add(list: Float64Array | undefined, index: number, amount: number): void {
  if (list !== undefined) list[index] = (list[index] ?? 0) + amount;
}

/** Carries the uncertainties of B through stretches and solution; keys with listed partials count as known. */
function uncertaintiesOf(question: CurveQuestion, octaves: readonly RuledOctave[]): readonly Cents[] | undefined {
  const doubtful = question.keys.flatMap(({ key, string, inharmonicityUncertainty: u }) => ('inharmonicityB' in string && u !== undefined ? [{ key, b: string.inharmonicityB, u }] : []));
  if (doubtful.length === 0) return undefined;
  const offsetsFor = (bs: readonly number[]): readonly number[] => {
    const changed = new Map(doubtful.map(({ key }, index) => [key, ratio(Math.max(0, bs[index] ?? 0))]));
    const strings = new Map(question.keys.map(({ key, string }) => { const b = changed.get(key); return [key, b === undefined ? string : { inharmonicityB: b }]; }));
    const stretches = octaves.map(({ lowerKey, upperKey, rule, beatlessCents }) => {
      const [lower, upper] = [strings.get(lowerKey), strings.get(upperKey)];
      return lower === undefined || upper === undefined ? beatlessCents : (stretchOf(lower, upper, upperPartialOf(rule.type)) ?? beatlessCents);
    });
    const offsets = solved(question, stretches, octaves);
    return question.keys.map(({ key }) => offsets?.get(key) ?? 0);
  };
  return carriedUncertaintiesOf(offsetsFor, doubtful.map(({ b }) => b), doubtful.map(({ u }) => u)).map(cents);
}

/** Frequency of partial 1 at so many cents off equal temperament, for a key so many keys from A4. f = a4·2^(keys/12 + cents/1200). */
export function frequencyAt(a4Hz: Hertz, keysFromA4: number, offsetCents: number): Hertz {
  return (a4Hz * 2 ** (keysFromA4 / 12 + offsetCents / 1200)) as Hertz;
}
