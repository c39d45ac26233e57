import { type Person, personDraftSchema } from '#workshop';
import { and, asc, eq } from 'drizzle-orm';
import { StoreFailure } from './bench-store.ts';
import { fitting } from './check.ts';
import type { Bench } from './database.ts';
import { person } from './schema.ts';

const REFUSED = 'The person cannot be named so.';

/** Names a new person, behind a reference of its own. */
export async function addPerson(bench: Bench, workshop: string, given: string): Promise<Person> {
  const name = await freeName(bench, workshop, given);
  const reference = bench.newId();
  await bench.db.insert(person).values({ workshop, reference, name });
  return { reference, name };
}

/** Says who is behind a reference, or forgets it: the log keeps the reference alone, so no chain breaks. */
export async function namePerson(bench: Bench, workshop: string, reference: string, given: string | null): Promise<void> {
  const { db } = bench;
  if (given === null) {
    await db.delete(person).where(and(eq(person.workshop, workshop), eq(person.reference, reference)));
    return;
  }
  const name = await freeName(bench, workshop, given, reference);
  await db.insert(person).values({ workshop, reference, name }).onConflictDoUpdate({ target: [person.workshop, person.reference], set: { name } });
}

/** Everybody named in a workshop. */
export async function listPeople({ db }: Bench, workshop: string): Promise<readonly Person[]> {
  return await db.select({ reference: person.reference, name: person.name }).from(person).where(eq(person.workshop, workshop)).orderBy(asc(person.name));
}

/** A name as it is kept, refused where somebody else bears it. */
async function freeName(bench: Bench, workshop: string, given: string, reference?: string): Promise<string> {
  const { name } = fitting(personDraftSchema, { name: given }, REFUSED);
  const others = (await listPeople(bench, workshop)).filter((other) => other.reference !== reference && other.name === name);
  if (others.length > 0) throw new StoreFailure('conflict', REFUSED, [{ code: 'duplicate', path: 'name', given: name, allowed: 'a name nobody else at the bench bears' }]);
  return name;
}
