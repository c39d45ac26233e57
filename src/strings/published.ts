import { type PublishedCase, type PublishedFigure, figuresFrom, printedTo } from '#sources';
import { type Hertz, degrees, gramsPerMetre, hertz, kelvins, millimetres, newtonSquareMetres, newtons, ratio } from '#units';
import { driftOf, turnedOf } from './drift.ts';
import { fittedInharmonicityOf } from './inharmonicity-fit.ts';
import { partialsOf, plainFiguresOf } from './plain-string.ts';
import { publishedWireFigures } from './published-wire.ts';
import { type SteppedString, steppedPartialsOf } from './stepped-string.ts';
import { stringUncertaintyOf } from './string-uncertainty.ts';
import { wireStrengthOf } from './wire-strength.ts';

/** A uniform string from its length, mass, tension and ε = E·I/(T·L²), in three pieces so that nothing analytic helps. */
function quotedString({ lengthMm, massG, tensionN, epsilon }: { readonly lengthMm: number; readonly massG: number; readonly tensionN: number; readonly epsilon: number }): SteppedString {
  const piece = (share: number) => ({
    lengthMm: millimetres(share * lengthMm),
    linearDensityGPerM: gramsPerMetre((massG / lengthMm) * 1e3),
    bendingStiffnessNm2: newtonSquareMetres(epsilon * tensionN * (lengthMm * 1e-3) ** 2),
  });
  return { tensionN: newtons(tensionN), segments: [piece(0.2), piece(0.5), piece(0.3)] };
}

const partialOf = (string: SteppedString, n: number): number => steppedPartialsOf(string, n)[n - 1] ?? Number.NaN;
const centsOf = (interval: number): number => 1200 * Math.log2(interval);

/** The plain C4 that the derived figures speak of. */
const c4 = { frequencyHz: hertz(261.6256), speakingLengthMm: millimetres(622), diameterMm: millimetres(1.016) };
const c4Figures = () => plainFiguresOf(c4);
const c4InPieces = (): SteppedString => {
  const { linearDensityGPerM, exactTensionN, exactInharmonicityB } = c4Figures();
  return quotedString({ lengthMm: 622, massG: 0.622 * linearDensityGPerM, tensionN: exactTensionN, epsilon: exactInharmonicityB / Math.PI ** 2 });
};
const pinned = ([n, frequency]: readonly [number, number]): PublishedCase => [`partial ${String(n)}, ends pinned, Hz`, 'C4 622 mm, 1.016 mm', frequency, () => partialOf(c4InPieces(), n)];

/** A string of inharmonicity B with T 800 N, 1 m, 3.2 g, its ends clamped. */
const stringOfB = (inharmonicityB: number): SteppedString => quotedString({ lengthMm: 1000, massG: 3.2, tensionN: 800, epsilon: inharmonicityB / Math.PI ** 2 });
const clampedOfB = (inharmonicityB: number): SteppedString => ({ ...stringOfB(inharmonicityB), endStiffnessNm: 1e12 });
const clamped = ([b, n, frequency]: readonly [number, number, number]): PublishedCase => [`partial ${String(n)}, ends clamped, Hz`, `B ${String(b)}, 800 N, 1 m, 3.2 g/m`, frequency, () => partialOf(clampedOfB(b), n)];
const clampingRise = (b: number) => (): number => centsOf(partialOf(clampedOfB(b), 1) / partialOf(stringOfB(b), 1));

/** Values of the string paper. Those quoted for C2 contradict each other, 53.1 Hz for a 65.4 Hz note, and are left out. */
const paperC4 = quotedString({ lengthMm: 620, massG: 3.93, tensionN: 670, epsilon: 3.82e-5 });
const paperC7 = quotedString({ lengthMm: 90, massG: 0.467, tensionN: 750, epsilon: 8.67e-4 });

/** k of: cents of partial n over n·f₀ = k·n²·d²/(f₀²·l⁴), in cm; in 1e13. */
function youngConstant(): number {
  const [diameterCm, lengthCm] = [c4.diameterMm / 10, c4.speakingLengthMm / 10];
  return ((600 / Math.LN2) * c4Figures().inharmonicityB * c4.frequencyHz ** 2 * lengthCm ** 4) / diameterCm ** 2 / 1e13;
}

/** Partial 15 over partial 1 of a string with the B that puts it on the sixteenth harmonic: 15²·(1 + 225·B) = 256·(1 + B). */
const fifteenth = () => partialOf(stringOfB(31 / 50_369), 15) / partialOf(stringOfB(31 / 50_369), 1);
const partialsOfB = (b: number): readonly Hertz[] => partialsOf({ frequencyHz: hertz(440), inharmonicityB: ratio(b), count: 8 });

const drift = (string: number, plate: number) => (): number => driftOf({ ...c4, stringWarmingK: kelvins(string), frameWarmingK: kelvins(plate) })?.offsetCents ?? Number.NaN;
const oneDegree = () => turnedOf({ ...c4, totalLengthMm: millimetres(810), pinDiameterMm: millimetres(7), turnDeg: degrees(1) })?.lengthChangeMm ?? Number.NaN;

