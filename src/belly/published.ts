import type { PublishedFigure, SourceKey } from '#sources';
import { degrees, millimetres, newtons, newtonsPerMillimetre } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';
import { gaugeReadingOf } from './gauge.ts';
import { type PushReading, complianceOf } from './push-test.ts';
import { recappedOf, recappedTo } from './recap.ts';
import { settledOf } from './settle.ts';

type Tolerance = Pick<PublishedFigure, 'tolerance' | 'because'>;
type Case = readonly [what: string, given: string, expected: number, found: () => number];

const rounding: Tolerance = { tolerance: 1e-11, because: 'exact but for binary' };
const printed = (decimals: number): Tolerance => ({ tolerance: 0.5 * 10 ** -decimals, because: `printed to ${String(decimals)} decimal${decimals === 1 ? '' : 's'}` });

/** Cases of one source and place that share a tolerance. */
const from = (source: SourceKey, place: string, tolerance: Tolerance, ...cases: readonly Case[]): readonly PublishedFigure[] =>
  cases.map(([what, given, expected, found]) => ({ source, place, what, given, expected, found, ...tolerance }));

const note = (sizes: Partial<Record<keyof BearingNote, number>>): BearingNote => {
  const { tensionN = 680, strings = 3, speakingLengthMm = 622, backLengthMm = 95, frontHeightMm = 0, bridgeHeightMm = 0, rearHeightMm = 0 } = sizes;
  return {
    tensionN: newtons(tensionN), strings, speakingLengthMm: millimetres(speakingLengthMm), backLengthMm: millimetres(backLengthMm),
    frontHeightMm: millimetres(frontHeightMm), bridgeHeightMm: millimetres(bridgeHeightMm), rearHeightMm: millimetres(rearHeightMm),
  };
};
const raised = recappedOf(note({}), millimetres(0.5));
const lifting = () => bearingOf(note({ frontHeightMm: -622 * Math.tan((0.14 * Math.PI) / 180), rearHeightMm: 95 * Math.tan((0.18 * Math.PI) / 180) }));

const pushes = (pairs: readonly (readonly [number, number])[]): readonly PushReading[] => pairs.map(([force, deflection]) => ({ forceN: newtons(force), deflectionMm: millimetres(deflection) }));
const noIntercept1 = pushes(Array.from({ length: 11 }, (_, index) => [60 + index, 130 + index] as const));
const noIntercept2 = pushes([[4, 3], [5, 4], [6, 4]]);
const fitOf = (readings: readonly PushReading[], part: 'perNewton' | 'uncertainty' | 'residual') => () => complianceOf(readings)?.[part] ?? Number.NaN;
const certified: Tolerance = { tolerance: 1e-12, because: 'certified to 15 digits' };

/** A cord of 1 N over a post 5 mm high, midway between rests 8 mm apart; the post stands on a spring. */
const heldBySpring = () => settledOf([note({ tensionN: 1, strings: 1, speakingLengthMm: 4, backLengthMm: 4, bridgeHeightMm: 5 })], [[{ station: 0, share: 1 }]], [[newtonsPerMillimetre(0.6)]]);

/** Figures of the belly that others worked out, beside this program's. */
export const publishedBellyFigures: readonly PublishedFigure[] = [
  ...from('VARIGNON-1687', 'force on a cord bent over a support', rounding,
    ['force, N', '100 N, both sides falling 30°: a knot with three forces at 120°', 100, () => bearingOf(note({ tensionN: 100, strings: 1, speakingLengthMm: Math.sqrt(3), backLengthMm: Math.sqrt(3), bridgeHeightMm: 1 })).forceN],
    ['force, N', '50 N, a 3-4-5 triangle before and a 5-12-13 behind', 50 * (3 / 5 + 5 / 13), () => bearingOf(note({ tensionN: 50, strings: 1, speakingLengthMm: 400, backLengthMm: 1200, bridgeHeightMm: 300, rearHeightMm: -200 })).forceN],
    ['total angle, °', 'rests 1 mm below, 1 and √3 mm away', 75, () => bearingOf(note({ speakingLengthMm: 1, backLengthMm: Math.sqrt(3), bridgeHeightMm: 1 })).totalDeg],
    ['settling, mm', 'cord of 1 N over a post 5 mm high between rests 8 mm apart, on a spring of 0.6 N/mm: at 3 mm two 3-4-5 triangles press with 1.2 N', 2, () => heldBySpring().settlingMm[0] ?? Number.NaN]),
  ...from('EUCLID-III-21', 'bridge on the circle over its rests', rounding,
    ['bridge height, mm', '60° wanted, rests level, 1 mm either side: 30° each', Math.tan(Math.PI / 6), () => recappedTo(note({ speakingLengthMm: 1, backLengthMm: 1 }), degrees(60)).bridgeHeightMm],
    ['bridge height, mm', '90° wanted, 9 and 4 mm either side (Thales: h² = 9·4)', 6, () => recappedTo(note({ speakingLengthMm: 9, backLengthMm: 4 }), degrees(90)).bridgeHeightMm]),
  ...from('OWN', 'recap worked by hand: 3 × 680 N, 622/95 mm, bridge + 0.5 mm', printed(1),
    ['change of force, N', 'the same', 12.4, () => raised.forceChangeN]),
  ...from('OWN', 'recap worked by hand: 3 × 680 N, 622/95 mm, bridge + 0.5 mm', printed(2),
    ['change of angle, °', 'the same', 0.35, () => raised.angleChangeDeg],
    ['share of the back length', 'the same', 0.87, () => raised.rearDeg / raised.totalDeg],
    ['error of angle, °', 'bridge ± 0.1 mm', 0.07, () => recappedOf(note({}), millimetres(0.1)).angleChangeDeg]),
  ...from('OWN', 'a note that lifts behind: + 0.14° and − 0.18°; 3 × 680 N assumed', { tolerance: 0.36, because: 'angles printed to 2 decimals' },
    ['force, N', 'the same', -1.5, () => lifting().forceN]),
  ...from('OWN', 'gauge with feet 25 mm either side', printed(2),
    ['reading, mm', '0.5° before and behind', 0.22, () => gaugeReadingOf({ frontSpanMm: millimetres(25), rearSpanMm: millimetres(25), frontDeg: degrees(0.5), rearDeg: degrees(0.5) })]),
  ...from('NIST-STRD', 'NoInt1, y = 130…140 on x = 60…70', certified,
    ['slope', 'deflections y under loads x', 2.07438016528926, fitOf(noIntercept1, 'perNewton')],
    ['standard deviation of the slope', 'the same', 0.0165289256198347, fitOf(noIntercept1, 'uncertainty')],
    ['residual standard deviation', 'the same', 3.56753034006338, fitOf(noIntercept1, 'residual')]),
  ...from('NIST-STRD', 'NoInt2, y = 3, 4, 4 on x = 4, 5, 6', certified,
    ['slope', 'deflections y under loads x', 0.727272727272727, fitOf(noIntercept2, 'perNewton')],
    ['standard deviation of the slope', 'the same', 0.0420827318078432, fitOf(noIntercept2, 'uncertainty')],
    ['residual standard deviation', 'the same', 0.369274472937998, fitOf(noIntercept2, 'residual')]),
];
