import type { Celsius, Hours } from '#units';
import { hours, celsius } from '#units';
import { type MoistAir, dewPointOf } from '../moist-air.ts';

/** How far above the dew point a surface is to stand before it is unwrapped; kelvins. @source PRACTICE */
export const UNWRAP_MARGIN_K = 3;

/** A surface of the wrapped piano, measured twice while it warms. */
export interface Warming {
  readonly air: MoistAir;
  readonly surfaceC: Celsius;
  readonly laterC: Celsius;
  readonly betweenHours: Hours;
}

/** The temperature a surface has to reach before it is unwrapped: dew point + 3 K. @source WMO-8 @source PRACTICE */
export function unwrapAt(air: MoistAir): Celsius {
  return celsius(dewPointOf(air) + UNWRAP_MARGIN_K);
}

/**
 * Hours from the later measurement until the surface stands 3 K above the dew point, warming as a body of one temperature does:
 * (T_air − T₂)/(T_air − T₁) = exp(−Δt/τ), wait = τ·ln[(T_air − T₂)/(T_air − T_unwrap)].
 *
 * @returns 0 where it stands there already, `undefined` where it does not warm towards the air, or the air itself is too close to its dew point.
 * Ignores that the wrapping and the wood deep inside lag behind the surface: measure again before unwrapping.
 * @source OWN
 */
export function restOfWarmingOf({ air, surfaceC, laterC, betweenHours }: Warming): Hours | undefined {
  const wanted = unwrapAt(air);
  if (laterC >= wanted) return hours(0);
  const share = (air.temperatureC - laterC) / (air.temperatureC - surfaceC);
  if (wanted >= air.temperatureC || !(share > 0 && share < 1)) return undefined;
  const constantHours = betweenHours / Math.log(1 / share);
  return hours(constantHours * Math.log((air.temperatureC - laterC) / (air.temperatureC - wanted)));
}
