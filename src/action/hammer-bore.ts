import { type Degrees, type Millimetres, degrees, millimetres } from '#units';

const RADIANS_PER_DEGREE = Math.PI / 180;

/** A hammer of a grand and the string it meets; heights above the key bed. */
export interface BoredHammer {
  readonly stringHeightMm: Millimetres;
  readonly centreHeightMm: Millimetres;
  /** Shank to strike point, along the head. */
  readonly boreMm: Millimetres;
  /** Hammer centre to the middle of the head, along the shank. */
  readonly hammerMm: Millimetres;
  /** How far the head leans out from square to its shank, away from the hammer centre. */
  readonly rakeDeg: Degrees;
}

/** How a hammer meets its string. */
export interface Strike {
  /** Shank above level, over-centre where above nought. */
  readonly shankDeg: Degrees;
  /** How much nearer to the hammer centre the strike point lies than with the shank level. */
  readonly strikeShiftMm: Millimetres;
  /** How far the head stands from square to the string: shank angle less rake. */
  readonly squarenessDeg: Degrees;
}

/**
 * How a hammer stands when it meets a level string.
 * C + L·sin φ + B·cos(φ − r) = S, so φ = asin(h/√((L + B·sin r)² + (B·cos r)²)) − atan2(B·cos r, L + B·sin r), h = S − C.
 * Strike point L·cos φ − B·sin(φ − r) from the hammer centre. The smaller of the two angles that meet the string.
 * @returns `undefined` when the head is too short to reach: see {@link leastBoreOf}.
 * @source OWN
 */
export function strikeOf({ stringHeightMm, centreHeightMm, boreMm, hammerMm, rakeDeg }: BoredHammer): Strike | undefined {
  const { out, up } = headOf(boreMm, hammerMm, rakeDeg);
  const sine = (stringHeightMm - centreHeightMm) / Math.hypot(out, up);
  if (sine > 1) return undefined;
  const shank = Math.asin(sine) - Math.atan2(up, out);
  const strike = out * Math.cos(shank) - up * Math.sin(shank);
  return { shankDeg: degrees(shank / RADIANS_PER_DEGREE), strikeShiftMm: millimetres(out - strike), squarenessDeg: degrees(shank / RADIANS_PER_DEGREE - rakeDeg) };
}

/**
 * Bore at which the shank is level when the hammer meets the string: (S − C)/cos r, mm.
 * @source TECH-LIST-BORE without rake; with rake OWN
 */
export function levelBoreOf({ stringHeightMm, centreHeightMm, rakeDeg }: Omit<BoredHammer, 'boreMm' | 'hammerMm'>): Millimetres {
  return millimetres((stringHeightMm - centreHeightMm) / Math.cos(rakeDeg * RADIANS_PER_DEGREE));
}

/**
 * Shortest bore that reaches the string at all, strike point and hammer centre then straight above each other.
 * B = √(h² − L²·cos² r) − L·sin r with h = S − C, mm; nought or less when the shank alone reaches.
 * @source OWN distance of the strike point from the hammer centre
 */
export function leastBoreOf({ stringHeightMm, centreHeightMm, hammerMm, rakeDeg }: Omit<BoredHammer, 'boreMm'>): Millimetres {
  const rake = rakeDeg * RADIANS_PER_DEGREE;
  const square = (stringHeightMm - centreHeightMm) ** 2 - (hammerMm * Math.cos(rake)) ** 2;
  return millimetres(Math.sqrt(Math.max(0, square)) - hammerMm * Math.sin(rake));
}

/** The strike point seen from the hammer centre, shank level. */
function headOf(boreMm: number, hammerMm: number, rakeDeg: number): { readonly out: number; readonly up: number } {
  const rake = rakeDeg * RADIANS_PER_DEGREE;
  return { out: hammerMm + boreMm * Math.sin(rake), up: boreMm * Math.cos(rake) };
}
