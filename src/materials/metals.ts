import { gigapascals, kilogramsPerCubicMetre, perKelvin } from '#units';
import type { MaterialProperty } from './property.ts';

type Properties = Readonly<Record<string, MaterialProperty>>;

/**
 * Steel music wire. Sources give 190 to 207 GPa and 7800 to 7850 kg/m³; 200 GPa at 7850 kg/m³ is what Young found by
 * measuring partials (E/ρ = 25.5e10 cm²/s²). Inharmonicity grows in step with E.
 */
export const steelWire = {
  densityKgM3: { value: kilogramsPerCubicMetre(7850), uncertainty: kilogramsPerCubicMetre(50), source: 'EN-10270-1' },
  youngsModulusGPa: { value: gigapascals(200), uncertainty: gigapascals(10), source: 'YOUNG-1952' },
  expansionPerK: { value: perKelvin(12e-6), uncertainty: perKelvin(1e-6), source: 'WIRE-DATA-PAGE' },
} as const satisfies Properties;

/** Copper wire for windings. */
export const copperWire = {
  densityKgM3: { value: kilogramsPerCubicMetre(8960), uncertainty: kilogramsPerCubicMetre(30), source: 'METALS-MEMORY' },
} as const satisfies Properties;

/** Soft iron wire for windings. */
export const ironWire = {
  densityKgM3: { value: kilogramsPerCubicMetre(7860), uncertainty: kilogramsPerCubicMetre(30), source: 'METALS-MEMORY' },
} as const satisfies Properties;

/** Grey cast iron, as of plates. */
export const castIron = {
  expansionPerK: { value: perKelvin(10.5e-6), uncertainty: perKelvin(1e-6), source: 'METALS-MEMORY' },
} as const satisfies Properties;