/** Share of tension that a drawing tolerance on wire of 0.040 inch is worth. */
function toleranceShare(): number {
  const wire = { ...c4, diameterMm: millimetres(1.016) };
  const doubt = stringUncertaintyOf(wire, { lengthUncertaintyMm: millimetres(0), diameterUncertaintyMm: millimetres(0.0004 * 25.4) });
  return (100 * (doubt?.tensionUncertaintyN ?? Number.NaN)) / plainFiguresOf(wire).tensionN;
}

const PINNED = [[1, 261.6256], [2, 523.5618119222], [10, 2667.02950003], [20, 5630.6048906173]] as const;
const CLAMPED = [[4e-4, 1, 253.2749873135], [4e-4, 8, 2051.649806386], [4e-4, 20, 5455.2917795002], [8e-3, 1, 266.1643442487], [8e-3, 8, 2602.5228532184], [8e-3, 20, 10_665.4610516433]] as const;

/** Figures of strings that others worked out, beside this program's. */
export const publishedStringFigures: readonly PublishedFigure[] = [
  ...publishedWireFigures,
  ...figuresFrom('ASTM-A228', 'diameter tolerance ± 0.0004 inch', printedTo(2), ['share of tension, %', '0.040 inch', 2, toleranceShare]),
  ...figuresFrom('MPMATH-40', 'E·I·y⁗ − T·y″ = μ·ω²·y, ends pinned: fₙ = n·f₁·√((1 + B·n²)/(1 + B))', { tolerance: 1e-7, because: 'the program promises 1e-10 of the frequency' }, ...PINNED.map(pinned)),
  ...figuresFrom('MPMATH-40', 'the same, ends clamped: 2·a·b·(1 − cos a·cosh b) + (b² − a²)·sin a·sinh b = 0', { tolerance: 1e-6, because: 'the program promises 1e-10 of the frequency' }, ...CLAMPED.map(clamped)),
  ...figuresFrom('FLETCHER-1964', 'clamped ends raise by 1 + (2/π)·√B + (4/π²)·B', { tolerance: 0.05, because: 'the formula ends at the first power of B' },
    ['rise of partial 1, ct', 'B 4e-4', centsOf(1 + (2 / Math.PI) * 0.02 + (4 / Math.PI ** 2) * 4e-4), clampingRise(4e-4)]),
  ...figuresFrom('YOUNG-1952', 'abstract: 3.4e13·n²·d²/(ν₀²·l⁴) cents', { tolerance: 0.05, because: 'printed to two figures' }, ['constant, 1e13', 'lengths in cm', 3.4, youngConstant]),
  ...figuresFrom('YOUNG-1952', 'abstract: about 1.2 cents for the second mode of middle C, alike in six pianos', { tolerance: 0.15, because: 'about; the string is the one of another paper' },
    ['partial 2 over 2·ν₀ of the flexible string, ct', 'C4 620 mm, 670 N, 3.93 g, ε 3.82e-5', 1.2, () => centsOf(partialOf(paperC4, 2) / Math.sqrt(670 / (0.62 * 3.93e-3)))]),
  ...figuresFrom('SCHUCK-YOUNG-1943', 'abstract: the 15th partial had the frequency of a 16th harmonic', { tolerance: 1e-8, because: 'exact partials to 1e-10' }, ['partial 15 over partial 1', 'B 31/50369', 16, fifteenth]),
  ...figuresFrom('SCHUCK-YOUNG-1943', 'the same B, from partials', { tolerance: 1e-12, because: 'least squares in binary' }, ['B fitted to 8 partials', 'B 31/50369', 31 / 50_369, () => fittedInharmonicityOf(partialsOfB(31 / 50_369))]),
  ...figuresFrom('CHAIGNE-ASKENFELT-1994', 'C4', { tolerance: 2.2, because: 'length, tension and mass quoted to two or three figures: 0.8 %' }, ['partial 1, Hz', '620 mm, 670 N, 3.93 g, ε 3.82e-5', 261.6256, () => partialOf(paperC4, 1)]),
  ...figuresFrom('CHAIGNE-ASKENFELT-1994', 'C7', { tolerance: 66, because: 'length quoted as 0.09 m, tension and mass to two or three figures: 3.2 %' }, ['partial 1, Hz', '90 mm, 750 N, 0.467 g, ε 8.67e-4', 2093.0045, () => partialOf(paperC7, 1)]),
  ...figuresFrom('OWN', 'plain C4, 622 mm of 1.016 mm', printedTo(2),
    ['drift, ct', 'string alone warms 1 K', -2.5, drift(1, 0)],
    ['drift, ct', 'string and plate warm 1 K', -0.32, drift(1, 1)],
    ['exact less flexible tension, %', 'ends pinned', -0.04, () => 100 * (c4Figures().exactTensionN / c4Figures().tensionN - 1)]),
  ...figuresFrom('OWN', 'plain C4, 622 mm of 1.016 mm', { tolerance: 0.005e-4, because: 'printed to three figures' }, ['B', 'ends pinned', 3.96e-4, () => c4Figures().inharmonicityB]),
  ...figuresFrom('OWN', 'wire drawn by a 7 mm pin', { tolerance: 1e-9, because: 'π·8.016/360' }, ['wire, mm', 'one degree', (Math.PI * 8.016) / 360, oneDegree]),
  ...figuresFrom('OWN', 'gauge 18, straight line between rows of ASTM A228', printedTo(0), ['smallest strength, MPa', '0.041 inch', 2165, () => wireStrengthOf({ diameterMm: millimetres(0.041 * 25.4) }).tensileStrengthMPa]),
];
