import type { ObservationDraft } from '#instrument';
import type { DemoStep } from './demo-step.ts';

/** What was seen of the invented grand on the walk around it, beside its belly. @source OWN */
const SEEN: readonly Omit<ObservationDraft, 'cycle' | 'state'>[] = [
  { part: 'case', fault: 'loose', severity: 'slight', remark: 'Lid hinge: two screws turn in their holes.' },
  { part: 'finish', fault: 'stained', severity: 'slight', lengthMm: 90, remark: 'White ring on the lid, from a glass or a vase.' },
  { part: 'strings', fault: 'rust', severity: 'moderate', fromKey: 60, toKey: 88, remark: 'Light rust in the two upper sections, none at the pressure bar.' },
  { part: 'dampers', fault: 'worn', severity: 'moderate', fromKey: 1, toKey: 26, remark: 'Felt hard, wedges marked by the bass strings.' },
  { part: 'actionParts', fault: 'loose', severity: 'moderate', fromKey: 71, toKey: 77, remark: 'Key bushings worn, keys knock sideways.' },
  { part: 'keys', fault: 'swollen', severity: 'moderate', fromKey: 9, toKey: 9, remark: 'White powder on the middle lead. Not touched without gloves.' },
  { part: 'keyTops', fault: 'sound' },
  { part: 'pedals', fault: 'sound' },
  { part: 'castors', fault: 'broken', severity: 'serious', remark: 'Socket of the tail leg cracked: the leg is not to be leaned on before it is put right.' },
  { part: 'bench', fault: 'missing', remark: 'Came without a bench.' },
];

/** The survey of the invented grand as steps of the demo. */
export function demoSurvey(): readonly DemoStep[] {
  return SEEN.map((seen) => ({ kind: 'observation', draft: { cycle: 1, state: 'found', ...seen } }));
}
