import { woodMoistureOf } from '#materials';
import { type Celsius, type Percent, percent } from '#units';

/** Air at one moment, in days from any beginning. */
export interface AirAt {
  readonly dayCount: number;
  readonly temperatureC: Celsius;
  readonly humidityPct: Percent;
}

/** Moisture of the wood at one moment. */
export interface MoistureAt {
  readonly dayCount: number;
  readonly moisturePct: Percent;
}

/**
 * Moisture of wood that follows the air behind by a time constant: dm/dt = (M(t) − m)/τ, M the moisture of steady air, held
 * between one reading and the next: m₂ = M₁ + (m₁ − M₁)·exp(−Δt/τ). Per cent; τ in days, 0 for wood that follows at once.
 * Begins at the mean of M over the first τ, since nobody saw what was before. Oldest first. Ignores hysteresis and thickness.
 * @source OWN @source FPL-190 eq. 4-5
 */
export function laggedMoistureOf(air: readonly AirAt[], lagDays: number): readonly MoistureAt[] {
  const steady = air.map((at) => ({ dayCount: at.dayCount, moisturePct: woodMoistureOf(at) }));
  const [first] = steady;
  if (first === undefined || lagDays === 0) return steady;
  let moisture = meanUntil(steady, first.dayCount + lagDays);
  let before = first;
  return steady.map((at) => {
    const kept = Math.exp(-(at.dayCount - before.dayCount) / lagDays);
    moisture = before.moisturePct + (moisture - before.moisturePct) * kept;
    before = at;
    return { dayCount: at.dayCount, moisturePct: percent(moisture) };
  });
}

function meanUntil(steady: readonly MoistureAt[], dayCount: number): number {
  let [sum, count] = [0, 0];
  for (const at of steady) {
    if (at.dayCount > dayCount) break;
    sum += at.moisturePct;
    count += 1;
  }
  return sum / count;
}

/** Moisture on a day, laid in a straight line between the readings beside it; `undefined` outside them. Oldest first. @source OWN */
export function moistureOn(series: readonly MoistureAt[], dayCount: number): Percent | undefined {
  const next = firstFrom(series, dayCount);
  const after = series[next];
  if (after === undefined) return undefined;
  if (after.dayCount === dayCount) return after.moisturePct;
  const before = series[next - 1];
  if (before === undefined) return undefined;
  const share = (dayCount - before.dayCount) / (after.dayCount - before.dayCount);
  return percent(before.moisturePct + share * (after.moisturePct - before.moisturePct));
}

/** Place of the first reading on the day or after it, by halving. */
function firstFrom(series: readonly MoistureAt[], dayCount: number): number {
  let [low, high] = [0, series.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((series[middle]?.dayCount ?? Infinity) < dayCount) low = middle + 1;
    else high = middle;
  }
  return low;
}
