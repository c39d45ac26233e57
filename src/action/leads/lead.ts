import { sumOf } from '#numerics';
import {
  type GramMillimetres, type GramSquareMillimetres, type Grams, type GramsPerCubicMillimetre, type MetresPerSecondSquared, type Millimetres,
  STANDARD_GRAVITY_M_PER_S2, gramMillimetres, gramSquareMillimetres, grams, gramsPerCubicMillimetre, metresPerSecondSquared, millimetres,
} from '#units';

/** Density of lead. @source METALS-MEMORY */
export const LEAD_DENSITY_G_PER_MM3: GramsPerCubicMillimetre = gramsPerCubicMillimetre(0.01134);

/** Density of the spruce, lime or sugar pine a key is cut from, taken as one. @source PRACTICE */
export const KEY_WOOD_DENSITY_G_PER_MM3: GramsPerCubicMillimetre = gramsPerCubicMillimetre(0.00045);

/** A lead that goes right through a key. */
export interface Lead {
  readonly diameterMm: Millimetres;
  /** Drilled out through its middle and left open; absent for a solid one. */
  readonly boreMm?: Millimetres | undefined;
  /** Of an insert that is not of the usual metal. */
  readonly densityGPerMm3?: GramsPerCubicMillimetre | undefined;
  /** From the balance point to the middle of the lead: toward the player above nought, toward the back below. */
  readonly positionMm: Millimetres;
}

/** What leads of a key are made of and put into. */
export interface LeadBed {
  /** Width of the key where the leads go through it. */
  readonly keyWidthMm: Millimetres;
  /** Of the insert; nought for an empty hole, and whatever a substitute for lead has. */
  readonly leadDensityGPerMm3: GramsPerCubicMillimetre;
  /** Of the wood drilled out. */
  readonly woodDensityGPerMm3: GramsPerCubicMillimetre;
}

/**
 * What a lead adds to a key: its mass less that of the wood drilled out for it.
 * m = (ρ·(d² − b²) − ρ_wood·d²)·π/4·w; grams, millimetres; b the hole through its middle. Takes the lead as a cylinder as long as
 * the key is wide.
 * @source OWN mass of a cylinder
 */
export function leadMassOf({ diameterMm, boreMm = millimetres(0), densityGPerMm3 }: Omit<Lead, 'positionMm'>, { keyWidthMm, leadDensityGPerMm3, woodDensityGPerMm3 }: LeadBed): Grams {
  const density = densityGPerMm3 ?? leadDensityGPerMm3;
  return grams((density - woodDensityGPerMm3) * cylinderMm3(diameterMm, keyWidthMm) - density * cylinderMm3(boreMm, keyWidthMm));
}

/**
 * Moment of a lead about the balance point, m·x; above nought it helps the key down.
 * @source OWN
 */
export function leadMomentOf(lead: Lead, bed: LeadBed): GramMillimetres {
  return gramMillimetres(leadMassOf(lead, bed) * lead.positionMm);
}

/**
 * Moment of inertia a lead adds about the balance point.
 * I = m·x² + (ρ·(d⁴ − b⁴) − ρ_wood·d⁴)·π/32·w, the axis of the cylinder parallel to the pivot; m·(x² + d²/8) for a solid one.
 * @source OWN parallel axes; a cylinder about its own axis has m·d²/8
 */
export function leadInertiaOf(lead: Lead, bed: LeadBed): GramSquareMillimetres {
  const { diameterMm, boreMm = millimetres(0), densityGPerMm3, positionMm } = lead;
  const bored = ((densityGPerMm3 ?? bed.leadDensityGPerMm3) * cylinderMm3(boreMm, bed.keyWidthMm) * (diameterMm ** 2 - boreMm ** 2)) / 8;
  return gramSquareMillimetres(leadMassOf(lead, bed) * (positionMm ** 2 + diameterMm ** 2 / 8) + bored);
}

/** What the leads of one key do together. */
export interface LeadEffect {
  /** In the order the leads were given. */
  readonly netMassesG: readonly Grams[];
  readonly frontWeightG: Grams;
  /** Of the leads alone, about the balance point. */
  readonly inertiaGMm2: GramSquareMillimetres;
  /** That inertia as a mass at the measuring point. */
  readonly effectiveMassG: Grams;
}

