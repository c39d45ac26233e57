import type { Peak } from './spectrum.ts';

/** A stretched comb laid over the lines of a spectrum. */
export interface Comb {
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  /** Lines that are taken for partials. */
  readonly teeth: readonly Tooth[];
  /** Weight of lines explained less weight of teeth missing; see `combAt`. */
  readonly score: number;
}

export interface Tooth {
  readonly n: number;
  readonly peak: Peak;
}

/** Most partials a comb follows, and how many it may miss in a row. */
const MOST_TEETH = 64;
const MOST_MISSED = 4;
/** How much of what a tooth lies beside its place is carried to the next, and how much of it is taken for a trend. */
const CARRY = 0.6;
const DRIFT = 0.15;
/** A first partial that ought to radiate and is missing counts double, as the heaviest of so many of the lowest teeth. */
const FIRST_MISSING = 2;
const LOWEST_TEETH = 4;
/** What a line that is no tooth counts against a comb: less the further it lies below the strongest tooth, and nothing from the last figure on. */
const STRANGER = 0.5;
const STRANGER_BELOW = 0.25;
const STRANGER_FAINTEST_DB = 40;
/** A line may lie this share of its own frequency beside its tooth, and at most that share of the pitch. */
const TOLERANCE_OWN = 2 ** (25 / 1200) - 1;
const TOLERANCE = 0.12;
const toleranceHz = (frequencyHz: number, f0Hz: number): number => Math.min(TOLERANCE_OWN * frequencyHz, TOLERANCE * f0Hz);
/** A line counts by its decibels over the threshold, up to this many. */
const HEAVIEST_DB = 45;
const LIGHTEST_DB = 8;
/** A soundboard radiates little below: a tooth missing there is no evidence. @source PRACTICE */
const RADIATES_FROM_HZ = 90;

/** What a line counts for. */
export function weightOf({ aboveDb }: Peak): number {
  return Math.min(HEAVIEST_DB, aboveDb) - LIGHTEST_DB;
}

/**
 * What B to expect of a string of a pitch: B = e^(−0.0847·m − 5.82) + e^(0.0926·m − 13.64), m the MIDI number. Only a place to begin from, and, within
 * a wide band around it, a check. @source RIGAUD-2013
 */
export function expectedInharmonicityOf(f0Hz: number): number {
  const midi = 69 + 12 * Math.log2(f0Hz / 440);
  return Math.exp(-0.0847 * midi - 5.82) + Math.exp(0.0926 * midi - 13.64);
}

