import yargs, { type Argv } from 'yargs';
import { languageOf } from '#text';
import { audit } from './commands/audit.ts';
import { calc } from './commands/calc.ts';
import { calendar } from './commands/calendar.ts';
import { demo } from './commands/demo.ts';
import { exportTable } from './commands/export.ts';
import { importTable } from './commands/import.ts';
import { listen } from './commands/listen.ts';
import { order } from './commands/order.ts';
import { papers } from './commands/papers.ts';
import { people } from './commands/people.ts';
import { pianos } from './commands/pianos.ts';
import { prove } from './commands/prove.ts';
import { quote } from './commands/quote.ts';
import { record } from './commands/record.ts';
import { room } from './commands/room.ts';
import { serve } from './commands/serve.ts';
import { sheet } from './commands/sheet.ts';
import { stockBook } from './commands/stock-book.ts';
import { refused, tell } from './failure.ts';
import { PROGRAM, locale, say } from './language.ts';
import { print } from './output.ts';
import { version } from './version.ts';

/** Every command, in the order help shows them. Adding one is a file and a line here. */
const commands = [serve, pianos, importTable, exportTable, prove, order, sheet, quote, stockBook, room, papers, listen, record, calc, people, calendar, audit, demo] as const;

/** Names of the commands, in the order help shows them. */
export const commandNames: readonly string[] = commands.map(({ command }) => String(command).split(' ')[0] ?? '');

const COMPLETING = '--get-yargs-completions';

/** What was typed is no command of ours. */
class UsageError extends Error {}

/** Runs one command and answers the exit code: 0, or 2 for what was refused, or 1 for what failed. */
export async function runProgram(words: readonly string[]): Promise<number> {
  try {
    if (words[0] === COMPLETING && words[2] === 'calc' && words.length === 4 && !words[3]?.startsWith('-')) await offerCalculations(words[3] ?? '');
    else await programOf(words).parseAsync();
    return 0;
  } catch (error) {
    const failure = error instanceof UsageError ? refused([], `${error.message}\n${say('cli.tryHelp', { program: PROGRAM })}`) : error;
    return tell(failure, words.includes('--json') || words[0] === 'calc');
  }
}

/** The whole command line, declared. */
export function programOf(words: readonly string[]): Argv {
  return yargs([...words])
    .scriptName(PROGRAM)
    .locale(languageOf(locale))
    .usage(say('cli.usage', { program: '$0' }))
    .command(commands as never)
    .completion('completion', say('cli.completion'))
    .demandCommand(1, say('cli.missing'))
    .strict()
    .parserConfiguration({ 'duplicate-arguments-array': false, 'parse-numbers': false, 'parse-positional-numbers': false, 'camel-case-expansion': true })
    .help('help', say('cli.help'))
    .version('version', say('cli.version'), version)
    .epilogue(say('cli.epilogue'))
    .wrap(100)
    .exitProcess(words.includes(COMPLETING))
    .fail((message, error) => {
      throw (error as Error | undefined) ?? new UsageError(message);
    });
}

async function offerCalculations(begun: string): Promise<void> {
  const { operations } = await import('#catalogue');
  await print(operations.flatMap(({ name }) => (name.startsWith(begun) ? [`${name}\n`] : [])).join(''));
}

/** Help of one command, or of the whole line for none, as the terminal shows it. */
export function helpOf(command: readonly string[]): Promise<string> {
  return new Promise((resolve) => {
    void programOf([]).parse([...command, '--help'], {}, (_error, _arguments, output) => {
      resolve(output);
    });
  });
}
