export { castIron, copperWire, ironWire, steelWire } from './metals.ts';
export type { MaterialProperty } from './property.ts';
export { sizeBeside } from './size-steps.ts';
export { inchWireSizes, metricWireSizes, wireSizesOf } from './wire-sizes.ts';
export type { WireSeries, WireSize } from './wire-sizes.ts';
export { astmA228Strengths, en10270SmFormula, en10270SmStrengths, musicWirePowerLaw } from './wire-strength-tables.ts';
export type { StrengthRow } from './wire-strength-tables.ts';
export { woodMoistureOf } from './wood-moisture.ts';
