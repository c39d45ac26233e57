import { describe, expect, it } from 'vitest';
import { airHoursOf, minuteOf } from './hours.ts';
import { asksOf, guessLogger } from './guess-logger.ts';
import { momentOf } from './logger-cells.ts';
import { readLogger } from './read-logger.ts';
import type { LoggerReading } from './records.ts';

const german = [['Logger 7'], ['Datum', 'Zeit', 'Temperatur (°C)', 'Feuchte (% rF)', 'Taupunkt'], ['13.01.2026', '07:30', '19,5', '41,2', '6,1'], ['13.01.2026', '08:00', '19,7', '41,0', '6,1']];
const wholeOf = (rows: readonly (readonly string[])[], told = {}): LoggerReading => guessLogger(rows, told) as LoggerReading;

describe('a logger’s file', () => {
  it('is understood with day and time apart, decimal commas and a dew point beside', () => {
    const guess = guessLogger(german);
    expect(asksOf(guess)).toEqual([]);
    expect(guess).toEqual({ headRows: 2, dayColumn: 0, timeColumn: 1, dayOrder: 'dmy', humidityColumn: 3, temperatureColumn: 2, temperatureUnit: 'C', decimalSign: ',' });
    expect(readLogger(german, guess as LoggerReading)).toEqual({ readings: [{ minute: minuteOf('2026-01-13T07:30'), temperatureC: 19.5, humidityPct: 41.2 }, { minute: minuteOf('2026-01-13T08:00'), temperatureC: 19.7, humidityPct: 41 }], refused: [] });
  });

  it('turns °F into °C, and takes am and pm', () => {
    const rows = [['Time', 'Temp °F', 'RH %'], ['01/31/2026 12:05 AM', '68', '45.5%'], ['01/31/2026 1:05 PM', '32', '50']];
    expect(guessLogger(rows)).toMatchObject({ dayOrder: 'mdy', temperatureUnit: 'F', decimalSign: '.' });
    expect(readLogger(rows, wholeOf(rows)).readings).toEqual([{ minute: minuteOf('2026-01-31T00:05'), temperatureC: 20, humidityPct: 45.5 }, { minute: minuteOf('2026-01-31T13:05'), temperatureC: 0, humidityPct: 50 }]);
  });

  it('asks where day and month could be changed about, and where no unit stands', () => {
    const rows = [['Time', 'Temp', 'Humidity'], ['01/02/2026 00:00', '20.5', '45'], ['02/02/2026 00:00', '20.5', '45']];
    expect(asksOf(guessLogger(rows))).toEqual(['dayOrder', 'temperatureUnit']);
    expect(readLogger(rows, wholeOf(rows, { dayOrder: 'mdy', temperatureUnit: 'C' })).readings[0]?.minute).toBe(minuteOf('2026-01-02T00:00'));
  });

  it('asks for the columns of a file without names, and for all of one without days', () => {
    expect(asksOf(guessLogger([['2026-01-13 07:30', '20.1', '44']]))).toEqual(['humidityColumn']);
    expect(asksOf(guessLogger([['a', 'b'], ['1', '2']]))).toContain('dayColumn');
  });

  it('names every row that cannot be read by its cell, what was given and what is allowed, and takes the others', () => {
    const rows = [['Time', 'T °C', 'RH'], ['2026-01-13T07:30:00', '20.1', '44'], ['2026-02-30 07:30', '20.1', '44'], ['2026-01-13 08:30', '20.1', '144'], ['', '', ''], ['2026-01-13 09:30', '20,1', '44'], ['2026-01-13 10:30', '', '44'], ['end of log', '', '']];
    const { readings, refused } = readLogger(rows, { ...wholeOf(rows), decimalSign: '.' });
    expect(readings).toHaveLength(1);
    expect(refused.map(({ path, given }) => [path, given])).toEqual([['row 3, column A', '2026-02-30 07:30'], ['row 4, column C', '144'], ['row 6, column B', '20,1'], ['row 7, column B', ''], ['row 8, column A', 'end of log']]);
    expect(refused.every(({ allowed }) => allowed.length > 5)).toBe(true);
  });

  it('reads no day that is none', () => {
    for (const [cell, order] of [['31.02.2026', 'dmy'], ['13/13/2026', 'mdy'], ['1.2.3', 'dmy'], ['20.5', 'dmy'], ['13.01.2026', 'mdy'], ['2026-01-13 25:00', 'ymd'], ['2026-01-13 13:00 pm', 'ymd']] as const) expect(momentOf(cell, order), cell).toBeUndefined();
    expect(momentOf('5.3.26', 'dmy')?.minute).toBe(minuteOf('2026-03-05T00:00'));
  });
});

it('brings readings to the mean of each hour, and keeps a second reading of the same file without effect on the means', () => {
  const readings = [{ minute: 60, temperatureC: 20, humidityPct: 40 }, { minute: 90, temperatureC: null, humidityPct: 44 }, { minute: 180, temperatureC: null, humidityPct: 50 }];
  const hours = { hour: [1, 3], temperatureC: [20, null], humidityPct: [42, 50] };
  expect(airHoursOf(readings)).toEqual(hours);
  expect(airHoursOf([...readings, ...readings])).toEqual(hours);
});
