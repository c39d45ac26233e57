import { compass88 } from '#instrument';
import { degrees, millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { type HammerInput, type HammerKey, analyseHammers } from './analyse-hammers.ts';
import { hammerLifeOf, usualWear, usualYears } from './hammer-life.ts';
import { publishedStrikeOf, strikeRatioOf } from './strike-line.ts';

const mm = millimetres;
const hammer = (key: number, rest: Partial<HammerKey> = {}): HammerKey => ({ key, register: 'middle', ...rest });
const input = (keys: readonly HammerKey[], rest: Partial<HammerInput> = {}): HammerInput => ({ keys, sections: [{ name: 'middle', firstKey: 1, lastKey: 88 }], centreHeightMm: mm(140), hammerMm: mm(130), leastFeltMm: { bass: 3, middle: 3, treble: 1.5 }, ...rest });

describe('strike line', () => {
  it.each([[243, 2016, 0.1205], [91, 777, 0.1171], [74.4, 620, 0.12], [8.1, 115, 0.0704]])('has d/L %d/%d = %d (published by A. Stulov 1995, second hand)', (d, length, expected) => {
    expect(strikeRatioOf({ strikeDistanceMm: mm(d), speakingLengthMm: mm(length) })).toBeCloseTo(expected, 4);
  });

  it('shows what was published only where it was: the measured line ends at A6, the old rule at A4', () => {
    const { from, to, measured } = publishedStrikeOf(compass88);
    expect([measured[0], measured[39], measured[72]].map((value) => value?.toFixed(4))).toEqual(['0.1205', '0.1200', '0.0704']);
    expect([measured[73], from[49], to[86]]).toEqual([undefined, undefined, undefined]);
    expect([from[48], to[48], from[87], to[87]]).toEqual([1 / 9, 1 / 7, 1 / 17, 1 / 12]);
  });

  it('refuses to make a ratio of a strike point beyond its string', () => {
    const { keys: [only] } = analyseHammers(input([hammer(40, { strikeDistanceMm: mm(620), speakingLengthMm: mm(620) })]));
    expect([only?.strikeRatio, only?.findings.map(({ code }) => code)]).toEqual([undefined, ['strikeBeyond']]);
  });
});

describe('bore', () => {
  const bored = (boreMm: number) => hammer(40, { boreMm: mm(boreMm), rakeDeg: degrees(0), stringHeightMm: mm(190) });

  it('is level at 50 mm for strings 190 and centre 140; 48 is .88 degrees over-centre, .76 mm toward the centre (worked out apart from the program)', () => {
    const { sections: [middle] } = analyseHammers(input([bored(48)]));
    expect([middle?.levelBoreMm, middle?.shankDeg?.toFixed(2), middle?.strikeShiftMm?.toFixed(2)]).toEqual([50, '0.88', '0.76']);
  });

  it('tells a head too short to reach, and by how much', () => {
    const { keys: [short] } = analyseHammers(input([hammer(40, { boreMm: mm(20), rakeDeg: degrees(0), stringHeightMm: mm(290) })]));
    expect(short?.findings).toEqual([{ code: 'boreShort', figureMm: 20, limitMm: expect.closeTo(Math.sqrt(150 ** 2 - 130 ** 2), 9) as number }]);
  });

  it('works nothing out where a height is missing', () => {
    expect(analyseHammers(input([bored(49)], { centreHeightMm: undefined })).sections[0]?.bored).toBe(0);
  });
});

describe('wear', () => {
  it('warns below the least felt, in the treble later', () => {
    const { felt } = analyseHammers(input([hammer(40, { feltOverWoodMm: mm(2.9) }), hammer(41, { feltOverWoodMm: mm(3) }), hammer(80, { register: 'treble', feltOverWoodMm: mm(1.6) })]));
    expect(felt).toEqual({ read: 3, thin: 1, leastMm: 1.6, leastKey: 80 });
  });

  it('ends by hours or by reshapings, whichever comes first', () => {
    const wear = { hoursPerWeek: 7 * 2, ageYears: 1, reshapeCount: 0, reshapeHours: 2000, mostReshapes: 2 };
    expect(hammerLifeOf(wear)).toEqual({ hoursPlayed: 730.5, toReshapeHours: 1269.5, leftHours: 6000 - 730.5, leftYears: expect.closeTo((6000 - 730.5) / 730.5, 9) as number, reshapesLeft: 2 });
    expect(hammerLifeOf({ ...wear, reshapeCount: 2 }).leftHours).toBe(2000);
    expect(hammerLifeOf({ ...wear, reshapeCount: 5 })).toMatchObject({ leftHours: 0, reshapesLeft: 0 });
    expect(hammerLifeOf({ ...wear, hoursPerWeek: 0 })).not.toHaveProperty('leftYears');
  });

  it('is of the order of the years the trade tells: a teaching room of 15 hours a week lasts 5 to 13 years against 7 to 10', () => {
    const years = ([0, 1] as const).map((end) => hammerLifeOf({ hoursPerWeek: 15, ageYears: 0, reshapeCount: 0, reshapeHours: usualWear.reshapeHours[end], mostReshapes: usualWear.mostReshapes[end] }).leftYears ?? 0);
    expect(years[0]).toBeLessThan(usualYears.teaching.replace[0]);
    expect(years[1]).toBeGreaterThan(usualYears.teaching.replace[1]);
  });
});
