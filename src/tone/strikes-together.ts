import { medianOf, scaledMadOf } from '#numerics';
import { hertz } from '#units';
import { type PartialFrequency, type StiffFit, type StiffLaw, partialHzOf, stiffFitOf } from './stiff-law.ts';

/** Strikes of one string, fitted together. */
export interface StrikesTogether {
  /** The law through the string’s partials as most strikes have them: its residuals are how far each stands beside the law in every strike alike. */
  readonly string: StiffFit;
  /** f0 and B of each strike through its partials less what the string’s own stand beside the law; uncertainties are those against the other strikes. */
  readonly strikes: readonly (StiffFit | undefined)[];
}

/** A partial counts where this share of the strikes has it: of two strikes both. */
const SHARED = 0.7;
const MOST_ROUNDS = 60;
const SETTLED_CENTS = 1e-3;

/** Numbers of the partials that enough strikes have, rising. */
export function sharedPartialsOf(strikes: readonly (readonly Pick<PartialFrequency, 'n'>[])[]): readonly number[] {
  const counts = new Map<number, number>();
  for (const { n } of strikes.flat()) counts.set(n, (counts.get(n) ?? 0) + 1);
  return [...counts].filter(([, count]) => count >= SHARED * strikes.length).map(([n]) => n).sort((a, b) => a - b);
}

/** Of each partial: how far it stands beside the law, and how that scatters from strike to strike; cents. */
type Habits = ReadonlyMap<number, { readonly beside: number; readonly scatter: number }>;

/**
 * Fits several strikes of one string: ln(fₛₙ/n) = ln f0ₛ + ½·ln(1 + Bₛ·n² [+ Cₛ·n⁴]) + dₙ. No string keeps to its law: core, winding, end and bridge put
 * each partial dₙ beside it, cents of it, and the same at every strike. Fitted by itself a strike’s B moves with the partials it happens to show and to
 * weigh; with dₙ in common it does not. By turns: the laws of the strikes, then dₙ as the median of what they leave, less the law through it. A partial
 * counts by how it repeats, and beats of a unison that fall differently at each strike make it count less.
 * `undefined` for fewer than two strikes, or where no law goes through them. @source OWN: two-way layout, partial by strike
 */
export function strikesTogether(all: readonly (readonly PartialFrequency[])[], law: StiffLaw): StrikesTogether | undefined {
  if (all.length < 2) return undefined;
  const shared = new Set(sharedPartialsOf(all));
  const strikes = all.map((partials) => partials.filter(({ n }) => shared.has(n)));
  let habits: Habits = new Map();
  for (let round = 1; ; round++) {
    const fits = strikes.map((partials) => stiffFitOf(partials.map((partial) => putRight(partial, habits)), law));
    const left = leftBy(fits);
    const string = stringOf(fits, left, habits, law);
    if (string === undefined) return undefined;
    const next = habitsOf(string, left);
    const most = Math.max(...[...next].map(([n, { beside }]) => Math.abs(beside - (habits.get(n)?.beside ?? 0))));
    if (most < SETTLED_CENTS || round === MOST_ROUNDS) return { string, strikes: fits.map((fit) => fit && against(fit, all.length)) };
    habits = next;
  }
}

const LN_CENT = Math.LN2 / 1200;

/** A partial less what it always stands beside the law, as uncertain as it repeats. */
function putRight({ n, frequencyHz, frequencyUncertaintyHz }: PartialFrequency, habits: Habits): PartialFrequency {
  const { beside = 0, scatter = 0 } = habits.get(n) ?? {};
  return { n, frequencyHz: frequencyHz * 2 ** (-beside / 1200), frequencyUncertaintyHz: Math.hypot(frequencyUncertaintyHz, frequencyHz * scatter * LN_CENT) };
}

/** What the fits of the strikes leave of each partial. */
function leftBy(fits: readonly (StiffFit | undefined)[]): ReadonlyMap<number, readonly number[]> {
  const left = new Map<number, number[]>();
  for (const { n, residualCents } of fits.flatMap((fit) => fit?.partials ?? [])) left.set(n, [...(left.get(n) ?? []), residualCents]);
  return left;
}

/** The law through the partials of the string as the strikes have them in the middle. */
function stringOf(fits: readonly (StiffFit | undefined)[], left: ReadonlyMap<number, readonly number[]>, habits: Habits, law: StiffLaw): StiffFit | undefined {
  const found = fits.flatMap((fit) => fit ?? []);
  if (found.length === 0) return undefined;
  const middle = (of: (fit: StiffFit) => number): number => medianOf(found.map(of));
  const common = { f0Hz: hertz(middle(({ f0Hz }) => f0Hz)), inharmonicityB: middle(({ inharmonicityB }) => inharmonicityB), secondTermC: middle(({ secondTermC }) => secondTermC) };
  return stiffFitOf([...left].map(([n, list]) => ({ n, frequencyHz: partialHzOf(common, n) * 2 ** (((habits.get(n)?.beside ?? 0) + medianOf(list)) / 1200), frequencyUncertaintyHz: 0 })), law);
}

/** The usual scatter of all partials counts in that of each as so many strikes: of few strikes a partial’s own would be chance. */
const USUAL_COUNTS = 4;

/** Scatter of a partial from strike to strike: its own variance drawn towards the usual one. */
function habitsOf(string: StiffFit, left: ReadonlyMap<number, readonly number[]>): Habits {
  const scatters = new Map([...left].map(([n, list]) => [n, { own: scaledMadOf(list), strikes: list.length }]));
  const usual = medianOf([...scatters.values()].map(({ own }) => own));
  return new Map(string.partials.map(({ n, residualCents }) => {
    const { own = usual, strikes = 0 } = scatters.get(n) ?? {};
    return [n, { beside: residualCents, scatter: Math.sqrt((USUAL_COUNTS * usual ** 2 + strikes * own ** 2) / (USUAL_COUNTS + strikes)) }];
  }));
}

/** What the common places were taken from the strikes themselves for: √(S/(S − 1)) of the scatter that is left. */
function against(fit: StiffFit, strikes: number): StiffFit {
  const widen = Math.sqrt(strikes / (strikes - 1));
  return { ...fit, f0UncertaintyHz: hertz(fit.f0UncertaintyHz * widen), inharmonicityUncertainty: fit.inharmonicityUncertainty * widen };
}
