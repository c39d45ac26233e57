import { type Gigapascals, type GramsPerMetre, type KilogramsPerCubicMetre, type Millimetres, type NewtonSquareMetres, gramsPerMetre, newtonSquareMetres } from '#units';

/** Round wire, or hexagonal wire named by its size across flats. */
export const coreShapes = ['round', 'hex'] as const;
export type CoreShape = (typeof coreShapes)[number];

/** Cross-section of a wire. Round: π·d²/4. Hexagon across flats s: (√3/2)·s². Square millimetres. @source OWN geometry */
export function sectionAreaMm2(diameterMm: Millimetres, shape: CoreShape = 'round'): number {
  return shape === 'round' ? (Math.PI * diameterMm ** 2) / 4 : (Math.sqrt(3) / 2) * diameterMm ** 2;
}

/** Second moment of area. Round: π·d⁴/64. Hexagon across flats s: (5√3/144)·s⁴, the same about every axis. mm⁴. @source OWN geometry */
function secondMomentMm4(diameterMm: Millimetres, shape: CoreShape): number {
  return shape === 'round' ? (Math.PI * diameterMm ** 4) / 64 : ((5 * Math.sqrt(3)) / 144) * diameterMm ** 4;
}

/** Bending stiffness E·I of a wire, N·m². @source OWN geometry */
export function bendingStiffnessOf({ diameterMm, shape = 'round', youngsModulusGPa }: { readonly diameterMm: Millimetres; readonly shape?: CoreShape; readonly youngsModulusGPa: Gigapascals }): NewtonSquareMetres {
  return newtonSquareMetres(youngsModulusGPa * 1e9 * secondMomentMm4(diameterMm, shape) * 1e-12);
}

/** Mass of a metre of wire, ρ·A; g/m. @source OWN geometry */
export function wireDensityOf({ diameterMm, shape = 'round', densityKgM3 }: { readonly diameterMm: Millimetres; readonly shape?: CoreShape; readonly densityKgM3: KilogramsPerCubicMetre }): GramsPerMetre {
  return gramsPerMetre(densityKgM3 * sectionAreaMm2(diameterMm, shape) * 1e-3);
}
