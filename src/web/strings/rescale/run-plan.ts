import type { KeyNumber } from '#instrument';
import type { Trial } from '../trial.ts';
import { trialOf } from './plan.ts';
import type { RescaleRun } from './use-rescale.ts';

/** The sizes a run chose; none where it was refused. */
export function planOfRun({ problem, result }: RescaleRun, lockedKeys: readonly KeyNumber[], locale: string): Trial | undefined {
  return result.ok ? trialOf(problem, result.value, lockedKeys, locale) : undefined;
}
