import { type Grams, grams } from '#units';
import { type PlanFigures, planFiguresOf } from './figures.ts';
import type { PlanKey } from './plan-key.ts';
import type { PlanShifts } from './shifts.ts';

/** What stands against a planned key; words under `plan.flag.<name>`. */
export const planFlags = ['belowReach', 'aboveReach', 'aboveLimit', 'upWeightLow', 'noReturn', 'noStrike'] as const;
export type PlanFlagName = (typeof planFlags)[number];

/** A planned key that cannot be as asked, and by how much. */
export interface PlanFlag {
  readonly name: PlanFlagName;
  /** Grams beyond the bound, above nought; nought where no grams can say it. */
  readonly byG: Grams;
}

export interface PlannedKey {
  readonly plan: PlanKey;
  readonly figures: PlanFigures;
  /** Needed front weight less the one that stands once new key tops are on; absent where none was weighed. */
  readonly frontWeightChangeG?: Grams;
  readonly flags: readonly PlanFlag[];
}

/**
 * The touch of every key as planned: what it will show, the front weight that takes, and where that cannot be.
 * Flags compare with the leads allowed, with the greatest front weight stated, and with the least up weight asked.
 * @source OWN
 */
export function planTouch(keys: readonly PlanKey[], shifts: PlanShifts): readonly PlannedKey[] {
  return keys.map((plan) => {
    const figures = planFiguresOf(plan, shifts);
    const { standingFrontG } = figures;
    return { plan, figures, ...(standingFrontG === undefined ? {} : { frontWeightChangeG: grams(figures.frontWeightG - standingFrontG) }), flags: flagsOf(plan, figures) };
  });
}

function flagsOf({ reach, mostFrontWeightG, asked }: PlanKey, { frontWeightG, upWeightG, top, strike }: PlanFigures): readonly PlanFlag[] {
  const bare = top?.frontWeightChangeG ?? 0;
  const over = (name: PlanFlagName, byG: number | undefined): readonly PlanFlag[] => (byG !== undefined && byG > 1e-9 ? [{ name, byG: grams(byG) }] : []);
  return [
    ...over('belowReach', reach && reach.leastG + bare - frontWeightG),
    ...over('aboveReach', reach && frontWeightG - reach.mostG - bare),
    ...over('aboveLimit', mostFrontWeightG && frontWeightG - mostFrontWeightG),
    ...(upWeightG <= 0 ? over('noReturn', Math.max(0 - upWeightG, 2e-9)) : over('upWeightLow', asked.upWeightMinG - upWeightG)),
    ...(strike === null ? [{ name: 'noStrike' as const, byG: grams(0) }] : []),
  ];
}
