import { describe, expect, it } from 'vitest';
import { ownersLine } from './owners-line.ts';

const told = (owners: readonly (readonly [string | null, string | null])[], builtIn: number | null = null, stays: readonly (readonly [number, string])[] = []): readonly string[] =>
  ownersLine(owners.map(([from, until]) => ({ from, until })), stays.map(([cycle, day]) => ({ cycle, from: day, until: day })), builtIn)
    .map(({ kind, from, until }) => `${kind} ${from ?? '?'}–${until ?? '?'}`);

describe('owners over the years', () => {
  it('stand in the order of time, with the stays in the shop among them', () => {
    expect(told([['1999', null], ['1926', '1999']], null, [[2, '2004-05-03'], [1, '1986-01-20']]))
      .toEqual(['owner 1926–1999', 'stay 1986-01-20–1986-01-20', 'owner 1999–?', 'stay 2004-05-03–2004-05-03']);
  });

  it('name years nobody is noted for, before the first owner too', () => {
    expect(told([['1930', '1958-06'], ['1961', null]], 1926)).toEqual(['gap 1926–1930', 'owner 1930–1958-06', 'gap 1958-06–1961', 'owner 1961–?']);
  });

  it.each([['1958', '1959'], ['1958', '1958'], ['1958-12', '1959-01'], ['1958', '1959-11-30'], ['1958-12-31', '1959-01-01'], ['2000-02-28', '2000-02-29']])('guess no gap between %s and %s', (until, from) => {
    expect(told([['1930', until], [from, null]])).toHaveLength(2);
  });

  it.each([['1958', '1960'], ['1958-11', '1959-01'], ['1958-12-30', '1959-01-01'], ['2000-02-28', '2000-03-01']])('find the gap between %s and %s', (until, from) => {
    expect(told([['1930', until], [from, null]])).toEqual([`owner 1930–${until}`, `gap ${until}–${from}`, `owner ${from}–?`]);
  });

  it('leave no gap behind somebody who owns it to this day, nor before one of whom nobody knows since when', () => {
    expect(told([['1930', null], ['1961', '1970'], ['1980', null]])).toEqual(['owner 1930–?', 'owner 1961–1970', 'owner 1980–?']);
    expect(told([[null, '1958']], 1926)).toEqual(['owner ?–1958']);
  });

  it('reach to the later end of two who owned it together', () => {
    expect(told([['1930', '1970'], ['1935', '1950'], ['1972', null]])).toEqual(['owner 1930–1970', 'owner 1935–1950', 'gap 1970–1972', 'owner 1972–?']);
  });
});
