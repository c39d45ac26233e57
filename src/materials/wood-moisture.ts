import { type Celsius, type Percent, percent } from '#units';

/**
 * Moisture that wood comes to in steady air: M = (1800/W)·[KH/(1 − KH) + (K₁KH + 2K₁K₂K²H²)/(1 + K₁KH + K₁K₂K²H²)],
 * H the relative humidity, W, K, K₁, K₂ quadratics in °C. Per cent of dry mass; 0 to 50 °C. Wood in a room lags behind by days to
 * weeks, and kinds of wood differ by about one per cent.
 * @source FPL-190 eq. 4-5
 */
export function woodMoistureOf({ temperatureC: t, humidityPct }: { readonly temperatureC: Celsius; readonly humidityPct: Percent }): Percent {
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = (k * humidityPct) / 100;
  return percent((1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh)));
}
