import { millimetres, ratio } from '#units';
import { describe, expect, it } from 'vitest';
import { type RegulationInput, type RegulationKey, analyseRegulation } from './analyse-regulation.ts';
import { type RegulationFigures, askedRegulationOf } from './asked.ts';
import { orderOfWork, turnsFor } from './turns.ts';
import { usualRegulation } from './usual.ts';

const mm = millimetres;
const levers = { distanceRatio: ratio(5.3), keyEdgeMm: mm(238), keyFrontMm: mm(225), lossMm: mm(0.3), hammerPerCapstan: 11.25, keyBackLengthMm: mm(238) };
const asked: RegulationFigures = { blowMm: mm(45), letOffMm: mm(1.5), dipMm: mm(10), aftertouchMm: mm(1), dropMm: mm(1.75), keyLevelMm: mm(0), sharpHeightMm: mm(12) };
const tolerances = { keyLevelMm: 0.2, sharpHeightMm: 0.3, blowMm: 1, letOffMm: 0.5, dropMm: 0.5, dipMm: 0.2, aftertouchMm: 0.25, checkMm: 2 };
const key = (number: number, read: RegulationFigures, rest: Partial<RegulationKey> = {}): RegulationKey => ({ key: number, colour: 'natural', register: 'middle', read, ...rest });
const input = (keys: readonly RegulationKey[], rest: Partial<RegulationInput> = {}): RegulationInput => ({ kind: 'grand', keys, stated: { middle: asked }, levers: { natural: levers, sharp: levers }, tolerances, ...rest });
const codesOf = (keys: readonly RegulationKey[], rest?: Partial<RegulationInput>) => analyseRegulation(input(keys, rest)).keys.map(({ findings }) => findings.map(({ code, name }) => `${code} ${name}`));

describe('what is asked', () => {
  it('gives aftertouch 1.00 for blow 45, let-off 1.5 and dip 10 at ratio 5.3 (worked out apart from the program)', () => {
    const { figures, worked } = askedRegulationOf(asked, { floats: 'aftertouch', levers, toleranceMm: 0.25 });
    expect([worked, Number(figures.aftertouchMm?.toFixed(2))]).toEqual(['aftertouchMm', 1]);
  });

  it.each([['dip', 'dipMm'], ['blow', 'blowMm'], ['aftertouch', 'aftertouchMm']] as const)('comes back to itself whichever floats: %s', (floats, name) => {
    const whole = askedRegulationOf({ ...asked, ...askedRegulationOf(asked, { floats: 'aftertouch', levers, toleranceMm: 0 }).figures }, { floats: undefined, levers, toleranceMm: 0 }).figures;
    expect(askedRegulationOf(whole, { floats, levers, toleranceMm: 0 }).figures[name]).toBeCloseTo(whole[name] ?? Number.NaN, 10);
  });

  it('says by how much three fixed figures do not fit: ratio 5.0 leaves 0.48, which needs dip 10.52 or blow 42.5', () => {
    const { misfit } = askedRegulationOf(asked, { floats: undefined, levers: { ...levers, distanceRatio: ratio(5) }, toleranceMm: 0.25 });
    expect([misfit?.givenAftertouchMm.toFixed(2), misfit?.dipMm.toFixed(2), misfit?.blowMm.toFixed(1)]).toEqual(['0.48', '10.52', '42.5']);
  });

  it('does not ask what floats where no ratio is known, stated or not', () => {
    expect(askedRegulationOf(asked, { floats: 'dip', levers: undefined, toleranceMm: 0.25 }).figures).not.toHaveProperty('dipMm');
  });
});

