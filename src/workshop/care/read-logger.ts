import type { Issue } from '#result';
import { columnLetter, isBlankRow } from '../table.ts';
import type { AirReading } from './hours.ts';
import { figureOf, minutesOf, momentOf } from './logger-cells.ts';
import type { LoggerReading } from './records.ts';

/** What a logger’s file holds, and every row that could not be taken, by its cell. */
export interface LoggerRows {
  readonly readings: readonly AirReading[];
  readonly refused: readonly Issue[];
}

const UNITS = { C: /°?\s*C$/iu, F: /°?\s*F$/iu, pct: /%\s*(?:r\.?h\.?|r\.?f\.?)?$/iu } as const;
const [LEAST_C, MOST_C] = [-40, 60];

/**
 * Reads the rows of a logger by the columns told. A row with a cell that cannot be read is refused whole, with the cell, what was given and
 * what is allowed; a blank row is none. °F become °C: (F − 32)·5/9.
 */
export function readLogger(rows: readonly (readonly string[])[], reading: LoggerReading): LoggerRows {
  const readings: AirReading[] = [];
  const refused: Issue[] = [];
  rows.slice(reading.headRows).forEach((row, index) => {
    if (isBlankRow(row)) return;
    const read = rowOf(row, reading, reading.headRows + index + 1);
    if ('code' in read) refused.push(read);
    else readings.push(read);
  });
  return { readings, refused };
}

function rowOf(row: readonly string[], reading: LoggerReading, number: number): AirReading | Issue {
  const cellAt = (column: number): string => row[column] ?? '';
  const refuse = (column: number, allowed: string, reason: string): Issue => ({ code: 'format', path: `row ${String(number)}, column ${columnLetter(column)}`, given: cellAt(column), allowed, params: { reason: `logger.${reason}` } });
  const { dayColumn, timeColumn, humidityColumn, temperatureColumn, temperatureUnit, decimalSign, dayOrder } = reading;
  const day = momentOf(cellAt(dayColumn), dayOrder);
  if (day === undefined) return refuse(dayColumn, `a day written ${dayOrder}`, `day.${dayOrder}`);
  const time = timeColumn === null ? 0 : minutesOf(cellAt(timeColumn));
  if (time === undefined) return refuse(timeColumn ?? dayColumn, 'a time such as 7:30 or 19:30:00', 'time');
  const humidityPct = figureOf(cellAt(humidityColumn), decimalSign, UNITS.pct);
  if (humidityPct === undefined || humidityPct < 0 || humidityPct > 100) return refuse(humidityColumn, `0 to 100, with the decimal sign ${decimalSign}`, 'humidity');
  if (temperatureColumn === null) return { minute: day.minute + time, temperatureC: null, humidityPct };
  const typed = figureOf(cellAt(temperatureColumn), decimalSign, UNITS[temperatureUnit]);
  const temperatureC = typed === undefined || temperatureUnit === 'C' ? typed : ((typed - 32) * 5) / 9;
  if (temperatureC === undefined || temperatureC < LEAST_C || temperatureC > MOST_C) return refuse(temperatureColumn, temperatureUnit === 'C' ? `-40 to 60 °C, with the decimal sign ${decimalSign}` : `-40 to 140 °F, with the decimal sign ${decimalSign}`, `temperature.${temperatureUnit}`);
  return { minute: day.minute + time, temperatureC, humidityPct };
}
