import { basename } from 'node:path';
import { type Instrument, type KeyNumber, type Recording, compassOf, keyCountOf, noteNameOf, recordedContents } from '#instrument';
import { isAac } from '#recording';
import { type Issue, type Result, ok, problemOf, refuse, under } from '#result';
import type { BenchStore } from '#store';
import { type Analysis, analysisOf, heardIn, keyInName } from '#workshop';
import type { CommandModule } from 'yargs';
import { refused } from '../failure.ts';
import { type FiguresArguments, cycleOf, figuresOptions } from '../file-options.ts';
import { say } from '../language.ts';
import { type Listened, listenTable } from '../listen-table.ts';
import { note, print, printJson } from '../output.ts';
import { refuseRepeated } from '../refuse-repeated.ts';
import { convertedSound, namedSound } from '../sound-file.ts';
import { dataOption, findInstrument, instrumentPositional, isStoreFailure, whoOption, withStore, writerOf } from '../with-store.ts';
import { workedOff } from '../worked-off.ts';

interface RecordArguments extends Pick<FiguresArguments, 'state' | 'cycle'> {
  readonly instrument: string;
  readonly files: readonly string[];
  readonly contents: Recording['contents'];
  readonly key?: string;
  readonly keysFromNames: boolean;
  readonly place: string;
  readonly device: string;
  readonly remark: string;
  readonly later: boolean;
  readonly who?: string;
  readonly data?: string;
  readonly json: boolean;
}

/** A file with the recording it was kept as, or with why it was not. */
type Kept = { readonly file: string; readonly recording: Recording } | { readonly file: string; readonly issues: readonly Issue[] };

/** `record INSTRUMENT FILE… --state found`: keeps recordings whole with a piano, and says which keys are heard in them. */
export const record: CommandModule<object, RecordArguments> = {
  command: 'record <instrument> <files..>',
  describe: say('cli.record'),
  builder: (yargs) =>
    yargs
      .parserConfiguration({ 'duplicate-arguments-array': true, 'greedy-arrays': false, 'parse-numbers': false, 'parse-positional-numbers': false, 'camel-case-expansion': true })
      .positional('instrument', instrumentPositional)
      .positional('files', { type: 'string', array: true, demandOption: true, describe: say('cli.listen.files') })
      .options({ state: figuresOptions.state, cycle: figuresOptions.cycle })
      .option('contents', { choices: recordedContents, default: 'note', describe: say('cli.record.contents') })
      .option('key', { type: 'string', requiresArg: true, describe: say('cli.record.key') })
      .option('keys-from-names', { type: 'boolean', default: false, describe: say('cli.record.keysFromNames') })
      .option('place', { type: 'string', default: '', requiresArg: true, describe: say('cli.record.place') })
      .option('device', { type: 'string', default: '', requiresArg: true, describe: say('cli.record.device') })
      .option('remark', { type: 'string', default: '', requiresArg: true, describe: say('cli.record.remark') })
      .option('later', { type: 'boolean', default: false, describe: say('cli.record.later') })
      .options(whoOption)
      .options(dataOption)
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }) as never,
  handler: async (given) => {
    refuseRepeated(given, ['files']);
    await withStore(given, (store) => recordInto(store, given));
  },
};

async function recordInto(store: BenchStore, given: RecordArguments): Promise<void> {
  const instrument = await findInstrument(store, given.instrument);
  const cycle = cycleOf(given.cycle, instrument.cycle);
  const key = keyOf(given, instrument);
  const by = await writerOf(store, given.who);
  const kept: Kept[] = [];
  for (const file of given.files) kept.push(await keep(store, file, { instrument, cycle, given, by, key: key ?? (given.keysFromNames ? keyInName(basename(file), compassOf(instrument)) : undefined) }));
  const recordings = kept.flatMap((one) => ('recording' in one ? [one.recording] : []));
  if (recordings.length > 0) {
    const jobs = await store.askAnalysis(instrument.id, recordings.map(({ id }) => id));
    if (!given.later) await workedOff(store, instrument.id, jobs, (done, all) => { note(say('cli.record.progress', { done, all })); });
  }
  await tell(kept, given, instrument, await store.listAnalyses(instrument.id));
}

