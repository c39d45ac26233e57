import type { BenchStore } from '#store';
import { checkInput } from '#operation';
import { type Say, createSay } from '#text';
import { calendarEntriesOf, calendarOf } from '#workshop';
import type { Hono } from 'hono';
import { accepted } from './failure.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import type { Bench } from './mount.ts';

/** Mounts the feed of appointments and reminders, for a calendar to subscribe to. */
export function mountCalendar(app: Hono, { store }: Bench): void {
  app.get(fileRoutes.calendar.path, async (context) => {
    accepted(checkInput(fileRoutes.calendar.query, context.req.query()));
    const text = await calendarText(await store(), createSay(localeOf(context)));
    return new Response(text, { headers: { 'content-type': 'text/calendar; charset=utf-8', 'content-disposition': 'inline; filename="wrestplank.ics"', 'cache-control': 'no-store' } });
  });
}

/** The feed as it stands: the shop's own and the demonstration's, whose pianos say that they are invented. */
export async function calendarText(store: BenchStore, say: Say): Promise<string> {
  const { cards, withdrawn } = await store.listShopCards();
  const pianos = new Map((await store.listPianoNames()).map(({ id, name }) => [id, name]));
  return calendarOf(say('shop.calendar.name'), calendarEntriesOf({ cards, withdrawn, pianos }, say));
}
