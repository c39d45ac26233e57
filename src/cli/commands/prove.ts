import type { Paper } from '#files';
import type { ProofInput, ProofMaterial } from '#proof';
import { createSay } from '#text';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { compassOf, noteNameOf } from '#instrument';
import { localeAsked, paperFor, writeWhole } from '../document-file.ts';
import { refused } from '../failure.ts';
import { say } from '../language.ts';
import { isSameFile } from '../named-file.ts';
import { note, printJson } from '../output.ts';
import { documentOptions, optionOf, tableOptions } from '../prove-options.ts';
import { type TypedStatements, understandStatements } from '../prove-statements.ts';
import { materialOfTables } from '../prove-tables.ts';
import { dataOption, findInstrument, withStore } from '../with-store.ts';

type ProveArguments = InferredOptionTypes<typeof documentOptions & typeof tableOptions & typeof dataOption> & TypedStatements & {
  readonly instrument?: string | undefined;
  readonly cycle?: string | undefined;
};

type Source = Pick<ProofMaterial, 'instrument' | 'sessions' | 'readings' | 'intent' | 'terms' | 'tuningTerms' | 'action' | 'cycle' | 'head' | 'people' | 'work' | 'sounds' | 'papers' | 'care' | 'rooms'>;

/** `prove INSTRUMENT --out proof.pdf`, or without a store `prove --found a.csv --finished b.csv --out proof.pdf`. */
export const prove: CommandModule<object, ProveArguments> = {
  command: 'prove [instrument]',
  describe: say('cli.prove'),
  builder: (yargs) =>
    yargs
      .positional('instrument', { type: 'string', describe: say('cli.prove.instrument') })
      .options({ ...documentOptions, ...dataOption, cycle: { type: 'string', requiresArg: true, describe: say('cli.prove.cycle') }, ...tableOptions }),
  handler: async (given) => {
    const fromStore = given.instrument !== undefined;
    if (fromStore === (given.found !== undefined || given.finished !== undefined)) throw refused([], say('cli.prove.either'));
    const printedAt = new Date().toISOString();
    const locale = localeAsked(given.lang);
    const source = await (fromStore ? sourceOfStore(given, given.instrument) : sourceOfTables(given, locale, printedAt));
    const { buildProof, hasAnythingToProve, proofInputOf } = await import('#proof');
    if (!hasAnythingToProve(source)) throw refused([], say('cli.prove.nothing'));
    const { renderPdf } = await import('#files');
    const input = proofInputOf({ ...source, printedAt, locale, say: createSay(locale), title: given.title });
    const paper = paperFor(given.paper, locale);
    const bytes = await renderPdf(buildProof(input), { paper });
    noteContradictions(input);
    await writeWhole(given.out, bytes);
    await report(given, input, paper);
  },
};

async function sourceOfStore(given: ProveArguments, named: string): Promise<Source> {
  const foreign = Object.keys(tableOptions).filter((name) => given[name as keyof ProveArguments] !== undefined);
  if (foreign.length > 0) throw refused([], say('cli.prove.onlyFiles', { options: foreign.map((name) => `--${name}`).join(', ') }));
  return withStore(given, async (store) => {
    const { id, cycle: current } = await findInstrument(store, named);
    const cycle = given.cycle === undefined ? current : Number(given.cycle);
    if (!Number.isInteger(cycle) || cycle < 1 || cycle > current) {
      throw refused([{ code: 'range', path: '--cycle', given: given.cycle, allowed: `a whole number from 1 to ${String(current)}`, params: { min: 1, max: current, given: given.cycle ?? '' } }]);
    }
    const { proofSourceOf } = await import('#server');
    return await proofSourceOf(store, id, cycle);
  });
}

async function sourceOfTables(given: ProveArguments, locale: string, at: string): Promise<Source> {
  const foreign = (['cycle', 'data'] as const).filter((name) => given[name] !== undefined);
  if (foreign.length > 0) throw refused([], say('cli.prove.onlyStore', { options: foreign.map(optionOf).join(', ') }));
  const lost = [given.found, given.finished].find((table) => table !== undefined && isSameFile(table, given.out));
  if (lost !== undefined) throw refused([{ code: 'conflict', path: '--out', given: given.out, allowed: 'a file other than the tables', params: { reason: 'outIsTable' } }]);
  const statements = understandStatements(given, locale);
  if (!statements.ok) throw refused(statements.issues);
  return materialOfTables({ found: given.found, finished: given.finished, statements: statements.value, locale, at });
}

/** Names every key whose up weight stands above its down weight: what was given, what is allowed. */
function noteContradictions(input: ProofInput): void {
  for (const state of ['found', 'finished'] as const) {
    for (const { key, upAboveDown, figures: { downWeightG, upWeightG } } of input[state]?.keys ?? []) {
      if (!upAboveDown || downWeightG === undefined || upWeightG === undefined) continue;
      note(say('cli.prove.upAboveDown', { state: say(`proof.state.${state}`), key, note: noteNameOf(compassOf(input.instrument), key), up: upWeightG.value, down: downWeightG.value }));
    }
  }
}

async function report(given: ProveArguments, { found, finished, intent, readings, head }: ProofInput, paper: Paper): Promise<void> {
  const keys = readings?.length ?? 0;
  if (given.json) return printJson({ out: given.out, paper, readings: keys, judged: intent !== null, head, found: found?.summary ?? null, finished: finished?.summary ?? null });
  note(say('cli.prove.written', { path: given.out, keys, state: found === null ? (finished === null ? 'neither' : 'finished') : finished === null ? 'found' : 'both' }));
  if (intent === null && (found !== null || finished !== null)) note(say('cli.prove.notJudged'));
}
