import { type PublishedCase as Case, type PublishedFigure, exactly as exact, figuresFrom as from, printedTo as printed } from '#sources';
import { gramMillimetres, grams, millimetres, ratio } from '#units';
import { balanceWeightOf, frictionOf, loadProportionalBalanceOf, thresholdCorrectedFrictionOf, touchReadingsOf } from './balance.ts';
import { evennessOf } from './evenness.ts';
import { frictionBudgetOf } from './friction-budget.ts';
import { type Levers, distanceRatioOf, leverRatiosOf } from './levers.ts';
import { balanceFromPartsOf } from './parts.ts';
import { boundOfBad, sampleSizeForMean, sampleSizeToDetect } from './sample-size.ts';
import { balanceUncertaintyOf, ratioUncertaintyOf, weighingUncertaintyOf } from './uncertainty.ts';

const readings = (down: number, up: number) => ({ downWeightG: grams(down), upWeightG: grams(up) });

const balanceCases = (down: number, up: number, balance: number, friction: number): readonly [Case, Case] => {
  const given = `DW ${String(down)} g, UW ${String(up)} g`;
  return [['balance weight, g', given, balance, () => balanceWeightOf(readings(down, up))], ['friction, g', given, friction, () => frictionOf(readings(down, up))]];
};

const readingCases = (balance: number, friction: number, down: number, up: number): readonly [Case, Case] => {
  const given = `BW ${String(balance)} g, F ${String(friction)} g`;
  const read = () => touchReadingsOf({ balanceWeightG: grams(balance), frictionG: grams(friction) });
  return [['down weight, g', given, down, () => read().downWeightG], ['up weight, g', given, up, () => read().upWeightG]];
};

/** Parts and arms of an invented action; `changed` replaces some of its arms. */
const leversWith = (changed: Partial<Record<keyof Levers, number>> = {}): Levers => {
  const arms = { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130, ...changed };
  return {
    keyFrontMm: millimetres(arms.keyFrontMm), keyBackMm: millimetres(arms.keyBackMm), wippenHeelMm: millimetres(arms.wippenHeelMm),
    wippenJackMm: millimetres(arms.wippenJackMm), rollerMm: millimetres(arms.rollerMm), hammerMm: millimetres(arms.hammerMm),
  };
};
const actionRatioWith = (changed: Partial<Record<keyof Levers, number>>) => () => leverRatiosOf(leversWith(changed)).actionRatio;
const parts = { hammerWeightG: grams(9), wippenWeightG: grams(18), frontWeightG: grams(25), keyRatio: ratio(0.5), actionRatio: ratio(5.5) };

const budget = () => frictionBudgetOf({
  levers: leversWith(), hammerWeightG: grams(9.2), wippenWeightG: grams(18), keyFrictionG: grams(2),
  wippenTorqueGMm: gramMillimetres(60), hammerTorqueGMm: gramMillimetres(60),
  capstanFriction: ratio(0.2), capstanOffsetMm: millimetres(2), rollerFriction: ratio(0.2), rollerOffsetMm: millimetres(6),
});

const weighing = (step: number, repeatability: number, repeats = 1) => () => weighingUncertaintyOf({ stepG: grams(step), repeatabilityG: grams(repeatability), repeats });
const balanceDoubt = (step: number, repeatability: number) => () => {
  const each = weighing(step, repeatability)();
  return balanceUncertaintyOf({ downWeightUncertaintyG: each, upWeightUncertaintyG: each });
};
/** R 5.35 with SW 10 g, WW 18 g, K 0.51 ± 0.005. */
const ratioDoubt = (step: number, repeatability: number, scale: number) => () => 2 * ratioUncertaintyOf({
  balanceWeightG: grams(37.5), balanceWeightUncertaintyG: balanceDoubt(step, repeatability)(),
  frontWeightG: grams(5.35 * 10 + 0.51 * 18 - 37.5), hammerWeightG: grams(10), wippenWeightG: grams(18), keyRatio: ratio(0.51),
  scaleUncertaintyG: grams(scale), keyRatioUncertainty: ratio(0.005),
}).weightRatioUncertainty;

