import { type Instrument, compassOf, noteNameOf } from '#instrument';
import { textOf } from '#report';
import { sheets } from '#sheets';
import { createSay } from '#text';
import { type RoomConsequences, type RoomRecord, hungOf, placesToldOf, roomConsequencesOf } from '#workshop';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked } from '../document-file.ts';
import { refused } from '../failure.ts';
import { cycleOf } from '../file-options.ts';
import { say } from '../language.ts';
import { note, print, printJson } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

const options = {
  room: { type: 'string', requiresArg: true, describe: say('cli.room.room') },
  cycle: { type: 'string', requiresArg: true, describe: say('cli.cycle') },
  lang: documentOptions.lang, json: documentOptions.json, ...dataOption,
} as const;

type RoomArguments = InferredOptionTypes<typeof options> & { readonly instrument: string };

/** `room INSTRUMENT`: what the Room page says of the rooms it stands in or may stand in. */
export const room: CommandModule<object, RoomArguments> = {
  command: 'room <instrument>',
  describe: say('cli.room'),
  builder: (yargs) => yargs.positional('instrument', instrumentPositional).options(options),
  handler: async (given) => {
    const locale = localeAsked(given.lang);
    await withStore(given, async (store) => {
      const instrument = await findInstrument(store, given.instrument);
      const { sheetSourceOf } = await import('#server');
      const source = await sheetSourceOf(store, instrument.id, { sheet: 'room', state: 'found', cycle: cycleOf(given.cycle, instrument.cycle) });
      const rooms = roomsAsked(source.rooms ?? [], given.room);
      if (given.json) return printJson(rooms.map((one) => inFull(one, instrument)));
      const material = { ...source, rooms, printedAt: new Date().toISOString(), locale, say: createSay(locale) };
      const nothing = sheets.room.nothing(material);
      if (nothing !== undefined) note(nothing);
      else await print(`${textOf(sheets.room.document(material))}\n`);
    });
  },
};

/** All of them, or the one named. */
function roomsAsked(rooms: readonly RoomRecord[], named: string | undefined): readonly RoomRecord[] {
  if (named === undefined) return rooms;
  const found = rooms.filter(({ id, name }) => name === named || id.startsWith(named));
  const names = rooms.map(({ name }) => name).join(', ');
  if (found.length !== 1) throw refused([{ code: 'choice', path: '--room', given: named, allowed: `the name of one room or the beginning of its id: ${names}`, params: { choices: names } }]);
  return found;
}

/** All that follows from a room, in full precision; what is wrong with one that does not fit together. */
function inFull(given: RoomRecord, instrument: Instrument) {
  const compass = compassOf(instrument);
  const worked = roomConsequencesOf(given, { compass, a4Hz: instrument.a4Hz });
  if (!worked.ok) return { id: given.id, name: given.name, errors: worked.issues };
  const { input: { plan, box, isBox }, notes, ...known }: RoomConsequences = worked.value;
  return {
    id: given.id, name: given.name, ...plan, box, isBox, ...known, notes: notes.map((note) => ({ ...note, name: noteNameOf(compass, note.key) })),
    measured: given.measured.at(-1) ?? null, hanging: hungOf(worked.value) ?? null, places: placesToldOf(given, worked.value, instrument),
  };
}
