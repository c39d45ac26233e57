import { type TouchIntent, touchIntentSchema } from '#instrument';
import { canonicalJson } from '#workshop';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardAt } from './card.ts';

/** Says what is to be even in one cycle, and how even. */
export async function setIntent(bench: Bench, id: string, cycle: number, intent: TouchIntent, by: string): Promise<TouchIntent> {
  const wanted = fitting(touchIntentSchema, intent, 'The touch intent cannot be kept as given.');
  return await writeAt(bench, id, by, async (sight) => {
    checkCycle(sight, cycle);
    const place = `c${String(cycle)}`;
    const before = (await cardAt<TouchIntent>(sight.tx, sight.chain, 'intent', place)) ?? null;
    const same = before !== null && canonicalJson(before) === canonicalJson(wanted);
    return {
      kind: 'intent.set',
      changes: same ? [] : [{ entity: 'intent', place, before, after: wanted }],
      rests: [cycleAspect(cycle, id)],
      answer: () => wanted,
    };
  });
}
