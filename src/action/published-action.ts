import { type PublishedCase, type PublishedFigure, type Tolerance, exactly as exact, figuresFrom as from, printedTo as printed } from '#sources';
import { degrees, gramMillimetres, gramSquareMillimetres, grams, gramsPerCubicMillimetre, millimetres, milliseconds, percent, ratio, squareMillimetres } from '#units';
import { contactOf } from './contact.ts';
import { returnTimeOf, strokeForceOf } from './dynamic-touch.ts';
import { effectiveMassOf } from './effective-mass.ts';
import { strikeOf, levelBoreOf } from './hammer-bore.ts';
import { hammerCurveOf } from './hammer-curve.ts';
import { keyLevelEffectOf, keyTopEffectOf } from './key-top.ts';
import { LEAD_DENSITY_G_PER_MM3, KEY_WOOD_DENSITY_G_PER_MM3, leadBreakPointOf, leadEffectOf, leadMassOf, trimDrillOf } from './leads/lead.ts';
import { rollerSizeEffectOf, shiftedLeversOf } from './lever-shift.ts';
import { type Levers, leverRatiosOf } from './levers.ts';
import { aftertouchOf, blowFor, dipFor } from './regulation.ts';
import { keyStrokeOf } from './stroke/stroke.ts';
import { uprightTouchOf } from './upright-touch.ts';

const mm = millimetres;

const natural: Levers = { keyFrontMm: mm(225), keyBackMm: mm(115), wippenHeelMm: mm(65), wippenJackMm: mm(96), rollerMm: mm(17), hammerMm: mm(130) };
const sharp: Levers = { ...natural, keyFrontMm: mm(190), keyBackMm: mm(101) };

const bed = { keyWidthMm: mm(13), leadDensityGPerMm3: LEAD_DENSITY_G_PER_MM3, woodDensityGPerMm3: KEY_WOOD_DENSITY_G_PER_MM3 };
const gross = (diameter: number) => () => leadMassOf({ diameterMm: mm(diameter) }, { ...bed, woodDensityGPerMm3: gramsPerCubicMillimetre(0) });
const breakPoint = (position: number) => () => leadBreakPointOf({ positionMm: mm(position) }, mm(225)) ?? 0;
/** Three 12.7 mm leads about 182.3 mm, 3 mm of wood between them, which give 43.6 g. */
const threeLeads = () => leadEffectOf({ ...bed, bareFrontWeightG: grams(0), keyFrontMm: mm(225), leads: [166.6, 182.3, 198].map((position) => ({ diameterMm: mm(12.7), positionMm: mm(position) })) });

const inch: Tolerance = { tolerance: 0.11, because: 'printed to 1 decimal, and the diameters are whole parts of an inch rounded to 0.1 mm' };

/** Hammer and wippen share on a natural, as printed; what they become with other levers. */
const shares = (levers: Levers) => effectiveMassOf(levers, {
  keyGMm2: gramSquareMillimetres(0),
  wippenGMm2: gramSquareMillimetres(4 * (65 / leverRatiosOf(natural).keyRatio) ** 2),
  hammerGMm2: gramSquareMillimetres(279.4 * (130 / leverRatiosOf(natural).actionRatio) ** 2),
});

const stroke = (ms: number) => ({ balanceWeightG: grams(37.5), frictionG: grams(11.5), effectiveMassG: grams(330), dipMm: mm(10), strokeMs: milliseconds(ms) });
/** The inertial part alone: nothing to lift, nothing that rubs; the mass is that of the first figure. */
const inertial = (ms: number) => () => strokeForceOf({ ...stroke(ms), balanceWeightG: grams(0), frictionG: grams(0), effectiveMassG: grams((10.75 * 20 ** 2) / 20) }).forceN;

const regulated = (distance: number, letOff = 1.5) => ({ letOffMm: mm(letOff), distanceRatio: ratio(distance), keyEdgeMm: mm(238), keyFrontMm: mm(225), lossMm: mm(0.3) });
const aftertouch = (distance: number, blow = 45, letOff = 1.5) => () => aftertouchOf(regulated(distance, letOff), { blowMm: mm(blow), dipMm: mm(10) });
const dip = (distance: number) => () => dipFor(regulated(distance), { blowMm: mm(45), aftertouchMm: mm(1) });
const blow = (distance: number) => () => blowFor(regulated(distance), { dipMm: mm(10), aftertouchMm: mm(1) });

