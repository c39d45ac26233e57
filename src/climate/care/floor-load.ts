import { STANDARD_GRAVITY_M_PER_S2 } from '#units';

/** What stands on a floor, and on what. */
export interface Standing {
  readonly weightKg: number;
  /** Players, a bench, and what else stands within the piano’s outline. */
  readonly peopleKg: number;
  /** Legs, each on one castor or cup. */
  readonly legs: number;
  /** Share of the piano that the heaviest leg carries; per cent. */
  readonly heaviestPct: number;
  /** Floor that is loaded: the piano’s outline with the player’s place; square metres. */
  readonly areaM2: number;
  /** Across the round foot that touches the floor: a cup, or the line of a bare wheel taken as a spot; millimetres. */
  readonly footMm: number;
}

/** Loads on a floor: newtons, kilopascals, megapascals. */
export interface FloorLoad {
  readonly meanLegN: number;
  readonly heaviestLegN: number;
  /** Spread over the area: 1 kPa is 1 kN/m². */
  readonly spreadKPa: number;
  /** Under the foot of the heaviest leg. */
  readonly footMPa: number;
}

/** Loads at rest: F = m·g/n and share·m·g; p = (m + people)·g/A; under the foot F/(πd²/4). Ignores carrying over steps and what moves. @source OWN */
export function floorLoadOf({ weightKg, peopleKg, legs, heaviestPct, areaM2, footMm }: Standing): FloorLoad {
  const weightN = weightKg * STANDARD_GRAVITY_M_PER_S2;
  const heaviestLegN = (weightN * heaviestPct) / 100;
  return {
    meanLegN: weightN / legs, heaviestLegN,
    spreadKPa: ((weightKg + peopleKg) * STANDARD_GRAVITY_M_PER_S2) / areaM2 / 1000,
    footMPa: heaviestLegN / ((Math.PI * footMm ** 2) / 4),
  };
}
