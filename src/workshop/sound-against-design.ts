import type { KeyNumber } from '#instrument';
import { medianOf } from '#numerics';

/** Inharmonicity of a note as heard and as worked out from its string. */
export interface StiffnessPair {
  readonly key: KeyNumber;
  readonly heardB: number;
  readonly computedB: number;
  /** Early decay, where it was measured: a string gone dead dies away sooner than its neighbours. */
  readonly decayS?: number | undefined;
}

/** A note that sounds stiffer or softer than its string should be: what to look at, never what is so. */
export interface StiffnessFinding {
  readonly key: KeyNumber;
  readonly side: 'stiffer' | 'softer';
  /** `note`: unlike its neighbours; `neighbours`: they all are so, and what they share is to be looked at. */
  readonly scope: 'note' | 'neighbours';
  readonly ratio: number;
  /** True where it also dies away in less than half the time of its neighbours. */
  readonly isShort: boolean;
}

/** Heard over computed, either way, from which a note is to be looked at. One wire size off is 5 %, a length entry 1 % off is 4 %. @source PRACTICE */
const FROM_RATIO = 1.25;
/** Keys on each side that count as neighbours. */
const REACH = 6;
const LEAST_NEIGHBOURS = 3;
const SHORT_SHARE = 0.5;

/**
 * Lays the inharmonicity heard beside the one computed from the strings. A note is named where its ratio stands off the median of its
 * neighbours (six keys each way) by a quarter; where that median itself stands off 1 by a quarter, its notes are named together.
 * @source PRACTICE for the quarter; B ∝ d⁴/(T·L²), so with the pitch kept B ∝ d²/L⁴
 */
export function stiffnessFindings(pairs: readonly StiffnessPair[]): readonly StiffnessFinding[] {
  return pairs.flatMap((pair): readonly StiffnessFinding[] => {
    const near = pairs.filter(({ key }) => key !== pair.key && Math.abs(key - pair.key) <= REACH);
    const ratio = pair.heardB / pair.computedB;
    const usual = near.length >= LEAST_NEIGHBOURS ? medianOf(near.map(({ heardB, computedB }) => heardB / computedB)) : 1;
    const isShort = isDying(pair, near);
    if (isOff(ratio / usual)) return [{ key: pair.key, side: ratio > usual ? 'stiffer' : 'softer', scope: 'note', ratio, isShort }];
    if (isOff(usual) && isOff(ratio)) return [{ key: pair.key, side: ratio > 1 ? 'stiffer' : 'softer', scope: 'neighbours', ratio, isShort }];
    return [];
  });
}

const isOff = (ratio: number): boolean => ratio > FROM_RATIO || ratio < 1 / FROM_RATIO;

function isDying({ decayS }: StiffnessPair, near: readonly StiffnessPair[]): boolean {
  const others = near.flatMap((one) => one.decayS ?? []);
  return decayS !== undefined && others.length >= LEAST_NEIGHBOURS && decayS < SHORT_SHARE * medianOf(others);
}