/** 88 keys that run from 47 to 50 g. */
const from47To50 = Array.from({ length: 88 }, (_, index) => 47 + (index % 4));
const detect = (bad: number) => () => sampleSizeToDetect({ bad, confidence: 0.95, keys: 88 }).sampleSize;

/** Figures of touch that others worked out, beside this program's. */
export const publishedTouchFigures: readonly PublishedFigure[] = [
  ...from('TECH-LIST-1998', 'first key', exact, ...balanceCases(50, 20, 35, 15)),
  ...from('TECH-LIST-1998', 'treble key, BW 35 and DW 46', exact, ...readingCases(35, 46 - 35, 46, 24), ...balanceCases(46, 24, 35, 11)),
  ...from('TECH-LIST-1998', 'four combinations', exact, ...readingCases(35, 15, 50, 20), ...readingCases(35, 12, 47, 23), ...readingCases(38, 12, 50, 26), ...readingCases(35, 17, 52, 18)),
  ...from('TECH-LIST-LESSON', 'worked key', exact, ...balanceCases(52, 28, 40, 12)),
  ...from('TECH-LIST-LESSON', 'one gram of friction more', exact, ...balanceCases(53, 27, 40, 13)),
  ...from('TECH-LIST-LESSON', 'front weight trades one to one', { tolerance: 1e-12, because: 'difference of two sums in binary' },
    ['change of balance weight, g', 'one gram of front weight more', -1, () => balanceFromPartsOf({ ...parts, frontWeightG: grams(26) }) - balanceFromPartsOf(parts)]),
  ...from('TECH-LIST-2007', 'travel trial', exact,
    ['ratio by distance', 'key 6 mm, hammer 36 mm', 6, () => distanceRatioOf({ keyTravelMm: millimetres(6), hammerTravelMm: millimetres(36) })]),
  ...from('PRACTICE', 'the usual example', exact, ...balanceCases(49, 26, 37.5, 11.5)),
  ...from('PRACTICE', 'a keyboard from 47 to 50 g is inside 49 ± 2 g', exact,
    ['keys inside', '88 keys, 47 to 50 g', 88, () => evennessOf({ values: from47To50, step: 1, band: { target: 49, tolerance: 2 } }).inside ?? 0]),
  ...from('OWN', 'middles of the two intervals', exact,
    ['friction less the step’s share, g', '49/26 g, 1 g steps', 11, () => thresholdCorrectedFrictionOf({ ...readings(49, 26), stepG: grams(1) })],
    ['false friction, g', '49/26 g, 5 g steps', 2.5, () => frictionOf(readings(49, 26)) - thresholdCorrectedFrictionOf({ ...readings(49, 26), stepG: grams(5) })]),
  ...from('OWN', 'load-proportional friction', printed(2),
    ['balance weight, g', '49/26 g, FW 25 g', 36.43, () => loadProportionalBalanceOf({ ...readings(49, 26), frontWeightG: grams(25) }) ?? 0],
    ['mean less load-proportional, g', '58/18 g, FW 34 g', 2.83, () => 38 - (loadProportionalBalanceOf({ ...readings(58, 18), frontWeightG: grams(34) }) ?? 0)]),
  ...from('OWN', 'lever example worked by hand', printed(4),
    ['key ratio, natural', 'arms 225/115/65/96/17/130 mm', 0.5111, () => leverRatiosOf(leversWith()).keyRatio],
    ['wippen ratio', 'arms 225/115/65/96/17/130 mm', 1.4769, () => leverRatiosOf(leversWith()).wippenRatio],
    ['hammer ratio', 'arms 225/115/65/96/17/130 mm', 7.6471, () => leverRatiosOf(leversWith()).hammerRatio],
    ['action ratio, natural', 'arms 225/115/65/96/17/130 mm', 5.7725, actionRatioWith({})],
    ['action ratio, sharp', 'key arms 190/101 mm', 6.0037, actionRatioWith({ keyFrontMm: 190, keyBackMm: 101 })]),
  ...from('OWN', 'lever example worked by hand', printed(2),
    ['action ratio', 'roller 16 mm', 6.13, actionRatioWith({ rollerMm: 16 })],
    ['action ratio', 'roller 18 mm', 5.45, actionRatioWith({ rollerMm: 18 })],
    ['action ratio', 'capstan 2 mm toward the player', 5.5, actionRatioWith({ keyBackMm: 113, wippenHeelMm: 67 })],
    ['action ratio', 'capstan 2 mm toward the rear', 6.06, actionRatioWith({ keyBackMm: 117, wippenHeelMm: 63 })]),
  ...from('OWN', 'friction budget worked by hand', printed(1),
    ['key, g', 'SW 9.2, WW 18, torques 60 g·mm, μ 0.2', 2, () => budget().keyG],
    ['wippen centre, g', 'the same', 0.5, () => budget().wippenG],
    ['hammer centre, g', 'the same', 2.7, () => budget().hammerG],
    ['capstan, g', 'the same, 2 mm off the line', 0.6, () => budget().capstanG],
    ['roller, g', 'the same, 6 mm off the line', 4.4, () => budget().rollerG],
    ['total, g', 'the same', 10.1, () => budget().totalG]),
  ...from('OWN', 'uncertainty table', printed(2),
    ['u(DW), g', 'step 1 g, repeatability 0', 0.29, weighing(1, 0)],
    ['u(DW), g', 'step 1 g, repeatability 0.7 g', 0.76, weighing(1, 0.7)],
    ['u(DW), g', 'step 2 g, repeatability 1 g', 1.15, weighing(2, 1)],
    ['u(DW), g', 'step 5 g, repeatability 1 g', 1.76, weighing(5, 1)],
    ['u(DW), g', 'step 1 g, repeatability 0.7 g, mean of 4', 0.45, weighing(1, 0.7, 4)],
    ['u(DW), g', 'step 0.5 g, repeatability 0.7 g, mean of 4', 0.38, weighing(0.5, 0.7, 4)],
    ['u(BW), g', 'step 1 g, repeatability 0', 0.2, balanceDoubt(1, 0)],
    ['u(BW), g', 'step 1 g, repeatability 0.7 g', 0.54, balanceDoubt(1, 0.7)],
    ['u(BW), g', 'step 2 g, repeatability 1 g', 0.82, balanceDoubt(2, 1)],
    ['u(BW), g', 'step 5 g, repeatability 1 g', 1.24, balanceDoubt(5, 1)]),
  ...from('OWN', 'uncertainty table; parts assumed: SW 10 g, WW 18 g, K 0.51 ± 0.005', { tolerance: 0.004, because: 'the table gives R 5.35 but not the parts; checked there by a Monte Carlo to 2 %' },
    ['U(R), k = 2', 'step 1 g, 0, scale 0.03 g', 0.055, ratioDoubt(1, 0, 0.03)],
    ['U(R), k = 2', 'step 1 g, 0.7 g, scale 0.1 g', 0.154, ratioDoubt(1, 0.7, 0.1)],
    ['U(R), k = 2', 'step 2 g, 1 g, scale 0.1 g', 0.2, ratioDoubt(2, 1, 0.1)],
    ['U(R), k = 2', 'step 5 g, 1 g, scale 0.3 g', 0.413, ratioDoubt(5, 1, 0.3)]),
  ...from('OWN', 'sampling, 95 %', exact,
    ['keys to weigh', 'mean to ± 1 g, s 2.5 g, 88 keys', 20, () => sampleSizeForMean({ sd: 2.5, halfWidth: 1, keys: 88 })],
    ['keys to weigh', '1 bad of 88', 84, detect(1)],
    ['keys to weigh', '3 bad of 88', 55, detect(3)],
    ['keys to weigh', '5 bad of 88', 39, detect(5)],
    ['keys to weigh', '10 bad of 88', 22, detect(10)],
    ['bad keys not ruled out', 'none bad in 15 of 88', 14, () => boundOfBad({ sampled: 15, confidence: 0.95, keys: 88 }).maxBad]),
];