describe('findings', () => {
  it('judges nothing where nothing is asked, but tells what blocks', () => {
    expect(codesOf([key(30, { blowMm: mm(60), dipMm: mm(7) }), key(31, { letOffMm: mm(0), dropMm: mm(0), aftertouchMm: mm(-0.5) })], { stated: {}, levers: {} }))
      .toEqual([[], ['blocks letOffMm', 'noEscape aftertouchMm', 'noDrop dropMm']]);
  });

  it('takes a figure on the very edge of its tolerance for inside', () => {
    expect(codesOf([key(30, { blowMm: mm(46), dipMm: mm(10.2) }), key(31, { blowMm: mm(46.01) })])).toEqual([[], ['outside blowMm']]);
  });

  it('finds a key uneven between even neighbours, of its own colour and register only', () => {
    const dip = (number: number, dipMm: number, rest?: Partial<RegulationKey>) => key(number, { dipMm: mm(dipMm) }, rest);
    expect(codesOf([dip(30, 9.85), dip(31, 9.9, { colour: 'sharp' }), dip(32, 10.15), dip(33, 10, { colour: 'sharp' }), dip(34, 9.85)], { levers: {} })).toEqual([[], [], ['uneven dipMm'], [], []]);
    expect(codesOf([dip(28, 9.85, { register: 'bass' }), dip(29, 10.15), dip(30, 9.85)], { levers: {} }).flat()).toEqual([]);
  });

  it('does not call a key uneven for a neighbour that is outside', () => {
    expect(codesOf([key(30, { blowMm: mm(45) }), key(31, { blowMm: mm(45) }), key(32, { blowMm: mm(48) }), key(33, { blowMm: mm(45) }), key(34, { blowMm: mm(45) })], { levers: {} })).toEqual([[], [], ['outside blowMm'], [], []]);
  });

  it('tells aftertouch that the geometry cannot give apart from lost motion', () => {
    const { keys: [worn, slack] } = analyseRegulation(input([
      key(30, { blowMm: mm(47), letOffMm: mm(2), dipMm: mm(10), aftertouchMm: mm(0.5) }),
      key(31, { blowMm: mm(45), letOffMm: mm(1.5), dipMm: mm(10), aftertouchMm: mm(0.6) }),
    ]));
    expect(worn?.givenAftertouchMm).toBeCloseTo(0.7, 2);
    const notGiven = worn?.findings.find(({ code }) => code === 'aftertouchNotGiven');
    expect([notGiven?.reach?.dipMm.toFixed(2), notGiven?.reach?.blowMm.toFixed(2)]).toEqual(['10.30', '45.50']);
    expect(worn?.findings.map(({ code }) => code)).not.toContain('aftertouchDiffers');
    const differs = slack?.findings.find(({ code }) => code === 'aftertouchDiffers');
    expect(differs?.turns).toEqual([{ code: 'lostMotion', amountMm: expect.closeTo(0.4, 2) as number }]);
  });

  it('asks the height above the naturals of sharps alone', () => {
    expect(codesOf([key(30, { sharpHeightMm: mm(11) }), key(31, { sharpHeightMm: mm(11) }, { colour: 'sharp' })])).toEqual([[], ['outside sharpHeightMm']]);
  });
});

describe('what to turn', () => {
  const turning = { kind: 'grand', floats: undefined, levers } as const;

  it('sends a low hammer up by its capstan, the amount taken down by wippen and hammer lever', () => {
    expect(turnsFor('blowMm', 2, turning)).toEqual([{ code: 'capstanUp', amountMm: expect.closeTo(2 / 11.25, 12) as number }]);
    expect(turnsFor('blowMm', -2, { ...turning, kind: 'upright' })).toEqual([{ code: 'railFarther' }]);
  });

  it('takes half the error in level out at the balance where front and back are as long', () => {
    expect(turnsFor('keyLevelMm', 0.4, turning)).toEqual([{ code: 'balanceThinner', amountMm: expect.closeTo(0.2, 12) as number }]);
  });

  it('turns nothing for what follows, and turns the other for aftertouch', () => {
    expect(turnsFor('dipMm', 1, { ...turning, floats: 'dip' })).toEqual([{ code: 'follows' }]);
    expect(turnsFor('aftertouchMm', -0.5, { ...turning, floats: 'dip' })).toEqual([{ code: 'frontThinner' }]);
    expect(turnsFor('aftertouchMm', -0.5, { ...turning, floats: 'blow' })).toEqual([{ code: 'capstanUp' }]);
  });

  it('has the keys level before anything is set, and no drop in an upright', () => {
    for (const floats of ['dip', 'blow', 'aftertouch', undefined] as const) expect(orderOfWork('grand', floats).slice(0, 2)).toEqual(['keyLevelMm', 'sharpHeightMm']);
    expect(orderOfWork('upright', 'dip')).not.toContain('dropMm');
    expect(new Set(orderOfWork('grand', 'blow')).size).toBe(8);
  });
});

describe('summary', () => {
  it('counts what was judged, and names the largest step', () => {
    const { rows } = analyseRegulation(input([key(30, { blowMm: mm(45) }), key(31, { blowMm: mm(47) }, { colour: 'sharp' }), key(32, {}), key(61, { blowMm: mm(50) }, { register: 'treble' })]));
    expect(rows).toEqual([{ name: 'blowMm', read: 3, judged: 2, inside: 1, medianMm: 47, largestStepMm: 3, stepKeys: [31, 61] }]);
  });
});

describe('usual values', () => {
  it('lie within the published ones: grands dip 9.9 to 11, blow 43 to 48; uprights dip 10, blow 45 to 48, let-off 3 to 2, travel after it up to 1.27', () => {
    for (const { dipMm = 0, blowMm = 0 } of Object.values(usualRegulation.grand)) expect([dipMm >= 9.9 && dipMm <= 11, blowMm >= 43 && blowMm <= 48]).toEqual([true, true]);
    for (const { dipMm, blowMm = 0, aftertouchMm = 9 } of Object.values(usualRegulation.upright)) expect([dipMm, blowMm >= 45 && blowMm <= 48, aftertouchMm <= 1.27]).toEqual([10, true, true]);
    expect([usualRegulation.upright.bass.letOffMm, usualRegulation.upright.treble.letOffMm]).toEqual([3, 2]);
  });
});