/**
 * Front weight and inertia that leads give a key.
 * FW = FW₀ + Σ m·x/a, I = Σ m·(x² + d²/8), m_eff = I/a²; a from the balance point to the measuring point, above nought.
 * Ignores that two holes may meet: see {@link meetingLeadsOf}.
 * @source OWN moments about the balance point
 */
export function leadEffectOf({ bareFrontWeightG, keyFrontMm, leads, ...bed }: LeadBed & { readonly bareFrontWeightG: Grams; readonly keyFrontMm: Millimetres; readonly leads: readonly Lead[] }): LeadEffect {
  const inertia = sumOf(leads.map((lead) => leadInertiaOf(lead, bed)));
  return {
    netMassesG: leads.map((lead) => leadMassOf(lead, bed)),
    frontWeightG: grams(bareFrontWeightG + sumOf(leads.map((lead) => leadMomentOf(lead, bed))) / keyFrontMm),
    inertiaGMm2: gramSquareMillimetres(inertia),
    effectiveMassG: grams(inertia / keyFrontMm ** 2),
  };
}

/**
 * Pairs of leads, by their places in the list, whose holes meet if they lie on one line along the key.
 * |x_i − x_j| < (d_i + d_j)/2. Leads set one above the other are taken for meeting too.
 * @source OWN
 */
export function meetingLeadsOf(leads: readonly Lead[]): readonly (readonly [number, number])[] {
  return leads.flatMap((one, first) =>
    leads.flatMap((other, second) =>
      second > first && Math.abs(one.positionMm - other.positionMm) < (one.diameterMm + other.diameterMm) / 2 ? [[first, second] as const] : []));
}

/**
 * Acceleration of the key at its measuring point below which a lead helps it down, and above which the lead holds it back.
 * g·a/x, m/s²; the place of a lead decides it, not its size. `undefined` for a lead at the balance point, which neither helps
 * nor hinders, or behind it, where it never helps.
 * @source BIRKETT-LIST after; a mass falls freely with g, and the key carries it with x/a of its own acceleration
 */
export function leadBreakPointOf({ positionMm }: Pick<Lead, 'positionMm'>, keyFrontMm: Millimetres): MetresPerSecondSquared | undefined {
  const acceleration = (STANDARD_GRAVITY_M_PER_S2 * keyFrontMm) / positionMm;
  return acceleration > 0 && Number.isFinite(acceleration) ? metresPerSecondSquared(acceleration) : undefined;
}

/** What is to be drilled out of the middle of a lead. */
export interface LeadTrim {
  /** How much lighter the front is to become, above nought. */
  readonly frontWeightChangeG: Grams;
  /** Balance point to the middle of the lead, in front of it. */
  readonly positionMm: Millimetres;
  readonly keyWidthMm: Millimetres;
  readonly keyFrontMm: Millimetres;
  readonly leadDensityGPerMm3: GramsPerCubicMillimetre;
}

/**
 * Drill that takes a little front weight off a lead, right through its middle.
 * d = √(4·ΔFW·a/(π·ρ·w·x)), millimetres. Ignores the cone a drill leaves and that lead smears.
 * @source OWN the mass of the lead drilled out
 */
export function trimDrillOf({ frontWeightChangeG, positionMm, keyWidthMm, keyFrontMm, leadDensityGPerMm3 }: LeadTrim): Millimetres {
  return millimetres(Math.sqrt((4 * frontWeightChangeG * keyFrontMm) / (Math.PI * leadDensityGPerMm3 * keyWidthMm * positionMm)));
}

/** Front weight that a lead gives up when it is drilled out with a drill: {@link trimDrillOf} the other way round. @source OWN */
export function trimmedFrontWeightOf(drillMm: Millimetres, { positionMm, keyWidthMm, keyFrontMm, leadDensityGPerMm3 }: Omit<LeadTrim, 'frontWeightChangeG'>): Grams {
  return grams((leadDensityGPerMm3 * cylinderMm3(drillMm, keyWidthMm) * positionMm) / keyFrontMm);
}

const cylinderMm3 = (diameterMm: number, lengthMm: number): number => (Math.PI * diameterMm ** 2 * lengthMm) / 4;
