import { type Celsius, type DecibelsPerKilometre, type Hertz, type Kilopascals, type Percent, decibelsPerKilometre, kilopascals } from '#units';

export interface RoomAir {
  readonly temperatureC: Celsius;
  readonly humidityPct: Percent;
  readonly pressureKPa: Kilopascals;
}

/** Pressure of the standard atmosphere. */
export const STANDARD_PRESSURE_KPA = kilopascals(101.325);
const STANDARD_K = 293.15;
const TRIPLE_POINT_K = 273.16;
const ZERO_C_IN_K = 273.15;

/** Share of water molecules in the air, per cent. @source ISO-9613-1 */
function waterSharePct({ temperatureC, humidityPct, pressureKPa }: RoomAir): number {
  const saturation = 10 ** (-6.8346 * (TRIPLE_POINT_K / (temperatureC + ZERO_C_IN_K)) ** 1.261 + 4.6151);
  return (humidityPct * saturation * STANDARD_PRESSURE_KPA) / pressureKPa;
}

/**
 * What air takes from a sound, by friction and by oxygen and nitrogen relaxing. Decibels for each kilometre; the table of the standard
 * is printed for the exact midband 1000·10^(3k/10), not for the name of the band. −20 to 50 °C.
 * @source ISO-9613-1
 */
export function airAbsorptionOf(air: RoomAir, frequencyHz: Hertz): DecibelsPerKilometre {
  const kelvin = air.temperatureC + ZERO_C_IN_K;
  const warmth = kelvin / STANDARD_K;
  const pressure = air.pressureKPa / STANDARD_PRESSURE_KPA;
  const h = waterSharePct(air);
  const oxygenHz = pressure * (24 + (4.04e4 * h * (0.02 + h)) / (0.391 + h));
  const nitrogenHz = pressure * warmth ** -0.5 * (9 + 280 * h * Math.exp(-4.17 * (warmth ** (-1 / 3) - 1)));
  const square = frequencyHz ** 2;
  const friction = (1.84e-11 / pressure) * Math.sqrt(warmth);
  const oxygen = (0.01275 * Math.exp(-2239.1 / kelvin)) / (oxygenHz + square / oxygenHz);
  const nitrogen = (0.1068 * Math.exp(-3352 / kelvin)) / (nitrogenHz + square / nitrogenHz);
  return decibelsPerKilometre(1000 * 8.686 * square * (friction + warmth ** -2.5 * (oxygen + nitrogen)));
}

/** The same as a rate by which energy falls along the way: m = α/(10·lg e), α in dB for each metre. Per metre. @source ISO-9613-1 */
export function airDecayPerM(air: RoomAir, frequencyHz: Hertz): number {
  return airAbsorptionOf(air, frequencyHz) / 1000 / (10 * Math.LOG10E);
}
