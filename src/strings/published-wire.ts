import { type WireSeries, astmA228Strengths, en10270SmStrengths, steelWire, wireSizesOf } from '#materials';
import { type PublishedCase, type PublishedFigure, exactly, figuresFrom, printedTo } from '#sources';
import { millimetres } from '#units';
import { type StrengthModel, wireStrengthOf } from './wire-strength.ts';

const MM_PER_INCH = 25.4;
const MPA_PER_KSI = 6.894757293168361;

const sizeOf = (series: WireSeries, gauge: number) => (): number => wireSizesOf(series).find((size) => size.gauge === gauge)?.diameterMm ?? Number.NaN;
const inches = ([gauge, diameter]: readonly [number, number]): PublishedCase => ['diameter, inch', `gauge ${String(gauge)}, inch series`, diameter, () => sizeOf('inch', gauge)() / MM_PER_INCH];
const metric = ([gauge, diameter]: readonly [number, number]): PublishedCase => ['diameter, mm', `gauge ${String(gauge)}, metric series`, diameter, sizeOf('metric', gauge)];

const strengthOf = (diameterMm: number, strengthModel: StrengthModel): number => wireStrengthOf({ diameterMm: millimetres(diameterMm), strengthModel }).tensileStrengthMPa;
const inInch = (inch: number, model: StrengthModel): number => strengthOf(inch * MM_PER_INCH, model);

const smallest = ([inch, ksi]: readonly [number, number]): PublishedCase => ['smallest strength, ksi', `${String(inch)} inch`, ksi, () => inInch(inch, 'astm-a228-min') / MPA_PER_KSI];
const largest = ([inch, ksi]: readonly [number, number]): PublishedCase => [
  'largest strength, ksi', `${String(inch)} inch`, ksi,
  () => (astmA228Strengths.find(({ diameterMm }) => Math.abs(diameterMm / MM_PER_INCH - inch) < 1e-9)?.maxMPa ?? Number.NaN) / MPA_PER_KSI,
];
const lawOverMinimum = ([inch, share]: readonly [number, number]): PublishedCase => ['power law over the A228 minimum', `${String(inch)} inch`, share, () => inInch(inch, 'power-law') / inInch(inch, 'astm-a228-min')];

const smSmallest = ([diameter, least]: readonly [number, number]): PublishedCase => ['smallest strength, MPa', `${String(diameter)} mm`, least, () => strengthOf(diameter, 'en-10270-1-sm')];
const smLargest = ([diameter, most]: readonly [number, number]): PublishedCase => ['largest strength, MPa', `${String(diameter)} mm`, most, () => en10270SmStrengths.find(({ diameterMm }) => diameterMm === diameter)?.maxMPa ?? Number.NaN];
/** The formula just outside the table, where it stands in, against the row at the table's edge. */
const smBeyond = ([diameter, least]: readonly [number, number]): PublishedCase => ['smallest strength by the formula, MPa', `a hair outside ${String(diameter)} mm`, least, () => strengthOf(diameter * (diameter < 1 ? 1 - 1e-6 : 1 + 1e-6), 'en-10270-1-sm')];

const INCH_CHART = [[12, 0.029], [13, 0.031], [14, 0.033], [15, 0.035], [16, 0.037], [17, 0.039], [18, 0.041], [19, 0.043], [20, 0.045], [21, 0.047], [22, 0.049], [23, 0.051], [24, 0.055], [25, 0.059], [26, 0.063]] as const;
const METRIC_LIST = [
  [12, 0.725], [12.5, 0.75], [13, 0.775], [13.5, 0.8], [14, 0.825], [14.5, 0.85], [15, 0.875], [15.5, 0.9], [16, 0.925], [16.5, 0.95], [17, 0.975], [17.5, 1], [18, 1.025], [18.5, 1.05],
  [19, 1.075], [19.5, 1.1], [20, 1.125], [20.5, 1.15], [21, 1.175], [21.5, 1.2], [22, 1.225], [23, 1.3], [23.5, 1.35], [24, 1.4], [24.5, 1.45], [25, 1.5], [26, 1.6],
] as const;
const A228_LARGEST = [[0.028, 368], [0.03, 365], [0.032, 361], [0.034, 358], [0.038, 352], [0.04, 349], [0.042, 346], [0.045, 342], [0.048, 339], [0.051, 335], [0.055, 331], [0.059, 327], [0.063, 324]] as const;
const A228_SMALLEST = [[0.028, 333], [0.03, 330], [0.032, 327], [0.034, 324], [0.038, 318], [0.04, 315], [0.042, 313], [0.045, 309], [0.048, 306], [0.051, 303], [0.055, 300], [0.059, 296], [0.063, 293]] as const;
const LAW_OVER_MINIMUM = [[0.028, 1.01178], [0.034, 1.01102], [0.04, 1.01569], [0.045, 1.01788], [0.051, 1.01936], [0.063, 1.02234]] as const;
const SM_SMALLEST = [[0.7, 2090], [0.8, 2050], [0.9, 2010], [1, 1980], [1.1, 1950], [1.2, 1920], [1.3, 1900], [1.4, 1870], [1.5, 1850], [1.6, 1830]] as const;
const SM_LARGEST = [[0.7, 2350], [0.8, 2300], [0.9, 2260], [1, 2250], [1.1, 2190], [1.2, 2160], [1.3, 2130], [1.4, 2100], [1.5, 2080], [1.6, 2050]] as const;

/** Figures of wire that others printed, beside this program's. */
export const publishedWireFigures: readonly PublishedFigure[] = [
  ...figuresFrom('WIRE-CHART', 'sizes', { tolerance: 2e-6, because: 'stored in mm to 4 decimals' }, ...INCH_CHART.map(inches)),
  ...figuresFrom('TECH-LIST-2003', 'metric column', exactly, ...METRIC_LIST.map(metric)),
  ...figuresFrom('ASTM-A228', 'tensile requirements', { tolerance: 1e-9, because: 'kept in MPa and turned back' }, ...A228_SMALLEST.map(smallest), ...A228_LARGEST.map(largest)),
  ...figuresFrom('EN-10270-1', 'class SM', { tolerance: 5, because: 'the table is rounded to 10 MPa' }, ...([[0.7, 2090], [1.6, 1830]] as const).map(smBeyond)),
  ...figuresFrom('EN-10270-1', 'class SM', exactly, ...SM_SMALLEST.map(smSmallest), ...SM_LARGEST.map(smLargest), ['density, kg/m³', 'music wire', 7850, () => steelWire.densityKgM3.value]),
  ...figuresFrom('OWN', 'power law of Shigley’s table 10-4 (from memory) beside ASTM A228', printedTo(5), ...LAW_OVER_MINIMUM.map(lawOverMinimum)),
  ...figuresFrom('WIRE-DATA-PAGE', 'thermal expansion', exactly, ['expansion, 1/K', 'music wire', 12e-6, () => steelWire.expansionPerK.value]),
  ...figuresFrom('WIRE-DATA-PAGE', 'modulus', { tolerance: steelWire.youngsModulusGPa.uncertainty, because: 'sources give 190 to 207 GPa; the program says ± 10' }, ['Young’s modulus, GPa', 'music wire', 190, () => steelWire.youngsModulusGPa.value]),
  ...figuresFrom('YOUNG-1952', 'Q/ρ = 25.5e10 cm²/s²', { tolerance: 0.05, because: 'printed to three figures' },
    ['E/ρ, 1e10 cm²/s²', 'music wire', 25.5, () => (steelWire.youngsModulusGPa.value * 1e9 * 1e4) / steelWire.densityKgM3.value / 1e10]),
];
