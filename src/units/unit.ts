/** The units figures are stored in. A quantity has exactly one; what is typed in another is converted and kept as typed. */
export type UnitId = 'g' | 'mm' | 'N' | 'deg' | 'Hz' | 'ct' | 's' | 'degC' | 'pct' | 'gmm' | 'gcm3' | 'Nm' | '1';

type Dimension = 'weight' | 'length' | 'angle' | 'frequency' | 'interval' | 'time' | 'temperature' | 'share' | 'moment' | 'density' | 'torque' | 'number';

interface Spelling {
  readonly dimension: Dimension;
  /** Stored value = typed value × factor + offset. */
  readonly factor: number;
  readonly offset?: number;
}

/** Standard gravity, exact by definition. @source CGPM-1901 3rd CGPM, resolution on the kilogram and weight */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/** Grams-force in one newton: 1000 / 9.80665. */
const GRAMS_PER_NEWTON = 1000 / STANDARD_GRAVITY_M_PER_S2;

/** Avoirdupois ounce in grams, exact. @source NIST-SP811 appendix B */
const GRAMS_PER_OUNCE = 28.349523125;

/** Inch times pound-force in newton metres: 0.0254 m × 0.45359237 kg × standard gravity. @source NIST-SP811 appendix B */
const NEWTON_METRES_PER_INCH_POUND = 0.0254 * 0.45359237 * STANDARD_GRAVITY_M_PER_S2;

/** International inch in millimetres, exact. @source NIST-SP811 appendix B */
const MILLIMETRES_PER_INCH = 25.4;

/** What each stored unit measures. */
export const dimensionOf: Readonly<Record<UnitId, Dimension>> = {
  g: 'weight',
  N: 'weight',
  mm: 'length',
  deg: 'angle',
  Hz: 'frequency',
  ct: 'interval',
  s: 'time',
  degC: 'temperature',
  pct: 'share',
  gmm: 'moment',
  gcm3: 'density',
  Nm: 'torque',
  '1': 'number',
};

const gramsIn = (factor: number): Spelling => ({ dimension: 'weight', factor });
const millimetresIn = (factor: number): Spelling => ({ dimension: 'length', factor });

/** Every way a unit may be typed, lower case; weights in grams, lengths in millimetres, times in seconds. */
const SPELLINGS: Readonly<Record<string, Spelling>> = {
  g: gramsIn(1),
  gf: gramsIn(1),
  gram: gramsIn(1),
  grams: gramsIn(1),
  gramm: gramsIn(1),
  kg: gramsIn(1000),
  mg: gramsIn(0.001),
  oz: gramsIn(GRAMS_PER_OUNCE),
  ounce: gramsIn(GRAMS_PER_OUNCE),
  ounces: gramsIn(GRAMS_PER_OUNCE),
  unze: gramsIn(GRAMS_PER_OUNCE),
  unzen: gramsIn(GRAMS_PER_OUNCE),
  n: gramsIn(GRAMS_PER_NEWTON),
  mn: gramsIn(GRAMS_PER_NEWTON / 1000),
  newton: gramsIn(GRAMS_PER_NEWTON),
  newtons: gramsIn(GRAMS_PER_NEWTON),
  mm: millimetresIn(1),
  cm: millimetresIn(10),
  m: millimetresIn(1000),
  µm: millimetresIn(0.001),
  um: millimetresIn(0.001),
  '"': millimetresIn(MILLIMETRES_PER_INCH),
  '″': millimetresIn(MILLIMETRES_PER_INCH),
  "''": millimetresIn(MILLIMETRES_PER_INCH),
  in: millimetresIn(MILLIMETRES_PER_INCH),
  inch: millimetresIn(MILLIMETRES_PER_INCH),
  inches: millimetresIn(MILLIMETRES_PER_INCH),
  zoll: millimetresIn(MILLIMETRES_PER_INCH),
  '°': { dimension: 'angle', factor: 1 },
  deg: { dimension: 'angle', factor: 1 },
  hz: { dimension: 'frequency', factor: 1 },
  ct: { dimension: 'interval', factor: 1 },
  cent: { dimension: 'interval', factor: 1 },
  cents: { dimension: 'interval', factor: 1 },
  s: { dimension: 'time', factor: 1 },
  ms: { dimension: 'time', factor: 0.001 },
  '°c': { dimension: 'temperature', factor: 1 },
  c: { dimension: 'temperature', factor: 1 },
  '°f': { dimension: 'temperature', factor: 5 / 9, offset: -160 / 9 },
  f: { dimension: 'temperature', factor: 5 / 9, offset: -160 / 9 },
  '%': { dimension: 'share', factor: 1 },
  gmm: { dimension: 'moment', factor: 1 },
  'g·mm': { dimension: 'moment', factor: 1 },
  'g/cm³': { dimension: 'density', factor: 1 },
  'g/cm3': { dimension: 'density', factor: 1 },
  'g/ml': { dimension: 'density', factor: 1 },
  'kg/m³': { dimension: 'density', factor: 0.001 },
  'kg/m3': { dimension: 'density', factor: 0.001 },
  nm: { dimension: 'torque', factor: 1 },
  'n·m': { dimension: 'torque', factor: 1 },
  ncm: { dimension: 'torque', factor: 0.01 },
  'kgf·cm': { dimension: 'torque', factor: STANDARD_GRAVITY_M_PER_S2 / 100 },
  kgcm: { dimension: 'torque', factor: STANDARD_GRAVITY_M_PER_S2 / 100 },
  'in·lbf': { dimension: 'torque', factor: NEWTON_METRES_PER_INCH_POUND },
  'in-lb': { dimension: 'torque', factor: NEWTON_METRES_PER_INCH_POUND },
  inlb: { dimension: 'torque', factor: NEWTON_METRES_PER_INCH_POUND },
};

/** How to turn a number typed with this unit word into the stored unit, or `undefined` when the word is no unit of its kind. */
export function conversionTo(stored: UnitId, word: string): { factor: number; offset: number } | undefined {
  const spelling = SPELLINGS[word.toLowerCase()];
  if (spelling?.dimension !== dimensionOf[stored]) return undefined;
  const scale = stored === 'N' ? 1 / GRAMS_PER_NEWTON : 1;
  return { factor: spelling.factor * scale, offset: (spelling.offset ?? 0) * scale };
}

/** True when the word is a unit of some kind: then a mismatch can be named as such. */
export function isUnitWord(word: string): boolean {
  return Object.hasOwn(SPELLINGS, word.toLowerCase());
}

/** The sign printed behind a figure. */
export const unitSign: Readonly<Record<UnitId, string>> = {
  g: 'g',
  N: 'N',
  mm: 'mm',
  deg: '°',
  Hz: 'Hz',
  ct: 'ct',
  s: 's',
  degC: '°C',
  pct: '%',
  gmm: 'g·mm',
  gcm3: 'g/cm³',
  Nm: 'N·m',
  '1': '',
};
