/** How the hammers are used and what the shop reckons with. */
export interface HammerWear {
  readonly hoursPerWeek: number;
  readonly ageYears: number;
  /** Reshaped so far. */
  readonly reshapeCount: number;
  /** Hours from one reshaping to the next. */
  readonly reshapeHours: number;
  /** After so many reshapings the hammers are replaced when the next is due. */
  readonly mostReshapes: number;
}

/** What is left of a set of hammers; nought where it is overdue. */
export interface HammerLife {
  readonly hoursPlayed: number;
  /** Until reshaping is due, were each done on time. */
  readonly toReshapeHours: number;
  readonly leftHours: number;
  /** Absent where nobody plays, or next to never: then hours do not turn into years. */
  readonly leftYears?: number;
  readonly reshapesLeft: number;
}

const WEEKS_A_YEAR = 365.25 / 7;

/** Hours a set of hammers goes between reshapings, and how often it can be reshaped. @source PRACTICE */
export const usualWear = { reshapeHours: [1500, 2500], mostReshapes: [2, 3] } as const;

/** Years to reshaping and to replacement by use. @source PRACTICE */
export const usualYears = {
  home: { reshape: [10, 15], replace: [20, 30] },
  teaching: { replace: [7, 10] },
  concert: { replace: [5, 5] },
} as const satisfies Readonly<Record<string, { readonly reshape?: readonly [number, number]; readonly replace: readonly [number, number] }>>;

/**
 * What is left of a set of hammers by hours and by reshapings, whichever ends first.
 * played = hours a week · weeks · years; life = (most reshapes + 1) · hours between; by reshapings (most − so far + 1) · hours between.
 * A reckoning with the shop's own figures, not a forecast: felt, voicing and playing differ.
 * @source PRACTICE figures, OWN reckoning
 */
export function hammerLifeOf({ hoursPerWeek, ageYears, reshapeCount, reshapeHours, mostReshapes }: HammerWear): HammerLife {
  const hoursPlayed = hoursPerWeek * WEEKS_A_YEAR * ageYears;
  const byHours = (mostReshapes + 1) * reshapeHours - hoursPlayed;
  const reshapesLeft = Math.max(0, mostReshapes - reshapeCount);
  const byReshapes = (mostReshapes - reshapeCount + 1) * reshapeHours;
  const leftHours = Math.max(0, Math.min(byHours, byReshapes));
  const leftYears = leftHours / (hoursPerWeek * WEEKS_A_YEAR);
  return {
    hoursPlayed, leftHours, reshapesLeft,
    toReshapeHours: Math.max(0, (reshapeCount + 1) * reshapeHours - hoursPlayed),
    ...(hoursPerWeek > 0 && Number.isFinite(leftYears) ? { leftYears } : {}),
  };
}
