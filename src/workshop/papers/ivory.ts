import { ivoryMassOf, massTogether, thicknessOf } from '#law';
import { type Grams, type GramsPerCubicCentimetre, type Millimetres, grams, gramsPerCubicCentimetre, millimetres, squareMillimetres } from '#units';
import type { PaperMaterial } from './records.ts';

/** Density of ivory where none was measured. @source IVORY-DENSITY, 1.7 to 2.0 in sources */
const USUAL_DENSITY: GramsPerCubicCentimetre = gramsPerCubicCentimetre(1.8);
/** Standard uncertainty of anything between 1.7 and 2.0 alike: half the width by √3. @source JCGM-100, 4.3.7 */
const USUAL_DENSITY_DOUBT: GramsPerCubicCentimetre = gramsPerCubicCentimetre(0.15 / Math.sqrt(3));

/** What the operation `ivory-mass` is given for measured pieces. */
export interface IvoryInput {
  readonly pieces: readonly { readonly areaMm2: number; readonly thicknessMm: Millimetres; readonly thicknessUncertaintyMm: Millimetres; readonly count: number }[];
  readonly densityGPerCm3: GramsPerCubicCentimetre;
  readonly densityUncertaintyGPerCm3: GramsPerCubicCentimetre;
}

/** The input of the mass of measured pieces; nothing where none were measured. */
export function ivoryInputOf({ pieces, densityGPerCm3, densityUncertaintyGPerCm3 }: Pick<PaperMaterial, 'pieces' | 'densityGPerCm3' | 'densityUncertaintyGPerCm3'>): IvoryInput | undefined {
  if (pieces.length === 0) return undefined;
  return {
    pieces: pieces.map(({ areaMm2, count, thicknessesMm, gaugeUncertaintyMm }) => {
      const { meanMm, uncertaintyMm } = thicknessOf(thicknessesMm.map(millimetres), millimetres(gaugeUncertaintyMm));
      return { areaMm2, count, thicknessMm: meanMm, thicknessUncertaintyMm: uncertaintyMm };
    }),
    densityGPerCm3: densityGPerCm3 === null ? USUAL_DENSITY : gramsPerCubicCentimetre(densityGPerCm3),
    densityUncertaintyGPerCm3: densityGPerCm3 === null ? USUAL_DENSITY_DOUBT : gramsPerCubicCentimetre(densityUncertaintyGPerCm3 ?? 0),
  };
}

/** A mass with its doubt and where it comes from. */
export interface KnownMass {
  readonly massG: Grams;
  /** Absent where none was stated. */
  readonly uncertaintyG?: Grams;
  readonly how: 'weighed' | 'measured' | 'estimated';
}

/** The mass of a material: as stated, else from measured pieces; nothing where neither is known. */
export function massOf(material: PaperMaterial): KnownMass | undefined {
  const { massG, massUncertaintyG, massHow } = material;
  if (massG !== null) return { massG: grams(massG), how: massHow ?? 'estimated', ...(massUncertaintyG === null ? {} : { uncertaintyG: grams(massUncertaintyG) }) };
  const input = ivoryInputOf(material);
  if (input === undefined) return undefined;
  const mass = ivoryMassOf(input.pieces.map((row) => ({ ...row, areaMm2: squareMillimetres(row.areaMm2) })), input.densityGPerCm3, input.densityUncertaintyGPerCm3);
  return { massG: mass.massG, uncertaintyG: mass.massUncertaintyG, how: 'measured' };
}

/** Least sure first. */
const HOW = ['estimated', 'measured', 'weighed'] as const;

/** The masses of all ivory of an instrument, as the operation `ivory-total` is given them; nothing where a piece of ivory has no mass. */
export function ivoryMassesOf(ivories: readonly PaperMaterial[]): readonly KnownMass[] | undefined {
  const masses = ivories.map(massOf);
  const stated = masses.filter((mass) => mass !== undefined);
  return stated.length === 0 || stated.length < masses.length ? undefined : stated;
}

/** All ivory of an instrument together, known as surely as the least sure of it; nothing where a piece of ivory has no mass. */
export function allIvoryOf(ivories: readonly PaperMaterial[]): KnownMass | undefined {
  const stated = ivoryMassesOf(ivories);
  if (stated === undefined) return undefined;
  const { massG, massUncertaintyG } = massTogether(stated.map((mass) => ({ massG: mass.massG, massUncertaintyG: mass.uncertaintyG })));
  const how = HOW.find((one) => stated.some((mass) => mass.how === one)) ?? 'estimated';
  return { massG, how, ...(massUncertaintyG === undefined ? {} : { uncertaintyG: massUncertaintyG }) };
}