const bored = (bore: number) => ({ stringHeightMm: mm(190), centreHeightMm: mm(140), hammerMm: mm(130), boreMm: mm(bore), rakeDeg: degrees(0) });
const strike = (bore: number) => strikeOf(bored(bore)) ?? { shankDeg: NaN, strikeShiftMm: NaN };

const topWith = (planed: number) => () => keyTopEffectOf({
  oldThicknessMm: mm(1), oldDensityGPerMm3: gramsPerCubicMillimetre(0.00185), newThicknessMm: mm(2.3), newDensityGPerMm3: gramsPerCubicMillimetre(0.00119),
  areaMm2: squareMillimetres(2400), centroidMm: mm(65), keyEdgeMm: mm(238), keyFrontMm: mm(225), planedMm: mm(planed), woodDensityGPerMm3: KEY_WOOD_DENSITY_G_PER_MM3,
});
const levelled = () => keyLevelEffectOf({ balancePunchingMm: mm(0.3), keyEdgeMm: mm(238), backRestMm: mm(170), frontPinMm: mm(215) });

/** The published fit, and the parabola through three of its points. */
const fitted = (key: number): number => 11.074 - 0.074 * key + 1e-4 * key ** 2;
const anchored = (key: number) => () => hammerCurveOf([1, 40, 88].map((n) => ({ key: n, weightG: grams(fitted(n)) })) as unknown as Parameters<typeof hammerCurveOf>[0], 88)[key - 1] ?? 0;

const upright = (changed: { readonly spring?: number; readonly damper?: number } = {}) => uprightTouchOf({
  keyFrontMm: mm(225), keyBackMm: mm(99), wippenHeelMm: mm(100), wippenJackMm: mm(7.524 * 20), buttMm: mm(20), hammerMm: mm(142.875),
  wippenWeightG: grams(35), damperG: grams(changed.damper ?? 0), springTorqueGMm: gramMillimetres(changed.spring ?? 60), hammerMassG: grams(8), tiltDeg: degrees(15), frontWeightG: grams(0),
});

/** Capstan 10 mm above the line of centres of key and wippen, in the middle of their arms. */
const slid = () => contactOf({ first: { xMm: 0, yMm: 0 }, second: { xMm: 180, yMm: 0 }, contact: { xMm: 115, yMm: 10 }, normalDeg: degrees(90) })?.slidingMm ?? 0;

/** The stroke of an invented action with the arms of the lever example, at the place they were measured. */
const strokeRatio = (): number => {
  const stroke = keyStrokeOf({
    levers: natural, keyEdgeMm: mm(238), balanceHeightMm: mm(25), capstanHeightMm: mm(72), wippenCentreHeightMm: mm(85), jackTopHeightMm: mm(127), hammerCentreHeightMm: mm(142), stringHeightMm: mm(192),
    capstanRadiusMm: mm(6), rollerDiameterMm: mm(10), blowMm: mm(45), letOffMm: mm(1.5), dipMm: mm(10), lossMm: mm(0.3), measuredAtPct: percent(50), heelTiltDeg: degrees(0), jackTiltDeg: degrees(0),
  }, 3);
  return stroke.ok ? (stroke.value.measured.rates?.actionRatio ?? NaN) : NaN;
};

