import { type Celsius, type GramsPerCubicMetre, type Percent, celsius, gramsPerCubicMetre, percent } from '#units';

/** Air as a room has it. */
export interface MoistAir {
  readonly temperatureC: Celsius;
  readonly humidityPct: Percent;
}

const MAGNUS = { atZeroHPa: 6.112, slope: 17.62, offsetC: 243.12 } as const;
/** Mass of a cubic metre of water vapour at 1 hPa and 1 K: 100·M/R, g·K/(m³·hPa). @source OWN M = 18.015 g/mol, R = 8.3145 J/(mol·K) */
const VAPOUR = 216.7;
const ZERO_C_IN_K = 273.15;

/** Pressure of water vapour over water when air can hold no more: e = 6.112·exp(17.62 t/(243.12 + t)). Hectopascals; −45 to 60 °C. @source WMO-8 */
export function saturationPressureHPa(temperatureC: Celsius): number {
  return MAGNUS.atZeroHPa * Math.exp((MAGNUS.slope * temperatureC) / (MAGNUS.offsetC + temperatureC));
}

/** The surface temperature at which water settles out of the air: T_d = 243.12 γ/(17.62 − γ), γ = ln(H/100) + 17.62 t/(243.12 + t). @source WMO-8 */
export function dewPointOf({ temperatureC, humidityPct }: MoistAir): Celsius {
  const gamma = Math.log(humidityPct / 100) + (MAGNUS.slope * temperatureC) / (MAGNUS.offsetC + temperatureC);
  return celsius((MAGNUS.offsetC * gamma) / (MAGNUS.slope - gamma));
}

/** Water in a cubic metre of air: 216.7 e/(t + 273.15). Grams. @source WMO-8 */
export function absoluteHumidityOf({ temperatureC, humidityPct }: MoistAir): GramsPerCubicMetre {
  return gramsPerCubicMetre((VAPOUR * saturationPressureHPa(temperatureC) * humidityPct) / 100 / (temperatureC + ZERO_C_IN_K));
}

/** Relative humidity of the same air once a heater or a cold wall has changed its temperature, pressure staying: H·e(t₀)/e(t₁). More than 100 means that water settles out. @source WMO-8 */
export function humidityAt(air: MoistAir, temperatureC: Celsius): Percent {
  return percent((air.humidityPct * saturationPressureHPa(air.temperatureC)) / saturationPressureHPa(temperatureC));
}
