import { type LinearFit, linearFitOf, studentFactorOf } from '#numerics';
import { type Cents, cents } from '#units';

/** One visit after restringing: mean pitch as found and as left, cents off the pitch wanted. */
export interface DriftVisit {
  /** Days since the strings were put on. */
  readonly dayCount: number;
  readonly foundCents: Cents;
  /** Absent where it was only measured: then as found. */
  readonly leftCents?: Cents;
  /** Moisture of the wood, per cent. */
  readonly moisturePct?: number;
}

/** How the pitch drifts, as far as the visits tell. */
export interface TuningDrift {
  /** Spans between one visit and the next. */
  readonly spans: number;
  /** Absent while there are not enough spans. */
  readonly fit?: {
    /** Change while time since stringing grows tenfold; below nought where the pitch falls. */
    readonly tenfoldCents: Cents;
    /** Standard uncertainty. */
    readonly tenfoldUncertaintyCents: Cents;
    /** Change for one per cent more moisture in the wood; absent where moisture was not taken in. */
    readonly moistureCentsPerPct?: Cents;
    readonly moistureUncertaintyCentsPerPct?: Cents;
    /** Standard deviation of a span about the fit. */
    readonly scatterCents: Cents;
    /** Factor for 95 %. */
    readonly coverage: number;
  };
  /** Why moisture was not taken in. */
  readonly withoutMoisture?: 'notStated' | 'tooFew' | 'alike';
}

/** Spans below which nothing is said: each coefficient needs one, and three to spare. */
export const LEAST_SPANS = 4;
/** Moisture must have changed by so much between visits, root mean square, to be told from nothing; per cent. @source OWN */
const LEAST_MOISTURE_CHANGE_PCT = 0.2;

/**
 * Fits the drift of new strings from visit to visit: found₂ − left₁ = a·log₁₀[(1 + t₂)/(1 + t₁)] + h·(m₂ − m₁), t in days
 * since stringing, m moisture of the wood. Differences between visits need no constant, and a tuning in between falls out.
 * Creep that goes with the logarithm of time is an assumption: fast at first, then ever slower. Temperature is left to the
 * moisture. Ignores playing and the pins.
 * @source OWN @source JCGM-100 annex H.3
 */
export function tuningDriftOf(visits: readonly DriftVisit[]): TuningDrift {
  const spans = visits.slice(1).map((visit, index) => spanOf(visits[index] ?? visit, visit));
  if (spans.length < LEAST_SPANS) return { spans: spans.length };
  const withoutMoisture = whyWithout(spans);
  const columns = spans.map(({ decades, moisture }) => (withoutMoisture === undefined ? [decades, moisture ?? 0] : [decades]));
  const fit = linearFitOf(columns, spans.map(({ change }) => change));
  if (fit === undefined) return { spans: spans.length };
  return { spans: spans.length, fit: saidOf(fit), ...(withoutMoisture === undefined ? {} : { withoutMoisture }) };
}

interface Span {
  readonly decades: number;
  readonly change: number;
  readonly moisture: number | undefined;
}

function spanOf(before: DriftVisit, after: DriftVisit): Span {
  return {
    decades: Math.log10((1 + after.dayCount) / (1 + before.dayCount)),
    change: after.foundCents - (before.leftCents ?? before.foundCents),
    moisture: before.moisturePct === undefined || after.moisturePct === undefined ? undefined : after.moisturePct - before.moisturePct,
  };
}

function whyWithout(spans: readonly Span[]): TuningDrift['withoutMoisture'] {
  const changes = spans.flatMap(({ moisture }) => moisture ?? []);
  if (changes.length < spans.length) return 'notStated';
  if (spans.length < LEAST_SPANS + 1) return 'tooFew';
  return Math.hypot(...changes) / Math.sqrt(changes.length) < LEAST_MOISTURE_CHANGE_PCT ? 'alike' : undefined;
}

function saidOf({ coefficients: [tenfold = 0, moisture], uncertainties: [u = 0, uMoisture], residual, freedom }: LinearFit): NonNullable<TuningDrift['fit']> {
  return {
    tenfoldCents: cents(tenfold), tenfoldUncertaintyCents: cents(u), scatterCents: cents(residual), coverage: studentFactorOf(freedom),
    ...(moisture === undefined || uMoisture === undefined ? {} : { moistureCentsPerPct: cents(moisture), moistureUncertaintyCentsPerPct: cents(uMoisture) }),
  };
}

/** When the strings will have drifted by the tolerance since the last visit, in days since stringing. */
export interface NextVisit {
  readonly dayCount: number;
  /** With the fastest drift the fit allows, 95 %. */
  readonly earliestDayCount: number;
  /** With the slowest; absent where the fit cannot tell the drift from none. */
  readonly latestDayCount?: number;
}

/**
 * The day the drift since the last visit reaches the tolerance if the air stays as it was:
 * t = (1 + t_last)·10^(tolerance/|a|) − 1, and with |a| ± factor·u(a). Days; infinite days are told as absent.
 *
 * @returns `undefined` while nothing is fitted, or where nothing drifts.
 * @source OWN
 */
export function nextVisitOf({ fit }: TuningDrift, lastDayCount: number, toleranceCents: number): NextVisit | undefined {
  if (fit === undefined) return undefined;
  const [size, half] = [Math.abs(fit.tenfoldCents), fit.coverage * fit.tenfoldUncertaintyCents];
  const dayAt = (rate: number): number => (1 + lastDayCount) * 10 ** (toleranceCents / rate) - 1;
  const [dayCount, earliestDayCount, latest] = [dayAt(size), dayAt(size + half), size > half ? dayAt(size - half) : Infinity];
  if (!Number.isFinite(dayCount) || !Number.isFinite(earliestDayCount)) return undefined;
  return { dayCount, earliestDayCount, ...(Number.isFinite(latest) ? { latestDayCount: latest } : {}) };
}