/** Figures of leads, inertia, regulation and geometry that others worked out, beside this program's. */
export const publishedActionFigures: readonly PublishedFigure[] = [
  ...from('OWN', 'lead masses, key 13 mm wide', inch,
    ['mass, g', 'lead 12.7 mm', 18.7, gross(12.7)],
    ['mass, g', 'lead 11.1 mm', 14.3, gross(11.1)],
    ['mass, g', 'lead 9.5 mm', 10.5, gross(9.5)],
    ['mass, g', 'lead 7.9 mm', 7.2, gross(7.9)],
    ['mass, g', 'lead 6.35 mm', 4.7, gross(6.35)]),
  ...from('OWN', 'three leads for 43.6 g on a bass key, 3 mm of wood between them assumed', printed(1),
    ['front weight, g', 'leads at 166.6, 182.3 and 198 mm of 225', 43.6, () => threeLeads().frontWeightG]),
  ...from('OWN', 'leads for 43.6 g on a bass key', printed(0), ...[[3, 54], [4, 72], [5, 90]].map(([count = 0, mass = 0]): PublishedCase => ['lead, g', `${String(count)} of 12.7 mm`, mass, () => count * leadMassOf({ diameterMm: mm(12.7) }, bed)])),
  ...from('BIRKETT-LIST', 'break point g·a/x; the figures are worked out from it by hand', printed(1), ['acceleration, m/s²', 'lead at 180 of 225 mm', 12.3, breakPoint(180)]),
  ...from('BIRKETT-LIST', 'break point g·a/x; the figures are worked out from it by hand', printed(0),
    ['acceleration, m/s²', 'lead at 110 of 225 mm', 20, breakPoint(110)],
    ['acceleration, m/s²', 'lead at 60 of 225 mm', 37, breakPoint(60)],
    ['time for 10 mm, ms', 'lead at 180 of 225 mm', 40, () => Math.sqrt(20_000 / breakPoint(180)())],
    ['time for 10 mm, ms', 'lead at 60 of 225 mm', 23, () => Math.sqrt(20_000 / breakPoint(60)())]),
  ...from('OWN', 'trim worked by hand', printed(1), ['drill, mm', '1 g off at 180 of 225 mm, key 13 mm wide', 3.3, () => trimDrillOf({ ...bed, frontWeightChangeG: grams(1), positionMm: mm(180), keyFrontMm: mm(225) })]),
  ...from('OWN', 'table of effective masses: the sharp from the natural', { tolerance: 0.11, because: 'both printed to 1 decimal' },
    ['hammer, g', '279.4 g on the natural', 302.3, () => shares(sharp).hammerG],
    ['wippen, g', '4.0 g on the natural', 4.3, () => shares(sharp).wippenG]),
  ...from('MALLORY-2007', 'inertia force goes as 1/t²; 10.75 N at 0.02 s is the figure printed', { tolerance: 1e-12, because: 'binary' },
    ['force, N', '0.1 s', 0.43, inertial(100)],
    ['force, N', '0.25 s', 0.0688, inertial(250)]),
  ...from('OWN', 'forces worked by hand', printed(1), ['force, N', 'BW 37.5, F 11.5, 330 g, 10 mm in 25 ms', 11, () => strokeForceOf(stroke(25)).forceN]),
  ...from('OWN', 'forces worked by hand', printed(2),
    ['share of inertia', 'the same', 0.96, () => strokeForceOf(stroke(25)).inertialShare],
    ['force, N', 'in 160 ms', 0.74, () => strokeForceOf(stroke(160)).forceN],
    ['share of inertia', 'in 160 ms', 0.35, () => strokeForceOf(stroke(160)).inertialShare]),
  ...from('OWN', 'return worked by hand', printed(0), ['return, ms', 'UW 26 g, 330 g, 10 mm', 161, () => returnTimeOf(stroke(25)) ?? 0]),
  ...from('OWN', 'regulation worked by hand; front edge 238, measuring point 225, loss 0.3 mm', printed(2),
    ['aftertouch, mm', 'blow 45, let-off 1.5, R 5.3, dip 10', 1, aftertouch(5.3)],
    ['aftertouch, mm', 'R 5.0', 0.48, aftertouch(5)],
    ['dip for 1 mm, mm', 'R 5.0', 10.52, dip(5)],
    ['dip for 1 mm, mm', 'R 5.77', 9.29, dip(5.77)],
    ['aftertouch, mm', 'blow 47, let-off 2.0, R 5.3', 0.7, aftertouch(5.3, 47, 2)]),
  ...from('OWN', 'regulation worked by hand; front edge 238, measuring point 225, loss 0.3 mm', printed(1),
    ['blow for 1 mm, mm', 'R 5.0', 42.5, blow(5)],
    ['blow for 1 mm, mm', 'R 5.77', 48.9, blow(5.77)]),
  ...from('TECH-LIST-BORE', 'bore = string height less centre height', exact, ['bore for a level shank, mm', 'string 190, centre 140', 50, () => levelBoreOf(bored(50))]),
  ...from('OWN', 'bore worked by hand: string 190, centre 140, hammer 130', printed(2),
    ['shank, °', 'bore 50', 0, () => strike(50).shankDeg],
    ['shank, °', 'bore 49', 0.44, () => strike(49).shankDeg],
    ['strike point toward the centre, mm', 'bore 49', 0.38, () => strike(49).strikeShiftMm],
    ['shank, °', 'bore 48', 0.88, () => strike(48).shankDeg],
    ['strike point toward the centre, mm', 'bore 48', 0.76, () => strike(48).strikeShiftMm]),
  ...from('OWN', 'key tops worked by hand; lever of the top 173 of 225 mm assumed', printed(2),
    ['front weight, g', '1.0 mm of 1.85 to 2.3 mm of 1.19 g/cm³, 2400 mm², planed 1.3 mm', 0.56, () => topWith(1.3)().frontWeightChangeG],
    ['front weight, g', 'not planed', 1.64, () => topWith(0)().frontWeightChangeG]),
  ...from('OWN', 'key tops worked by hand; lever of the top 173 of 225 mm assumed', { tolerance: 1e-12, because: 'binary' },
    ['level, mm', 'not planed', 1.3, () => topWith(0)().levelChangeMm],
    ['level, mm', 'planed 1.3 mm', 0, () => topWith(1.3)().levelChangeMm]),
  ...from('OWN', 'levelling worked by hand; edge 238, back rest 170, front pin 215 mm assumed', printed(2),
    ['level, mm', '0.3 mm out at the balance', -0.72, () => levelled().levelChangeMm],
    ['dip, mm', 'the same', -0.75, () => levelled().dipChangeMm],
    ['front punching, mm', 'the same', -0.68, () => levelled().frontPunchingMm]),
  ...from('STULOV-2008', 'eq. 11; parabola through its values at keys 1, 40 and 88', { tolerance: 1e-9, because: 'the fit is itself a parabola; binary' },
    ['hammer, g', 'key 20', 9.634, anchored(20)],
    ['hammer, g', 'key 60', 6.994, anchored(60)],
    ['hammer, g', 'key 88', 5.3364, anchored(88)]),
  ...from('OWN', 'roller worked by hand', printed(1), ['hammer rises, mm', 'roller 1 mm thicker', 3.8, () => rollerSizeEffectOf(natural, mm(1)).hammerLiftMm]),
  ...from('OWN', 'roller worked by hand', printed(2), ['capstan down, mm', 'roller 1 mm thicker', 0.34, () => rollerSizeEffectOf(natural, mm(1)).capstanDownMm]),
  ...from('OWN', 'capstan line worked by hand', printed(2),
    ['action ratio', '2 mm toward the player', 5.5, () => leverRatiosOf(shiftedLeversOf(natural, { capstanTowardPlayerMm: mm(2), rollerOutMm: mm(0), jackFollows: false })).actionRatio],
    ['action ratio', '2 mm toward the back', 6.06, () => leverRatiosOf(shiftedLeversOf(natural, { capstanTowardPlayerMm: mm(-2), rollerOutMm: mm(0), jackFollows: false })).actionRatio]),
  ...from('OWN', 'lever example worked by hand', printed(4), ['action ratio of the stroke where the arms were measured', 'arms 225/115/65/96/17/130 mm', 5.7725, strokeRatio]),
  ...from('OWN', 'sliding worked by hand; arms 115 and 65 mm', printed(1), ['sliding, mm for a radian of the key', 'capstan 10 mm off the line of centres', 27.7, slid]),
  ...from('OWN', 'upright worked by hand; K 0.44, L 142.9 and R 4.73 put in', printed(2), ['action ratio', 'the same', 4.73, () => upright().actionRatio]),
  ...from('OWN', 'upright worked by hand; K 0.44, L 142.9 and R 4.73 put in', printed(1), ['change of balance weight, g', 'spring 60 to 250 g·mm', 6.3, () => upright({ spring: 250 }).balanceWeightG - upright().balanceWeightG]),
  ...from('OWN', 'upright worked by hand; K 0.44, L 142.9 and R 4.73 put in', printed(0), ['change of balance weight, g', 'damper 25 g at the capstan', 11, () => upright({ damper: 25 }).balanceWeightG - upright().balanceWeightG]),
];
