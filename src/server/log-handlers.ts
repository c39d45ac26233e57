import { compassOf } from '#instrument';
import { checkInput } from '#operation';
import type { BenchStore } from '#store';
import { createSay, languageOf } from '#text';
import { type LogEvent, changeSchema, eventDaysOf, isEventFound } from '#workshop';
import { z } from 'zod';
import { Refusal, accepted } from './failure.ts';
import { type Handlers, wholeNumber } from './handlers.ts';

const eventsQuery = z.object({
  before: wholeNumber.optional(), since: wholeNumber.optional(), limit: wholeNumber.pipe(z.number().max(1000)).optional(),
  what: changeSchema.shape.entity.optional(), about: z.string().max(200).optional(),
  words: z.string().max(200).default(''), locale: z.string().max(35).default('en'),
});

/** The log of an instrument: read, folded into days, taken back, and checked. */
export const logHandlers = {
  listEvents: async ({ store, params, query }) => {
    const { words, locale, ...asked } = accepted(checkInput(eventsQuery, query));
    const matches = words.trim() === '' ? undefined : await finderOf(store, params.id, words, locale);
    return { events: [...(await store.listEvents(params.id, { ...asked, matches }))] };
  },
  listEventDays: async ({ store, params, query: { zone = 'UTC' } }) => {
    if (!isZone(zone)) throw new Refusal('refused', [{ code: 'format', path: 'zone', given: zone, allowed: 'a time zone of the IANA database, such as Europe/Berlin' }]);
    return { days: [...eventDaysOf(await store.listEventMarks(params.id), zone)] };
  },
  undo: ({ store, params, body, by }) => store.undo(params.id, body.seq, by),
  audit: ({ store, params }) => store.audit(params.id),
} satisfies Partial<Handlers>;

async function finderOf(store: BenchStore, id: string, words: string, locale: string): Promise<(event: LogEvent) => boolean> {
  const { instrument, work } = await store.getPiano(id);
  const wording = { say: createSay(languageOf(locale)), compass: compassOf(instrument), work };
  return (event) => isEventFound(event, words, wording);
}

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
