import { dayOrders, figureOf, minutesOf, momentOf } from './logger-cells.ts';
import type { LoggerReading } from './records.ts';

/** What of the reading is known: guessed from the file, or told; what is not there is asked for. */
export type LoggerGuess = Partial<LoggerReading>;

/** What of a reading has to be told before a file is read. */
export const loggerQuestions = ['dayColumn', 'dayOrder', 'humidityColumn', 'temperatureUnit', 'decimalSign'] as const;
export type LoggerQuestion = (typeof loggerQuestions)[number];

type Rows = readonly (readonly string[])[];

/** Rows the head is looked for in. */
const SEARCHED_ROWS = 60;

/** Guesses how a logger’s file is read: head, columns by their names, order of the day, unit, decimal sign. What is told stands. @source OWN */
export function guessLogger(rows: Rows, told: LoggerGuess = {}): LoggerGuess {
  const headRows = told.headRows ?? headRowsOf(rows);
  if (headRows === undefined) return told;
  const [head, body] = [rows.slice(0, headRows), rows.slice(headRows)];
  const first = body.find((row) => row.some((cell) => cell.trim() !== '')) ?? [];
  const nameOf = (column: number): string => head.map((row) => row[column] ?? '').join(' ').toLowerCase();
  const columns = first.map((_, column) => column);
  const dayColumn = told.dayColumn ?? columns.find((column) => dayOrders.some((order) => momentOf(first[column] ?? '', order) !== undefined));
  const hasTime = dayColumn !== undefined && dayOrders.some((order) => momentOf(first[dayColumn] ?? '', order)?.hasTime === true);
  const timeColumn = told.timeColumn ?? (hasTime ? null : (columns.find((column) => column !== dayColumn && minutesOf(first[column] ?? '') !== undefined) ?? null));
  const figures = columns.filter((column) => column !== dayColumn && column !== timeColumn && isFigure(first[column] ?? ''));
  const humidityColumn = told.humidityColumn ?? figures.find((column) => HUMIDITY.test(nameOf(column)) && !DEW.test(nameOf(column)));
  const temperatureColumn = told.temperatureColumn === undefined ? (figures.find((column) => column !== humidityColumn && TEMPERATURE.test(nameOf(column)) && !DEW.test(nameOf(column))) ?? null) : told.temperatureColumn;
  const temperatureUnit = told.temperatureUnit ?? (temperatureColumn === null ? 'C' : unitOf(`${nameOf(temperatureColumn)} ${first[temperatureColumn] ?? ''}`));
  const dayOrder = told.dayOrder ?? (dayColumn === undefined ? undefined : dayOrderOf(body.map((row) => row[dayColumn] ?? '')));
  const decimalSign = told.decimalSign ?? decimalSignOf(body, [humidityColumn, temperatureColumn].filter((column) => column != null));
  return stated({ headRows, dayColumn, timeColumn, dayOrder, humidityColumn, temperatureColumn, temperatureUnit, decimalSign });
}

/** What still has to be told. */
export function asksOf(guess: LoggerGuess): readonly LoggerQuestion[] {
  return loggerQuestions.filter((name) => guess[name] === undefined);
}

const HUMIDITY = /hum|feucht|\brh\b|r\.h\.|\brf\b|r\.f\.|%/u;
const TEMPERATURE = /temp|celsius|fahrenheit|°\s*[cf]\b|^\s*t\s*$/u;
const DEW = /dew|tau|abs/u;

function unitOf(name: string): 'C' | 'F' | undefined {
  const [isC, isF] = [/°\s*c\b|\(c\)|\[c\]|celsius|_c\b/iu.test(name), /°\s*f\b|\(f\)|\[f\]|fahrenheit|_f\b/iu.test(name)];
  return isC === isF ? undefined : isC ? 'C' : 'F';
}

/** Rows above the first that holds a day. */
function headRowsOf(rows: Rows): number | undefined {
  const at = rows.slice(0, SEARCHED_ROWS).findIndex((row) => row.some((cell) => dayOrders.some((order) => momentOf(cell, order) !== undefined)) && row.some(isFigure));
  return at < 0 ? undefined : at;
}

const UNIT = /(?:°?\s*[CF]|%\s*(?:r\.?h\.?|r\.?f\.?)?)$/iu;
function isFigure(cell: string): boolean {
  return figureOf(cell, '.', UNIT) !== undefined || figureOf(cell, ',', UNIT) !== undefined;
}

/** The one order in which every cell that is a day by any is a day; two that would both do are no answer. */
function dayOrderOf(cells: readonly string[]): LoggerReading['dayOrder'] | undefined {
  const days = cells.filter((cell) => dayOrders.some((order) => momentOf(cell, order) !== undefined));
  const fitting = dayOrders.filter((order) => days.length > 0 && days.every((cell) => momentOf(cell, order) !== undefined));
  return fitting.length === 1 ? fitting[0] : undefined;
}

/** The sign the figures have; a point where none has any. Both in one column are no answer. */
function decimalSignOf(body: Rows, columns: readonly number[]): '.' | ',' | undefined {
  const cells = body.flatMap((row) => columns.map((column) => row[column] ?? '')).filter(isFigure);
  const [comma, point] = [cells.some((cell) => cell.includes(',')), cells.some((cell) => cell.includes('.'))];
  return comma && point ? undefined : comma ? ',' : '.';
}

function stated(guess: { readonly [Name in keyof LoggerReading]?: LoggerReading[Name] | undefined }): LoggerGuess {
  return Object.fromEntries(Object.entries<unknown>(guess).filter(([, value]) => value !== undefined));
}
