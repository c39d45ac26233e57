import type { TouchAnalysis } from '#action';
import { registerOf, targetOf } from '#action';
import type { Compass, TouchIntent } from '#instrument';
import { medianOf } from '#numerics';

/** What an intent would mean in one register, with the friction measured there. */
export interface Consequence {
  readonly register: 'bass' | 'middle' | 'treble';
  readonly keys: number;
  readonly frictionG: number;
  readonly downWeightG: number;
  readonly upWeightG: number;
}

/**
 * Down and up weight that follow from an intent when friction stays as it is: DW − UW = 2F, DW + UW = 2BW.
 * Median friction by register; registers without a weighed key are left out. For a curve the down weight of the middle key stands.
 */
export function consequencesOf(intent: TouchIntent, analysis: TouchAnalysis, compass: Compass): readonly Consequence[] {
  return (['bass', 'middle', 'treble'] as const).flatMap((register): readonly Consequence[] => {
    const keys = analysis.keys.filter(({ key, frictionG }) => frictionG !== undefined && registerOf(compass, key).name === register);
    const middle = keys[keys.length >> 1];
    if (middle === undefined) return [];
    const frictionG = medianOf(keys.flatMap((key) => key.frictionG ?? []));
    const downWeightG = targetOf(intent, middle.key) + (intent.even === 'balanceWeight' ? frictionG : 0);
    return [{ register, keys: keys.length, frictionG, downWeightG, upWeightG: downWeightG - 2 * frictionG }];
  });
}