/** The one key told of every file; refused for a walk, which names its keys by itself. */
function keyOf({ key, contents, keysFromNames }: RecordArguments, instrument: Instrument): KeyNumber | undefined {
  if (key === undefined) return undefined;
  const most = keyCountOf(compassOf(instrument));
  const number = /^\d{1,3}$/u.test(key) ? Number(key) : 0;
  if (contents === 'walk' || keysFromNames) throw refused([], say('cli.record.noKey', { key }));
  if (number < 1 || number > most) throw refused([{ code: 'range', path: '--key', given: key, allowed: `1 to ${String(most)}`, params: { min: 1, max: most } }]);
  return number;
}

interface Keeping {
  readonly instrument: Instrument;
  readonly cycle: number;
  readonly given: RecordArguments;
  readonly by: string;
  readonly key: KeyNumber | undefined;
}

/** Keeps one file whole, and of M4A a copy without loss beside it. What is wrong with it is told, and the next goes on. */
async function keep(store: BenchStore, file: string, { instrument, cycle, given: { state, contents, place, device, remark }, by, key }: Keeping): Promise<Kept> {
  const sound = await soundAndCopyOf(file);
  if (!sound.ok) return { file, issues: sound.issues };
  const { bytes, copy } = sound.value;
  try {
    const kept = await store.keepRecording(once(bytes));
    const keptCopy = copy === undefined ? null : await store.keepRecording(once(copy));
    return { file, recording: await store.addRecording(instrument.id, { cycle, state, contents, place, device, remark, file: kept, copy: keptCopy, key: key ?? null, fileName: basename(file).slice(0, 255) }, by) };
  } catch (error) {
    if (isStoreFailure(error) && error.issues.length > 0) return { file, issues: error.issues };
    throw error;
  }
}

async function soundAndCopyOf(file: string): Promise<Result<{ readonly bytes: Uint8Array; readonly copy?: Uint8Array }>> {
  const bytes = await namedSound(file);
  if (!bytes.ok) return bytes;
  if (!isAac(bytes.value)) return ok({ bytes: bytes.value });
  const copy = await convertedSound(file);
  return copy.ok ? ok({ bytes: bytes.value, copy: copy.value }) : refuse(...copy.issues);
}

async function* once(bytes: Uint8Array): AsyncIterable<Uint8Array> {
  yield await Promise.resolve(bytes);
}

/** A line for each note heard, or as JSON each recording with its answer; what was refused is told at the end, and ends with it. */
async function tell(kept: readonly Kept[], { json, later }: RecordArguments, instrument: Instrument, analyses: readonly Analysis[]): Promise<void> {
  const answers = kept.map((one) => ('recording' in one ? { ...one, answer: analysisOf(one.recording, analyses)?.answer ?? null } : one));
  if (json) await printJson(answers.map((one) => ('issues' in one ? { problem: problemOf('refused', one.issues) } : one)));
  else if (later) note(say('cli.record.kept', { count: answers.filter((one) => 'recording' in one).length }));
  else await print(listenTable(answers.map((one): Listened => ('issues' in one ? one : { file: one.file, answer: one.answer ?? { reason: 'unusable' } }))));
  if (!json) for (const one of kept) if ('recording' in one) tellTake(one.recording, analyses, instrument);
  const issues = kept.flatMap((one): readonly Issue[] => ('issues' in one ? under(one.file, one.issues) : []));
  if (issues.length > 0) throw refused(issues, say('cli.listen.refused', { refused: kept.filter((one) => 'issues' in one).length, total: kept.length }));
}

/** Of a long take the keys that are missing or came twice; of a note that it is another key than told. */
function tellTake(recording: Recording, analyses: readonly Analysis[], instrument: Instrument): void {
  const analysis = analysisOf(recording, analyses);
  const heard = analysis === undefined ? undefined : heardIn(recording, analysis);
  const names = (keys: readonly KeyNumber[]): string => keys.map((key) => noteNameOf(compassOf(instrument), key)).join(', ');
  const tellOf = (words: string): void => { note(`${recording.fileName}: ${words}`); };
  if (heard === undefined) return;
  if (heard.missingKeys.length > 0) tellOf(say('tone.heard.missing', { keys: names(heard.missingKeys) }));
  if (heard.duplicateKeys.length > 0) tellOf(say('tone.heard.twice', { keys: names(heard.duplicateKeys) }));
  for (const { key, heardKey } of heard.notes) if (key !== undefined && heardKey !== undefined && key !== heardKey) tellOf(say('tone.heard.other', { told: names([key]), heard: names([heardKey]) }));
}
