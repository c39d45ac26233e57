import type { Say } from '#text';
import type { PaperReason } from './papers-needed.ts';
import { factsMissing, speciesMissing } from './papers-together.ts';

/** What is still to be found out, in words: species first, then facts. */
export function toFindOf(reasons: readonly PaperReason[], say: Say): readonly string[] {
  return [...speciesMissing(reasons).map((material) => say('papers.shipment.species', { material: say(`papers.material.${material}`) })), ...factsMissing(reasons).map((fact) => say(`field.${fact}`))];
}
