import type { CommandModule } from 'yargs';
import { say } from '../language.ts';
import { note, printJson } from '../output.ts';
import { dataOption, withStore } from '../with-store.ts';

/** `demo add`, `demo remove`: the invented pianos, in a workshop of their own. */
export const demo: CommandModule<object, { readonly action: string; readonly data?: string; readonly json: boolean }> = {
  command: 'demo <action>',
  describe: say('cli.demo'),
  builder: (yargs) =>
    yargs
      .positional('action', { choices: ['add', 'remove'] as const, demandOption: true, describe: say('cli.demo.action') })
      .options(dataOption)
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: ({ action, data, json }) =>
    withStore({ data }, async (store) => {
      const { seedDemo } = await import('#server');
      if (action === 'add') {
        const { added, pianos } = await seedDemo(store);
        note(say('cli.demo.added', { count: added }));
        return json ? printJson({ pianos }) : undefined;
      }
      const removed = await store.removeDemo();
      note(say('cli.demo.removed', { count: removed }));
      return json ? printJson({ removed }) : undefined;
    }),
};
