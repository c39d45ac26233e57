import { quantileOf } from '#numerics';
import { type Celsius, type Percent, celsius, percent } from '#units';
import { laggedMoistureOf, type AirAt } from './lagged-moisture.ts';

/** Room temperature taken where none was read, so that the moisture of the wood is told all the same; °C. It moves the moisture by about 0.1 % for 5 °C. @source PRACTICE */
const ASSUMED_C = celsius(20);

/** Moisture is worked out of air between these temperatures; the equation holds for wood in rooms, not for frost. */
const [LEAST_C, MOST_C] = [0, 50];

/** Air as it was read at one moment; the temperature may not have been. */
export interface AirRead extends Omit<AirAt, 'temperatureC'> {
  readonly temperatureC: Celsius | null;
}

/** Lowest, mean and highest of some readings. */
export interface Spread<T extends number = number> {
  readonly least: T;
  readonly mean: T;
  readonly most: T;
}

/** Between these shares of its readings a log says what an object is used to. @source EN-15757 */
const USUAL_SHARES = [0.07, 0.93] as const;

/** The ends and the middle of a log of the air. */
export interface ClimateSpan {
  readonly humidity: Spread<Percent>;
  /** Humidity the log mostly stood in: from the 7th to the 93rd hundredth of its readings. */
  readonly usual: readonly [low: Percent, high: Percent];
  /** Absent where no temperature was read. */
  readonly temperature?: Spread<Celsius>;
  /** Moisture of wood that follows the air, %. */
  readonly moisture: Spread<Percent>;
}

/** The air that wood is taken to stand in: a temperature nobody read is taken as 20 °C, one out of the range of the equation as its end. @source PRACTICE */
export const woodAirOf = ({ temperatureC, ...at }: AirRead): AirAt => ({ ...at, temperatureC: celsius(Math.min(MOST_C, Math.max(LEAST_C, temperatureC ?? ASSUMED_C))) });

/** Lowest, mean and highest humidity, temperature and moisture of wood over a log, oldest first, and the humidity it mostly stood in; every reading counts alike. Nothing for an empty log. @source OWN, FPL-190 eq. 4-5 @source EN-15757 */
export function climateSpanOf(log: readonly AirRead[], lagDays: number): ClimateSpan | undefined {
  const read = log.map(({ humidityPct }) => humidityPct);
  const humidity = spreadOf(read);
  const temperature = spreadOf(log.flatMap(({ temperatureC }) => (temperatureC === null ? [] : [temperatureC])));
  const moisture = spreadOf(laggedMoistureOf(log.map(woodAirOf), lagDays).map(({ moisturePct }) => moisturePct));
  if (humidity === undefined || moisture === undefined) return undefined;
  const [low, high] = USUAL_SHARES;
  return { humidity, usual: [percent(quantileOf(read, low)), percent(quantileOf(read, high))], moisture, ...(temperature === undefined ? {} : { temperature }) };
}

function spreadOf<T extends number>(values: readonly T[]): Spread<T> | undefined {
  const [first] = values;
  if (first === undefined) return undefined;
  let [least, most, sum] = [first, first, 0];
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
    sum += value;
  }
  return { least, mean: (sum / values.length) as T, most };
}
