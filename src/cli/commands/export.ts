import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type TableFormat, tableFormats, writeTable } from '#files';
import { compassOf } from '#instrument';
import { tableOfReadings } from '#workshop';
import type { CommandModule } from 'yargs';
import { refused } from '../failure.ts';
import { type FiguresArguments, cycleOf, figuresOptions, localeOption } from '../file-options.ts';
import { say } from '../language.ts';
import { fileIssue } from '../named-file.ts';
import { note, print, printJson } from '../output.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

interface ExportArguments extends FiguresArguments {
  readonly instrument: string;
  readonly format?: TableFormat;
  readonly out: string;
  readonly overwrite: boolean;
  readonly data?: string;
  readonly json: boolean;
}

/** `export INSTRUMENT --state found --out FILE`: the standing readings as a table that `import` reads back as the same. */
export const exportTable: CommandModule<object, ExportArguments> = {
  command: 'export <instrument>',
  describe: say('cli.export'),
  builder: (yargs) =>
    yargs
      .positional('instrument', instrumentPositional)
      .options(figuresOptions)
      .option('format', { choices: tableFormats, describe: say('cli.export.format') })
      .option('out', { type: 'string', default: '-', requiresArg: true, describe: say('cli.export.out') })
      .option('overwrite', { type: 'boolean', default: false, describe: say('cli.export.overwrite') })
      .options(dataOption)
      .option('json', { type: 'boolean', default: false, describe: say('cli.export.json') }),
  handler: (given) => {
    const locale = localeOption(given.locale);
    return withStore(given, async (store) => {
      const { state, out } = given;
      const instrument = await findInstrument(store, given.instrument);
      const cycle = cycleOf(given.cycle, instrument.cycle);
      const readings = await store.listReadings(instrument.id, cycle);
      if (given.json) return printJson(readings.filter((reading) => reading.state === state));
      const table = tableOfReadings({ readings, compass: compassOf(instrument), cycle, state, locale: locale ?? 'en' });
      const bytes = await writeTable(table, formatOf(given), locale === undefined ? {} : { locale });
      if (out === '-') return print(bytes);
      await save(out, bytes, given.overwrite);
      note(say('cli.export.saved', { count: readings.filter((reading) => reading.state === state).length, file: out }));
    });
  },
};

/** The format asked for, else the one the file's name says, else CSV. */
function formatOf({ format, out }: ExportArguments): TableFormat {
  return format ?? tableFormats.find((known) => path.extname(out).toLowerCase() === `.${known}`) ?? 'csv';
}

async function save(file: string, bytes: Uint8Array, overwrite: boolean): Promise<void> {
  try {
    await writeFile(file, bytes, { flag: overwrite ? 'w' : 'wx' });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') throw refused([], say('cli.export.exists', { file }), 'conflict');
    throw refused([fileIssue(file, error, 'write')]);
  }
}
