import type { CommandModule } from 'yargs';
import { PROGRAM, say } from '../language.ts';
import { aligned, note, print, printJson } from '../output.ts';
import { dataOption, withStore } from '../with-store.ts';

/** `pianos`: what stands in the shop, with the ids other commands take. */
export const pianos: CommandModule<object, { readonly data?: string; readonly json: boolean }> = {
  command: 'pianos',
  describe: say('cli.pianos'),
  builder: (yargs) => yargs.options(dataOption).option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: ({ data, json }) =>
    withStore({ data }, async (store) => {
      const standing = await store.listPianos();
      if (json) return printJson(standing);
      if (standing.length === 0) note(say('cli.pianos.none', { program: PROGRAM }));
      return print(aligned(standing.map(({ instrument, readingCounts }) => [
        instrument.id,
        instrument.name,
        say('cli.pianos.cycle', { cycle: instrument.cycle }),
        say('cli.pianos.counts', readingCounts),
        instrument.demo ? say('cli.pianos.demo') : '',
      ])));
    }),
};
