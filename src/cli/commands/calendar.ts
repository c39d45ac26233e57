import { createSay } from '#text';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked, writeWhole } from '../document-file.ts';
import { say } from '../language.ts';
import { print } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, withStore } from '../with-store.ts';

const options = { out: { type: 'string', requiresArg: true, describe: say('cli.export.out') }, lang: documentOptions.lang, ...dataOption } as const;

/** `calendar --out visits.ics`: visits and reminders as iCalendar; left out, to standard output. */
export const calendar: CommandModule<object, InferredOptionTypes<typeof options>> = {
  command: 'calendar',
  describe: say('cli.calendar'),
  builder: (yargs) => yargs.options(options),
  handler: async ({ out, lang, data }) => {
    const locale = localeAsked(lang);
    const text = await withStore({ data }, async (store) => {
      const { calendarText } = await import('#server');
      return calendarText(store, createSay(locale));
    });
    return out === undefined || out === '-' ? print(text) : writeWhole(out, new TextEncoder().encode(text));
  },
};
