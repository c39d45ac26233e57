import type { Issue } from '#result';
import { bookOf } from '#workshop';
import type { Sight } from '../write.ts';
import { cardAt } from './card.ts';

/** What is wrong with a person named at a piano: nobody of that id is in the book, or they asked to be forgotten and nothing more is written under their name. */
export async function personIssues({ tx, chain }: Pick<Sight, 'tx' | 'chain'>, path: string, person: string | null): Promise<readonly Issue[]> {
  if (person === null) return [];
  const body = await cardAt<{ readonly kind: string; readonly details: string | null }>(tx, { ...chain, instrument: bookOf(chain.workshop) }, 'shop', person);
  if (body?.kind !== 'contact') return [{ code: 'unknown', path, given: person, allowed: 'the id of one in the book', params: { reason: 'person' } }];
  return body.details === null ? [{ code: 'conflict', path, given: person, allowed: 'a person who was not forgotten', params: { reason: 'erased' } }] : [];
}
