import { availableParallelism } from 'node:os';
import type { CalcDesk } from '#files';
import { type AnyOperation, soundFieldsOf } from '#operation';
import { type Issue, problemOf, under } from '#result';
import { parseMeasure } from '#units';
import type { CommandModule } from 'yargs';
import { failed, refused } from '../failure.ts';
import { locale, say } from '../language.ts';
import { type Listened, listenTable } from '../listen-table.ts';
import { print, printJson } from '../output.ts';
import { refuseRepeated } from '../refuse-repeated.ts';
import { soundBytesOf } from '../sound-file.ts';

/** Most threads at work: each holds one recording in memory. */
const MOST_THREADS = 4;
const MOST_MS = 600_000;

interface ListenArguments {
  readonly files: readonly string[];
  readonly key?: string;
  readonly run: boolean;
  readonly reference?: string;
  readonly json: boolean;
}

/** `listen FILE…`: the note of each recording, or with --run every note of each. */
export const listen: CommandModule<object, ListenArguments> = {
  command: 'listen <files..>',
  describe: say('cli.listen'),
  builder: (yargs) =>
    yargs
      .parserConfiguration({ 'duplicate-arguments-array': true, 'greedy-arrays': false, 'parse-numbers': false, 'parse-positional-numbers': false, 'camel-case-expansion': true })
      .positional('files', { type: 'string', array: true, demandOption: true, describe: say('cli.listen.files') })
      .option('key', { type: 'string', requiresArg: true, describe: say('cli.listen.key') })
      .option('run', { type: 'boolean', default: false, describe: say('cli.listen.run') })
      .option('reference', { type: 'string', requiresArg: true, describe: say('cli.listen.reference') })
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: async (given) => {
    refuseRepeated(given, ['files']);
    const { operationByName } = await import('#catalogue');
    const name = given.run ? 'tone-run' : 'tone-note';
    const operation = operationByName(name);
    if (operation === undefined) throw failed(say('cli.calc.unknown', { name, program: '' }));
    const told = toldOf(given);
    const { openCalcDesk } = await import('#files');
    const threads = Math.min(availableParallelism(), MOST_THREADS, given.files.length);
    const desk = openCalcDesk({ threads, mostMs: MOST_MS });
    try {
      await tell(await listenToAll({ desk, operation, told, threads }, given.files), given.json);
    } finally {
      await desk.close();
    }
  },
};

/** What is told beside the sound, as fields of the calculation. */
function toldOf({ key, reference, run }: ListenArguments): object {
  if (run && key !== undefined) throw refused([{ code: 'unknown', path: '--key', given: key, allowed: 'a key only without --run: a take names its keys by itself' }]);
  const figures = { key: parsed('--key', key), a4Hz: parsed('--reference', reference) };
  return Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== undefined));
}

function parsed(path: string, typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const figure = parseMeasure(typed, { unit: '1', path, locale });
  if (!figure.ok) throw refused(figure.issues);
  return figure.value.value;
}

interface Listening {
  readonly desk: CalcDesk;
  readonly operation: AnyOperation;
  readonly told: object;
  readonly threads: number;
}

/** Every file, in the order they were named; no more are read at once than there are threads. */
async function listenToAll(listening: Listening, files: readonly string[]): Promise<readonly Listened[]> {
  const heard: Listened[] = [];
  const left = files.entries();
  const work = async (): Promise<void> => {
    for (const [index, file] of left) heard[index] = await listenTo(listening, file);
  };
  await Promise.all(Array.from({ length: listening.threads }, work));
  return heard;
}

async function listenTo({ desk, operation, told }: Listening, file: string): Promise<Listened> {
  const [field = 'file'] = soundFieldsOf(operation);
  const bytes = await soundBytesOf(file);
  const result = bytes.ok ? await desk.run(operation.name, { ...told, [field]: bytes.value }) : { ok: false as const, issues: under(field, bytes.issues) };
  return result.ok ? { file, answer: result.value as object } : { file, issues: result.issues };
}

/** One file is answered by itself, several as a list in their order, one that was refused as `{ problem }` among the others. */
async function tell(heard: readonly Listened[], json: boolean): Promise<void> {
  const issues = heard.flatMap((one): readonly Issue[] => ('issues' in one ? one.issues.map((issue) => ({ ...issue, path: `${one.file}: ${issue.path}` })) : []));
  const [only] = heard;
  if (!json) await print(listenTable(heard));
  else if (heard.length > 1) await printJson(heard.map((one) => ('issues' in one ? { problem: problemOf('refused', one.issues) } : one.answer)));
  else if (only !== undefined && 'answer' in only) await printJson(only.answer);
  if (issues.length > 0) throw refused(issues, heard.length > 1 ? say('cli.listen.refused', { refused: heard.filter((one) => 'issues' in one).length, total: heard.length }) : undefined);
}
