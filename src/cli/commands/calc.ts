import { type AnyOperation, calculate, describeOperation, readJson, runHere } from '#operation';
import type { CommandModule } from 'yargs';
import { refused } from '../failure.ts';
import { type TypedFields, inputOfOptions, typedFieldsOf } from '../field-options.ts';
import { PROGRAM, locale, say } from '../language.ts';
import { aligned, print, printJson } from '../output.ts';
import { readInput } from '../read-input.ts';
import { readableAnswer } from '../readable-answer.ts';
import { readSoundAt } from '../sound-file.ts';

interface CalcArguments {
  readonly name: string | undefined;
  readonly list: boolean;
  readonly example: boolean;
  readonly json: boolean;
}

/** `calc NAME < in.json > out.json`, `calc NAME --field value`, `calc --list`, `calc NAME --example`. */
export const calc: CommandModule<object, CalcArguments> = {
  command: 'calc [name]',
  describe: say('cli.calc'),
  builder: (yargs) =>
    yargs
      .strict(false)
      .parserConfiguration({ 'duplicate-arguments-array': true, 'parse-numbers': false, 'parse-positional-numbers': false, 'camel-case-expansion': false })
      .positional('name', { type: 'string', describe: say('cli.calc.name') })
      .option('list', { type: 'boolean', default: false, describe: say('cli.calc.list') })
      .option('example', { type: 'boolean', default: false, describe: say('cli.calc.example') })
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: async ({ name, list, example, json, _: words, ...rest }) => {
    const { operations, operationByName } = await import('#catalogue');
    const typed = typedFieldsOf(rest);
    if (words.length > 1) throw refused([], say('cli.calc.surplus', { words: words.slice(1).join(' ') }));
    if (list) return listAll(operations, json);
    if (name === undefined) throw refused([], say('cli.calc.nameMissing', { program: PROGRAM }));
    const operation = operationByName(name);
    if (operation === undefined) throw refused([], say('cli.calc.unknown', { name, program: PROGRAM }), 'notFound');
    if (example) return printJson(operation.example);
    return run(operation, await inputOf(operation, typed), json);
  },
};

/** What was typed as options, or else JSON from standard input. */
async function inputOf(operation: AnyOperation, typed: TypedFields): Promise<unknown> {
  const isTyped = Object.keys(typed).length > 0;
  const read = isTyped ? inputOfOptions(operation, typed) : readJson(await readInput(say('cli.calc.typeInput', { example: JSON.stringify(operation.example) })));
  if (!read.ok) throw refused(read.issues, undefined, isTyped ? 'refused' : 'malformed');
  return read.value;
}

async function run(operation: AnyOperation, input: unknown, json: boolean): Promise<void> {
  const { answer, issues } = await calculate(operation, input, runHere(operation, readSoundAt));
  const isMany = Array.isArray(answer);
  if (isMany || issues.length === 0) await (json ? printJson(answer) : print(readableAnswer(answer, say, locale)));
  if (issues.length === 0) return;
  const detail = isMany ? say('cli.calc.refused', { refused: answer.filter(isRefused).length, total: answer.length }) : undefined;
  throw refused(issues, detail);
}

function isRefused(item: unknown): boolean {
  return typeof item === 'object' && item !== null && 'problem' in item;
}

async function listAll(operations: readonly AnyOperation[], json: boolean): Promise<void> {
  const words = (key: string): string => (say.knows(key) ? say(key) : key);
  if (json) return printJson(operations.map((operation) => describeOperation(operation, words)));
  return print(aligned(operations.map(({ name }) => [name, words(`operation.${name}.title`)])));
}
