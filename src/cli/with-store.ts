import { randomUUID } from 'node:crypto';
import type { Instrument } from '#instrument';
import { problemOf } from '#result';
import type { BenchStore, StoreFailure } from '#store';
import { type StorePlace, storePlaceOf } from './data-folder.ts';
import { CliFailure, refused } from './failure.ts';
import { PROGRAM, say } from './language.ts';
import { note } from './output.ts';

/** The option of every command that opens the store. */
export const dataOption = { data: { type: 'string', requiresArg: true, describe: say('cli.data') } } as const;

/** The argument that names a piano. */
export const instrumentPositional = { type: 'string', demandOption: true, describe: say('cli.instrument') } as const;

/** The option of every command that writes: who is at the bench. */
export const whoOption = { who: { type: 'string', requiresArg: true, describe: say('cli.who') } } as const;

/** What stands in the log where nobody is named. */
const NOBODY = 'bench';

/** Opens the store where it is kept, with the clock and the names of this machine. */
export async function openStoreAt(place: StorePlace): Promise<BenchStore> {
  const { openStore } = await import('#store');
  return openStore({ ...place, clock: () => new Date(), newId: randomUUID });
}

/** Opens the store, works on it, and closes it whatever happens; its failures come out with their exit codes. */
export async function withStore<T>({ data }: { readonly data?: string | undefined }, work: (store: BenchStore) => Promise<T>): Promise<T> {
  const place = storePlaceOf(data);
  try {
    const store = await openStoreAt(place);
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  } catch (error) {
    throw failureOfStore(error, place);
  }
}

/** By its name, so that the store need not be loaded to ask. */
export function isStoreFailure(error: unknown): error is Error & Pick<StoreFailure, 'reason' | 'issues'> {
  return error instanceof Error && error.name === 'StoreFailure';
}

/** The one place where the store's failures become exit codes; anything else is passed on. */
export function failureOfStore(error: unknown, place: StorePlace): unknown {
  if (!isStoreFailure(error)) return error;
  const { reason, issues, message } = error;
  if (reason === 'inUse') return new CliFailure(1, problemOf('inUse', [], message), [say('cli.store.inUse', { place: 'dataDir' in place ? place.dataDir : '' })]);
  if (reason === 'unavailable') return new CliFailure(1, problemOf('unavailable', [], message), [message]);
  return refused(issues, message, reason);
}

/** The piano a person names: by its id, by the beginning of its id when no other begins so, or by its exact name. */
export async function findInstrument(store: BenchStore, named: string): Promise<Instrument> {
  const instruments = (await store.listPianos()).map(({ instrument }) => instrument);
  const exact = instruments.find(({ id }) => id === named);
  const fitting = exact === undefined ? instruments.filter(({ id, name }) => name === named || (named.length >= 4 && id.startsWith(named))) : [exact];
  const [found] = fitting;
  if (found !== undefined && fitting.length === 1) return found;
  if (found === undefined) throw refused([], say('cli.instrument.unknown', { name: named, program: PROGRAM }), 'notFound');
  throw refused([], say('cli.instrument.several', { name: named, names: fitting.map(({ id, name }) => `${name} (${id})`).join(', ') }));
}

/** The reference written for the person named; a name not known yet is added, and said so. */
export async function writerOf(store: BenchStore, who: string | undefined): Promise<string> {
  if (who === undefined) return NOBODY;
  const { SHOP } = await import('#store');
  const known = (await store.listPeople(SHOP)).find(({ name }) => name === who.trim());
  if (known !== undefined) return known.reference;
  const added = await store.addPerson(SHOP, who);
  note(say('cli.who.added', { name: added.name }));
  return added.reference;
}
