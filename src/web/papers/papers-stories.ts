import { shippedRules } from '#law';
import type { Say } from '#text';
import { type JudgedMaterial, type JudgedShipment, type PaperMaterial, ivoryInputOf, ivoryMassesOf } from '#workshop';
import type { FigureStory } from '../figure/figure-store.ts';

const FROM_RECORD = { how: 'paperRecord' } as const;

/** How the mass of measured pieces was worked out; nothing where it was stated. */
export function massStory(record: PaperMaterial, say: Say): FigureStory | undefined {
  const input = record.massG === null ? ivoryInputOf(record) : undefined;
  if (input === undefined) return undefined;
  return { title: `${say('papers.column.mass')}, ${record.where}`, operation: 'ivory-mass', input: { ...input }, output: 'massG', origins: { pieces: FROM_RECORD } };
}

/** How all ivory together was worked out; nothing where a piece of it has no mass. */
export function allIvoryStory(ivories: readonly PaperMaterial[], say: Say): FigureStory | undefined {
  const masses = ivoryMassesOf(ivories);
  if (masses === undefined) return undefined;
  return { title: say('papers.mass.allIvory'), operation: 'ivory-total', output: 'massG', input: { masses: masses.map(({ massG, uncertaintyG }) => ({ massG, ...(uncertaintyG === undefined ? {} : { massUncertaintyG: uncertaintyG }) })) }, origins: { masses: FROM_RECORD } };
}

/** How one material of a shipment was held against the rules of its day; those that come with the program need no telling. */
export function outcomeStory({ record, question }: JudgedMaterial, { issued, rules }: JudgedShipment, say: Say): FigureStory {
  const isShipped = issued === shippedRules.issued && rules.length === shippedRules.rules.length;
  const what = record?.where ?? say('papers.shipment.crate');
  return { title: `${say('papers.outcome')}, ${what}`, operation: 'papers-needed', input: { ...question, ...(isShipped ? {} : { rules }) }, output: 'outcome', origins: { facts: FROM_RECORD } };
}
