import { and, asc, eq } from 'drizzle-orm';
import type { Person } from './bench-store.ts';
import type { Bench } from './database.ts';
import { person } from './schema.ts';

/** Says who is behind a reference, or forgets it: the log keeps the reference alone, so no chain breaks. */
export async function namePerson({ db }: Bench, workshop: string, reference: string, name: string | null): Promise<void> {
  if (name === null) await db.delete(person).where(and(eq(person.workshop, workshop), eq(person.reference, reference)));
  else await db.insert(person).values({ workshop, reference, name }).onConflictDoUpdate({ target: [person.workshop, person.reference], set: { name } });
}

/** Everybody named in a workshop. */
export async function listPeople({ db }: Bench, workshop: string): Promise<readonly Person[]> {
  return await db.select({ reference: person.reference, name: person.name }).from(person).where(eq(person.workshop, workshop)).orderBy(asc(person.name));
}