/** Index of the first line at or over a frequency. */
function firstFrom(peaks: readonly Peak[], frequencyHz: number): number {
  let [low, high] = [0, peaks.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((peaks[middle]?.frequencyHz ?? 0) < frequencyHz) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The strongest line within the tolerance of a frequency, nearer ones counting more. */
function toothNear(peaks: readonly Peak[], frequencyHz: number, toleranceHz: number): Peak | undefined {
  let best: Peak | undefined;
  let bestValue = 0;
  for (let at = firstFrom(peaks, frequencyHz - toleranceHz); at < peaks.length; at++) {
    const peak = peaks[at];
    if (peak === undefined || peak.frequencyHz > frequencyHz + toleranceHz) break;
    const value = weightOf(peak) * (1 - 0.5 * Math.abs(peak.frequencyHz - frequencyHz) / toleranceHz);
    if (value > bestValue) [best, bestValue] = [peak, value];
  }
  return best;
}

/**
 * Lays a comb over the lines, from the first tooth upwards; how far the last teeth lay beside their place is carried on to the next.
 * Score = Σ weights of teeth found − Σ weights expected of teeth missing below and between them − Σ of a half of the weights of lines
 * that are no teeth, a quarter below the first tooth, where the thump of the action stands, and less the weaker they are beside the strongest tooth.
 */
export function combAt(peaks: readonly Peak[], f0Hz: number, inharmonicityB: number): Comb {
  const teeth: Tooth[] = [];
  const missed: Missed[] = [];
  let carry = 0;
  let drift = 0;
  let gap = 0;
  for (let n = 1; n <= MOST_TEETH; n++) {
    carry += drift;
    const placeHz = n * f0Hz * Math.sqrt(1 + inharmonicityB * n * n) * (1 + carry);
    if (placeHz > (peaks[peaks.length - 1]?.frequencyHz ?? 0) + TOLERANCE * f0Hz) break;
    const peak = toothNear(peaks, placeHz, toleranceHz(placeHz, f0Hz));
    if (peak !== undefined) {
      teeth.push({ n, peak });
      const beside = peak.frequencyHz / placeHz - 1;
      carry += CARRY * beside;
      drift += DRIFT * beside;
      gap = 0;
    } else if (placeHz > RADIATES_FROM_HZ) {
      missed.push({ at: teeth.length, n });
      gap++;
      if (gap > MOST_MISSED && teeth.length > 0) break;
    }
  }
  return { f0Hz, inharmonicityB, teeth, score: scoreOf(peaks, teeth, missed, f0Hz) };
}

interface Missed {
  /** How many teeth lie below it. */
  readonly at: number;
  readonly n: number;
}

function scoreOf(peaks: readonly Peak[], teeth: readonly Tooth[], missed: readonly Missed[], f0Hz: number): number {
  const weights = teeth.map(({ peak }) => weightOf(peak));
  const strongest = Math.max(0, ...teeth.map(({ peak }) => peak.power));
  const lowest = teeth[0]?.peak.frequencyHz ?? 0;
  const found = weights.reduce((sum, weight) => sum + weight, 0);
  const expected = missed.reduce((sum, gap) => sum + expectedOf(gap, weights), 0);
  const strangers = groupsOf(peaks.filter((peak) => !belongs(peak, teeth, f0Hz)), f0Hz);
  return found - expected - strangers.reduce((sum, peak) => sum + (peak.frequencyHz < lowest ? STRANGER_BELOW : STRANGER) * weightOf(peak) * loudnessBeside(strongest, peak), 0);
}

/** What a missing tooth would weigh: the mean of its neighbours; the first partial as the heaviest of the lowest. */
function expectedOf({ at, n }: Missed, weights: readonly number[]): number {
  if (at >= weights.length) return 0;
  if (n === 1) return FIRST_MISSING * Math.max(...weights.slice(0, LOWEST_TEETH));
  return at === 0 ? weights[0] ?? 0 : ((weights[at - 1] ?? 0) + (weights[at] ?? 0)) / 2;
}

/** 1 of a line as strong as the strongest tooth, falling with its decibels below it. */
function loudnessBeside(strongest: number, { power }: Peak): number {
  return Math.min(1, Math.max(0, 1 - (10 * Math.log10(strongest / power)) / STRANGER_FAINTEST_DB));
}

/** Of lines that stand close together only the strongest: they are strings, beats or side lobes of one thing. */
function groupsOf(peaks: readonly Peak[], f0Hz: number): readonly Peak[] {
  const groups: Peak[] = [];
  let last = 0;
  for (const peak of peaks) {
    const current = groups[groups.length - 1];
    if (current === undefined || peak.frequencyHz - last > toleranceHz(peak.frequencyHz, f0Hz)) groups.push(peak);
    else if (peak.aboveDb > current.aboveDb) groups[groups.length - 1] = peak;
    last = peak.frequencyHz;
  }
  return groups;
}

/** A line so close to a tooth that it is another string of the same note, a beat or a phantom of it; further off only a weaker line can be. */
function belongs({ frequencyHz, power }: Peak, teeth: readonly Tooth[], f0Hz: number): boolean {
  return teeth.some(({ peak }) => Math.abs(peak.frequencyHz - frequencyHz) < (power > peak.power ? toleranceHz(peak.frequencyHz, f0Hz) : TOLERANCE * f0Hz));
}

/** Lines that neither are teeth of a comb nor lie beside one. */
export function leftBy({ teeth, f0Hz }: Comb, peaks: readonly Peak[]): readonly Peak[] {
  return peaks.filter((peak) => !belongs(peak, teeth, f0Hz));
}

const LOWEST_HZ = 24;
const HIGHEST_HZ = 4900;
const STRONGEST = 20;
const HIGHEST_NUMBER = 12;
/** B tried, as multiples of what is expected. */
const STIFFNESSES = [0.25, 0.5, 0.75, 1, 1.4, 2, 3];
const KEPT = 12;

/** The comb that explains the lines best: every strong line is tried as every partial, first with the B expected of the pitch, then with others. */
export function bestCombOf(peaks: readonly Peak[]): Comb | undefined {
  const strong = [...peaks].sort((a, b) => b.power - a.power).slice(0, STRONGEST);
  const pitches = distinct(strong.flatMap(({ frequencyHz }) => Array.from({ length: HIGHEST_NUMBER }, (_, index) => pitchFrom(frequencyHz, index + 1))));
  const first = pitches.map((f0Hz) => combAt(peaks, f0Hz, expectedInharmonicityOf(f0Hz))).sort((a, b) => b.score - a.score).slice(0, KEPT);
  const all = first.flatMap((comb) => [comb, ...STIFFNESSES.map((factor) => stiffened(peaks, comb, factor * expectedInharmonicityOf(comb.f0Hz)))]);
  return all.reduce<Comb | undefined>((best, comb) => (comb.teeth.length > 0 && comb.score > (best?.score ?? 0) ? comb : best), undefined);
}

/** The pitch of a string whose partial n stands here, with the B expected of it. */
function pitchFrom(frequencyHz: number, n: number): number {
  const rough = frequencyHz / n;
  return rough / Math.sqrt(1 + expectedInharmonicityOf(rough) * n * n);
}

/** The comb of another B through the same lowest strong tooth. */
function stiffened(peaks: readonly Peak[], { f0Hz, inharmonicityB, teeth }: Comb, other: number): Comb {
  const n = teeth[0]?.n ?? 1;
  return combAt(peaks, f0Hz * Math.sqrt((1 + inharmonicityB * n * n) / (1 + other * n * n)), other);
}

const NEAR = 0.003;

function distinct(pitches: readonly number[]): readonly number[] {
  const sorted = pitches.filter((pitch) => pitch >= LOWEST_HZ && pitch <= HIGHEST_HZ).sort((a, b) => a - b);
  return sorted.filter((pitch, at) => at === 0 || pitch / (sorted[at - 1] ?? 0) > 1 + NEAR / 10);
}
