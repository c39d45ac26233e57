import { type GramMillimetres, degrees, gramMillimetres, grams, millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { uprightTouchOf } from '../upright-touch.ts';
import { analyseUpright } from './analyse-upright.ts';
import type { UprightArms, UprightInput, UprightInputKey, UprightReadings } from './upright-key.ts';

const arms: UprightArms = { keyFrontMm: millimetres(225), keyBackMm: millimetres(99), wippenHeelMm: millimetres(60), wippenJackMm: millimetres(90), buttMm: millimetres(20), hammerMm: millimetres(142.9) };
const tilt = degrees(15);
const sound: UprightReadings = { downWeightG: grams(54), upWeightG: grams(24), frontWeightG: grams(2), hammerWeightG: grams(8), wippenWeightG: grams(35), damperG: grams(25), springTorqueGMm: gramMillimetres(60) };
const key = (number: number, read: UprightReadings, askedBalanceG?: number): UprightInputKey => ({ key: number, colour: 'natural', register: 'middle', read, ...(askedBalanceG === undefined ? {} : { askedBalanceG: grams(askedBalanceG) }) });
const analyse = (keys: readonly UprightInputKey[], rest: Partial<UprightInput> = {}) => analyseUpright({ keys, arms: { natural: arms, sharp: arms }, tiltDeg: tilt, asked: { springTorqueGMm: gramMillimetres(60), damperG: grams(25) }, toleranceG: grams(2), ...rest });
const codesOf = (read: UprightReadings, rest?: Partial<UprightInput>) => analyse([key(40, { ...sound, ...read })], rest)[0]?.findings.map(({ code }) => code);
const torque = (value: number): GramMillimetres => gramMillimetres(value);

describe('spring and damper of an upright key', () => {
  it('adds 6.3 g at the key front for a spring of 250 g·mm instead of 60, and 11 g for a damper of 25 g (worked by hand from the arms)', () => {
    const [weak, strong] = analyse([key(40, sound), key(41, { ...sound, springTorqueGMm: torque(250) })]);
    expect((strong?.springShareG ?? 0) - (weak?.springShareG ?? 0)).toBeCloseTo(6.27, 2);
    expect(weak?.damperShareG).toBeCloseTo(11, 9);
    expect(weak?.downWithDamperG).toBeCloseTo(65, 9);
  });

  it('shares add up to the balance weight that the parts give', () => {
    const [one] = analyse([key(40, sound)]);
    const { wippenG = NaN, springG = NaN, hammerG = NaN, balanceWeightG } = one?.byParts ?? {};
    expect(wippenG + springG + hammerG - 2).toBeCloseTo(balanceWeightG ?? NaN, 9);
    expect(one?.springShareG).toBeCloseTo(springG, 9);
    expect(one?.returnTorqueGMm).toBeCloseTo(60 + 8 * 142.9 * Math.sin(Math.PI / 12), 9);
  });

  it.each([
    ['springWeak', { springTorqueGMm: torque(0) }], ['springStrong', { springTorqueGMm: torque(250) }], ['damperHeavy', { damperG: grams(31) }], ['damperLight', { damperG: grams(19) }],
  ] as const)('tells %s beyond the tolerance at the key front', (code, read) => {
    expect(codesOf(read, { toleranceG: grams(1.5) })).toContain(code);
  });

  it('takes what is on the very edge of the tolerance for inside', () => {
    expect(codesOf({ damperG: grams(25 + 2 / 0.44), downWeightG: grams(41.6 + 12), upWeightG: grams(17.6) }, { toleranceG: grams(100) })).toEqual([]);
    expect(analyse([key(40, { damperG: grams(25 + 2 / (99 / 225)) })])[0]?.findings).toEqual([]);
  });

  it('says that nothing brings a hammer back which leans toward the string with a slack spring', () => {
    expect(codesOf({ springTorqueGMm: torque(10) }, { tiltDeg: degrees(-5), toleranceG: grams(100) })).toEqual(['noReturn']);
  });

  it('tells where weighing and parts disagree, and by how much', () => {
    const [one] = analyse([key(40, sound)]);
    const by = (one?.balanceWeightG ?? 0) - (one?.byParts?.balanceWeightG ?? 0);
    expect(one?.findings).toEqual([{ code: 'partsDiffer', figure: 39, limit: one?.byParts?.balanceWeightG, byG: by }]);
  });

  it('compares with the median of the register where nothing is asked', () => {
    const keys = [60, 62, 58, 250].map((spring, index) => key(40 + index, { springTorqueGMm: torque(spring) }));
    expect(analyse(keys, { asked: {} }).map(({ findings }) => findings.map(({ code }) => code))).toEqual([[], [], [], ['springStrong']]);
  });

  it('leaves open what a missing part would have to tell', () => {
    const [one] = analyse([key(40, sound)], { tiltDeg: undefined });
    expect([one?.byParts, one?.plan, one?.returnTorqueGMm]).toEqual([undefined, undefined, undefined]);
    expect(analyse([key(40, sound)], { arms: {} })[0]).not.toHaveProperty('springShareG');
  });
});

describe('the plan of an upright key', () => {
  it('shows what was asked once spring and front weight are as told', () => {
    const [one] = analyse([key(40, { ...sound, springTorqueGMm: torque(120) }, 38)]);
    const { plan } = one ?? {};
    const after = uprightTouchOf({ ...arms, tiltDeg: tilt, damperG: grams(0), wippenWeightG: grams(35), hammerMassG: grams(8), springTorqueGMm: plan?.springTorqueGMm ?? torque(0), frontWeightG: plan?.frontWeightG ?? grams(0) });
    expect(after.balanceWeightG).toBeCloseTo(38, 9);
    expect([plan?.springTorqueGMm, plan?.downWeightG, plan?.upWeightG]).toEqual([60, 53, 23]);
  });
});
