import { type ActionTerms, type ActionTermsDraft, type ScaleTerms, type ScaleTermsDraft, type TouchIntent, type TuningTerms, type TuningTermsDraft, actionTermsSchema, scaleTermsSchema, touchIntentSchema, tuningTermsSchema } from '#instrument';
import { type EventKind, canonicalJson } from '#workshop';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardAt } from './card.ts';

/** Says what is to be even in one cycle, and how even. */
export async function setIntent(bench: Bench, id: string, cycle: number, intent: TouchIntent, by: string): Promise<TouchIntent> {
  const wanted = fitting(touchIntentSchema, intent, 'The touch intent cannot be kept as given.');
  return await setWhole(bench, id, by, { entity: 'intent', kind: 'intent.set', cycle, wanted });
}

/** Says what is known and asked of strings and bearing in one cycle. */
export async function setScale(bench: Bench, id: string, cycle: number, terms: ScaleTermsDraft, by: string): Promise<ScaleTerms> {
  const wanted = fitting(scaleTermsSchema, terms, 'The terms of the scale cannot be kept as given.');
  return await setWhole(bench, id, by, { entity: 'scale', kind: 'scale.set', cycle, wanted });
}

/** Says what is known and asked of the action in one cycle. */
export async function setAction(bench: Bench, id: string, cycle: number, terms: ActionTermsDraft, by: string): Promise<ActionTerms> {
  const wanted = fitting(actionTermsSchema, terms, 'The terms of the action cannot be kept as given.');
  return await setWhole(bench, id, by, { entity: 'action', kind: 'action.set', cycle, wanted });
}

/** Says what is known and asked of the tuning in one cycle. */
export async function setTuning(bench: Bench, id: string, cycle: number, terms: TuningTermsDraft, by: string): Promise<TuningTerms> {
  const wanted = fitting(tuningTermsSchema, terms, 'The terms of the tuning cannot be kept as given.');
  return await setWhole(bench, id, by, { entity: 'tuning', kind: 'tuning.set', cycle, wanted });
}

interface Whole<T> {
  readonly entity: 'intent' | 'scale' | 'action' | 'tuning';
  readonly kind: EventKind;
  readonly cycle: number;
  readonly wanted: T;
}

/** Sets the one card of its kind that a cycle has, as one event; the same again is none. */
async function setWhole<T>(bench: Bench, id: string, by: string, { entity, kind, cycle, wanted }: Whole<T>): Promise<T> {
  return await writeAt(bench, id, by, async (sight) => {
    checkCycle(sight, cycle);
    const place = `c${String(cycle)}`;
    const before = (await cardAt<T>(sight.tx, sight.chain, entity, place)) ?? null;
    const same = before !== null && canonicalJson(before) === canonicalJson(wanted);
    return { kind, changes: same ? [] : [{ entity, place, before, after: wanted }], rests: [cycleAspect(cycle, id)], answer: () => wanted };
  });
}
