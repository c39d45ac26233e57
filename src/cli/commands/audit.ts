import { problemOf } from '#result';
import type { CommandModule } from 'yargs';
import { CliFailure } from '../failure.ts';
import { say } from '../language.ts';
import { print, printJson } from '../output.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

/** `audit INSTRUMENT`: recomputes every hash of the log; exit code 1 when the chain is broken. */
export const audit: CommandModule<object, { readonly instrument: string; readonly data?: string; readonly json: boolean }> = {
  command: 'audit <instrument>',
  describe: say('cli.audit'),
  builder: (yargs) => yargs.positional('instrument', instrumentPositional).options(dataOption).option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: ({ instrument, data, json }) =>
    withStore({ data }, async (store) => {
      const found = await store.audit((await findInstrument(store, instrument)).id);
      const { whole, events, headHash, firstBrokenSeq } = found;
      if (json) await printJson(found);
      else if (whole) await print(`${say('cli.audit.whole', { events, hash: headHash })}\n`);
      if (whole) return;
      const words = say('cli.audit.broken', { seq: firstBrokenSeq ?? 0, events });
      throw new CliFailure(1, problemOf('conflict', [], words), [words]);
    }),
};
