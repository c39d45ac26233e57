import { readTable } from '#files';
import type { Instrument } from '#instrument';
import type { BenchStore } from '#store';
import { demoCare, demoLoggerText, loggerFileOf, loggerPlanOf } from '#workshop';
import { accepted } from './failure.ts';

/** Gives the invented piano a year of invented air, a plan of care and moves; they say so. */
export async function seedCare(store: BenchStore, { id }: Instrument, by: string): Promise<void> {
  const bytes = new TextEncoder().encode(demoLoggerText());
  const file = accepted(loggerFileOf(loggerPlanOf(accepted(await readTable({ bytes })), {}), { fileName: 'logger-invented.csv', remark: 'Invented for demonstration.', leaveOut: false }));
  await store.addLogger(id, bytes, file, by);
  for (const draft of demoCare()) await store.addCare(id, draft, by);
}
