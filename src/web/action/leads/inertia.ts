import { type Lead, leadEffectOf } from '#action';
import { meanOf } from '#numerics';
import type { LeadedKey } from '#workshop';
import type { LeadAnswer } from './leads-jobs.ts';

/** What a set of leads does to the inertia of one key, beside its hammer. */
interface InertiaChange {
  readonly beforeG: number;
  readonly afterG: number;
  /** The hammer as it works at the key front, and what at the hammer does the same; absent where hammer or ratio is not known. */
  readonly hammerG?: number;
  readonly atHammerG?: number;
  /** Key, wippen and hammer together. */
  readonly wholeBeforeG?: number;
  readonly wholeAfterG?: number;
}

/** Inertia of one key before and after. Where its inertia is not known the hammer counts as SW·R², R by distance: all its weight at the hammer's arm. @source OWN */
export function inertiaChangeOf({ question, above: { hammerWeightG }, distanceRatio, mass }: LeadedKey, { leads }: LeadAnswer): InertiaChange {
  const massOf = (set: readonly Lead[]): number => leadEffectOf({ ...question, leads: set }).effectiveMassG;
  const [beforeG, afterG] = [massOf(question.existingHoles), massOf(leads)];
  return {
    beforeG, afterG,
    ...(hammerWeightG === undefined || distanceRatio === undefined ? {} : { hammerG: mass?.hammerG ?? hammerWeightG * distanceRatio ** 2, atHammerG: (afterG - beforeG) / distanceRatio ** 2 }),
    ...(mass === undefined ? {} : { wholeBeforeG: mass.effectiveMassG, wholeAfterG: mass.effectiveMassG + afterG - beforeG }),
  };
}

/** The same over a keyboard: means of the keys. */
export function meanInertiaOf(changes: readonly InertiaChange[]): InertiaChange {
  const mean = (name: keyof InertiaChange): number | undefined => {
    const known = changes.flatMap((change) => change[name] ?? []);
    return known.length === 0 ? undefined : meanOf(known);
  };
  const [hammerG, atHammerG] = [mean('hammerG'), mean('atHammerG')];
  return { beforeG: mean('beforeG') ?? 0, afterG: mean('afterG') ?? 0, ...(hammerG === undefined || atHammerG === undefined ? {} : { hammerG, atHammerG }) };
}
