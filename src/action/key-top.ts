import { type Grams, type GramsPerCubicMillimetre, type Millimetres, type SquareMillimetres, grams, millimetres } from '#units';

/** An old key top that goes and a new one that comes. */
export interface KeyTopChange {
  readonly oldThicknessMm: Millimetres;
  readonly oldDensityGPerMm3: GramsPerCubicMillimetre;
  readonly newThicknessMm: Millimetres;
  readonly newDensityGPerMm3: GramsPerCubicMillimetre;
  readonly areaMm2: SquareMillimetres;
  /** Front edge to the centroid of the top. */
  readonly centroidMm: Millimetres;
  /** Balance point to the front edge, and to the measuring point. */
  readonly keyEdgeMm: Millimetres;
  readonly keyFrontMm: Millimetres;
  /** Wood planed off before the new top is glued on. */
  readonly planedMm: Millimetres;
  readonly woodDensityGPerMm3: GramsPerCubicMillimetre;
}

/** What new key tops do to a key. */
export interface KeyTopEffect {
  readonly massChangeG: Grams;
  readonly frontWeightChangeG: Grams;
  /** How much higher the top of the key stands. */
  readonly levelChangeMm: Millimetres;
}

/**
 * What new key tops add to mass, front weight and level.
 * Δm = A·(t_n·ρ_n − t_o·ρ_o − p·ρ_wood), ΔFW = Δm·(a_edge − c)/a, Δlevel = t_n − t_o − p; grams, millimetres.
 * Ignores glue, and fronts where they are separate.
 * @source OWN moment of the change about the balance point
 */
export function keyTopEffectOf(top: KeyTopChange): KeyTopEffect {
  const massChange = top.areaMm2 * (top.newThicknessMm * top.newDensityGPerMm3 - top.oldThicknessMm * top.oldDensityGPerMm3 - top.planedMm * top.woodDensityGPerMm3);
  return {
    massChangeG: grams(massChange),
    frontWeightChangeG: grams((massChange * (top.keyEdgeMm - top.centroidMm)) / top.keyFrontMm),
    levelChangeMm: millimetres(top.newThicknessMm - top.oldThicknessMm - top.planedMm),
  };
}

/** A key on its three felts, levelled at the balance. */
export interface KeyLevelling {
  /** Thickness taken out under the balance point; below nought put in. */
  readonly balancePunchingMm: Millimetres;
  readonly keyEdgeMm: Millimetres;
  /** Balance point back to where the key rests. */
  readonly backRestMm: Millimetres;
  /** Balance point to the front pin, where the key lands. */
  readonly frontPinMm: Millimetres;
}

/** What levelling does in front. */
export interface KeyLevelEffect {
  readonly levelChangeMm: Millimetres;
  /** Of the front edge, as long as the front punching stays. */
  readonly dipChangeMm: Millimetres;
  /** Thickness to put in at the front pin for the dip as before; below nought to take out. */
  readonly frontPunchingMm: Millimetres;
}

/**
 * What punchings taken out at the balance do to level and dip: the key turns about its back rest.
 * Δlevel = −p·(1 + a_edge/c); clearance over the front punching −p·(1 + f/c), which takes a_edge/f as much off the dip.
 * c back rest, f front pin, from the balance point, mm.
 * @source OWN similar triangles; small angles
 */
export function keyLevelEffectOf({ balancePunchingMm: out, keyEdgeMm, backRestMm, frontPinMm }: KeyLevelling): KeyLevelEffect {
  const fall = 0 - out;
  const clearance = fall * (1 + frontPinMm / backRestMm);
  return {
    levelChangeMm: millimetres(fall * (1 + keyEdgeMm / backRestMm)),
    dipChangeMm: millimetres((clearance * keyEdgeMm) / frontPinMm),
    frontPunchingMm: millimetres(clearance),
  };
}
