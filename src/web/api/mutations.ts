import type { Instrument, InstrumentDraft } from '#instrument';
import { noteWritten } from '../undo/undo.ts';
import { call } from './client.ts';
import { queryClient, refreshPiano } from './queries.ts';

/** Takes a piano in. */
export async function addPiano(draft: InstrumentDraft): Promise<Instrument> {
  const instrument = await call('addPiano', { body: draft });
  await queryClient.invalidateQueries({ queryKey: ['pianos'] });
  return instrument;
}

/** Changes what stands on a piano's card. */
export async function changePiano(id: string, change: Partial<InstrumentDraft>): Promise<void> {
  await call('changePiano', { params: { id }, body: change });
  await noteWritten(id, id);
  await refreshPiano(id);
}

/** Opens the next stay of a piano that came back. */
export async function openCycle(id: string): Promise<void> {
  await call('openCycle', { params: { id } });
  await noteWritten(id, id);
  await refreshPiano(id);
}

export async function addDemo(): Promise<void> {
  await call('addDemo', {});
  await queryClient.invalidateQueries();
}

export async function removeDemo(): Promise<number> {
  const { removed } = await call('removeDemo', {});
  queryClient.removeQueries({ queryKey: ['piano'] });
  await queryClient.invalidateQueries();
  return removed;
}
