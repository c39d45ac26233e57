import { field } from '#operation';
import { type Result, ok, refuse } from '#result';
import { hertz } from '#units';
import type { ListenOptions } from './listen.ts';

/** What is told of the keyboard that is listened to. */
export const keyboardFields = {
  firstMidi: field.count({ min: 0, max: 127, describe: 'MIDI number of key 1' }).default(21),
  lastMidi: field.count({ min: 0, max: 127, describe: 'MIDI number of the last key, not below the first' }).default(108),
  a4Hz: field.hertz({ min: 300, max: 600, describe: 'Pitch of A4 that keys and offsets are counted from' }).default(hertz(440)),
} as const;

/** The same as listening takes it. Refuses a keyboard that ends before it begins. */
export function listeningTo({ firstMidi, lastMidi, a4Hz }: { readonly firstMidi: number; readonly lastMidi: number; readonly a4Hz: number }): Result<Omit<ListenOptions, 'key'>> {
  if (lastMidi < firstMidi) return refuse({ code: 'order', path: 'lastMidi', given: lastMidi, allowed: `at least firstMidi, ${String(firstMidi)}` });
  return ok({ compass: { firstMidi, lastMidi }, a4Hz });
}
