import { buffer } from 'node:stream/consumers';
import { type PlannedFile, planFile } from '#files';
import { compassOf } from '#instrument';
import type { BenchStore } from '#store';
import { type ColumnMapping, type ImportPreview, batchOf, previewOf } from '#workshop';
import type { CommandModule } from 'yargs';
import { refused } from '../failure.ts';
import { type FiguresArguments, cycleOf, figuresOptions, localeOption } from '../file-options.ts';
import { locale as shellLocale, say } from '../language.ts';
import { note, print, printJson } from '../output.ts';
import { readNamed } from '../named-file.ts';
import { refuseRepeated } from '../refuse-repeated.ts';
import { dataOption, findInstrument, instrumentPositional, whoOption, withStore, writerOf } from '../with-store.ts';

interface ImportArguments extends FiguresArguments {
  readonly instrument: string;
  readonly file: string;
  readonly session?: string;
  readonly map: readonly string[];
  readonly sheet?: string;
  readonly dryRun: boolean;
  readonly skipRefused: boolean;
  readonly who?: string;
  readonly data?: string;
  readonly json: boolean;
}

/** `import INSTRUMENT FILE --state found`: a table becomes readings, as one event, all of it or nothing. */
export const importTable: CommandModule<object, ImportArguments> = {
  command: 'import <instrument> <file>',
  describe: say('cli.import'),
  builder: (yargs) =>
    yargs
      .parserConfiguration({ 'duplicate-arguments-array': true, 'greedy-arrays': false, 'parse-numbers': false, 'parse-positional-numbers': false, 'camel-case-expansion': true })
      .positional('instrument', instrumentPositional)
      .positional('file', { type: 'string', demandOption: true, describe: say('cli.import.file') })
      .options(figuresOptions)
      .option('session', { type: 'string', requiresArg: true, describe: say('cli.import.session') })
      .option('map', { type: 'string', array: true, default: [], requiresArg: true, describe: say('cli.import.map') })
      .option('sheet', { type: 'string', requiresArg: true, describe: say('cli.import.sheet') })
      .option('dry-run', { type: 'boolean', default: false, describe: say('cli.import.dryRun') })
      .option('skip-refused', { type: 'boolean', default: false, describe: say('cli.import.skipRefused') })
      .options(whoOption)
      .options(dataOption)
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }) as never,
  handler: async (given) => {
    refuseRepeated(given, ['map']);
    const bytes = await bytesOf(given.file);
    const reading = { bytes, mapping: mappingOf(given.map), locale: localeOption(given.locale) ?? shellLocale };
    await withStore(given, (store) => importInto(store, reading, given));
  },
};

/** What a file holds, or standard input for `-`. */
async function bytesOf(file: string): Promise<Uint8Array> {
  if (file === '-') return new Uint8Array(await buffer(process.stdin));
  const read = await readNamed(file);
  if (!read.ok) throw refused(read.issues);
  return read.value;
}

/** `HEADER=content`, the last equals sign parting them; nothing behind it leaves the column out. */
function mappingOf(pairs: readonly string[]): ColumnMapping {
  return Object.fromEntries(pairs.map((pair): [string, string | null] => {
    const at = pair.lastIndexOf('=');
    if (at < 1) throw refused([{ code: 'format', path: '--map', given: pair, allowed: 'COLUMN=quantity, such as C=upWeightG' }]);
    return [pair.slice(0, at), pair.slice(at + 1) === '' ? null : pair.slice(at + 1)];
  }));
}

interface FileReading {
  readonly bytes: Uint8Array;
  readonly mapping: ColumnMapping;
  readonly locale: string;
}

async function importInto(store: BenchStore, { bytes, mapping, locale }: FileReading, given: ImportArguments): Promise<void> {
  const instrument = await findInstrument(store, given.instrument);
  const { state } = given;
  const cycle = cycleOf(given.cycle, instrument.cycle);
  const sessionId = await sessionOf(store, instrument.id, cycle, given);
  const read = await planFile({ bytes, ...(given.sheet === undefined ? {} : { sheet: given.sheet }) }, { mapping, compass: compassOf(instrument), standing: await store.listReadings(instrument.id, cycle), cycle, state, locale });
  if (!read.ok) throw refused(read.issues);
  const { plan, table } = read.value;
  const preview = previewOf(plan, table, shellLocale);
  tellColumns(preview);
  if (plan.issues.length > 0) throw refused(plan.issues, say('cli.import.nothing'));
  if (given.dryRun) return tellOutcome(preview, null, given);
  if (plan.counts.refused > 0 && !given.skipRefused) throw refusedRows(read.value);
  const batch = batchOf(plan, { cycle, state, sessionId, locale });
  const seq = batch === null ? null : (await store.writeReadings(instrument.id, batch, await writerOf(store, given.who))).seq;
  await tellOutcome(preview, seq, given);
}

/** The session a person names, of this stay and state; null for none. */
async function sessionOf(store: BenchStore, id: string, cycle: number, { session, state }: ImportArguments): Promise<string | null> {
  if (session === undefined) return null;
  const known = (await store.getPiano(id)).sessions.filter((one) => one.cycle === cycle && one.state === state).map((one) => one.id);
  if (known.includes(session)) return session;
  const choices = known.join(', ') || '—';
  throw refused([{ code: 'choice', path: '--session', given: session, allowed: `a weighing session of this stay and state: ${choices}`, params: { choices } }]);
}

/** Every refused row with its cell, and that nothing was written. */
function refusedRows({ plan }: PlannedFile): Error {
  return refused(plan.rows.flatMap(({ issues }) => issues), say('cli.import.refused', { count: plan.counts.refused }));
}

function tellColumns({ columns, sheet }: ImportPreview): void {
  if (sheet !== null) note(say('cli.import.readSheet', { sheet }));
  for (const { letter, header, mapsTo, reason } of columns) {
    if (mapsTo !== null) note(say('cli.import.column', { letter, header, content: mapsTo }));
    else if (reason !== null) note(say('cli.import.columnOut', { letter, header, reason }));
  }
}

async function tellOutcome(preview: ImportPreview, seq: number | null, { json, dryRun }: ImportArguments): Promise<void> {
  if (json) return printJson({ dryRun, seq, ...preview });
  for (const { row, problems } of preview.rows) for (const problem of problems) note(say('cli.import.row', { row, problem }));
  await print(`${say('cli.import.counts', { ...preview.counts, done: dryRun ? 'dry' : seq === null ? 'nothing' : 'written' })}\n`);
}
