import type { ShopWire } from '#instrument';
import { type ScaleNote, type ScaleWire, sectionAreaMm2 } from '#strings';
import { type KilogramsPerCubicMetre, type Megapascals, megapascals, millimetres, ratio } from '#units';
import type { NoteSizes } from './scale-sizes.ts';

/** What the terms say of wire. */
export interface WireTerms {
  readonly wrapDensityKgM3: KilogramsPerCubicMetre;
  readonly packing?: number;
  /** Wires whose strength is known better than by a table. */
  readonly certified: readonly ShopWire[];
}

/** The wire a note's sizes make, or why they make none; neither where nothing of it is stated. */
export function wireOf(sizes: NoteSizes, terms: WireTerms): Pick<ScaleNote, 'wire' | 'fault'> {
  const { wireDiameterMm, hexCoreMm, overallDiameterMm, innerWrapMm, outerWrapMm } = sizes;
  const isWound = [overallDiameterMm, innerWrapMm, outerWrapMm].some((size) => size !== undefined);
  const core = hexCoreMm ?? wireDiameterMm;
  if (hexCoreMm !== undefined && wireDiameterMm !== undefined) return { fault: 'twoCores' };
  if (isWound && core === undefined) return { fault: 'wrapWithoutCore' };
  if (innerWrapMm !== undefined && outerWrapMm === undefined) return { fault: 'innerWithoutOuter' };
  if (!isWound && hexCoreMm !== undefined) return { fault: 'coreWithoutWrap' };
  if (core === undefined) return {};
  if (!isWound) return { wire: { kind: 'plain', diameterMm: millimetres(core.value) } };
  const base = { kind: 'wound', coreDiameterMm: millimetres(core.value), coreShape: hexCoreMm === undefined ? 'round' : 'hex', ...endsOf(sizes) } as const;
  if (outerWrapMm === undefined) return { wire: { ...base, ...measuredOf(overallDiameterMm?.value ?? 0, terms) } };
  const wraps = [innerWrapMm, outerWrapMm].flatMap((wrap) => (wrap === undefined ? [] : [{ wireDiameterMm: millimetres(wrap.value), densityKgM3: terms.wrapDensityKgM3 }]));
  return { wire: { ...base, wraps } };
}

function measuredOf(overall: number, { wrapDensityKgM3, packing }: WireTerms) {
  return { overallDiameterMm: millimetres(overall), wrapDensityKgM3, ...(packing === undefined ? {} : { packing: ratio(packing) }) };
}

const ENDS = ['bareFrontMm', 'bareRearMm', 'stepFrontMm', 'stepRearMm'] as const;

const endsOf = (sizes: NoteSizes) => Object.fromEntries(ENDS.flatMap((name) => (sizes[name] === undefined ? [] : [[name, millimetres(sizes[name].value)]])));

/** Two diameters this close are one wire: a thousandth of a millimetre, what a micrometer shows. @source PRACTICE */
const SAME_MM = 1e-3;

/** Strength of the shop's wire a note is strung with: the lower of certificate and test break; `undefined` where no such wire is stated. */
export function certificateFor(wire: ScaleWire | undefined, wires: readonly ShopWire[]): Megapascals | undefined {
  if (wire === undefined) return undefined;
  const [use, diameterMm, shape] = wire.kind === 'plain' ? (['plain', wire.diameterMm, 'round'] as const) : (['core', wire.coreDiameterMm, wire.coreShape ?? 'round'] as const);
  const stated = wires
    .filter((one) => one.use === use && one.metal === 'steel' && one.shape === shape && Math.abs(one.diameterMm - diameterMm) < SAME_MM)
    .flatMap(({ certificateMPa, testBreakN, diameterMm: size }) => [certificateMPa ?? [], testBreakN === null ? [] : testBreakN / sectionAreaMm2(millimetres(size), shape)].flat());
  return stated.length === 0 ? undefined : megapascals(Math.min(...stated));
}
