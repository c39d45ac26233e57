import { type Instrument, compassOf } from '#instrument';
import type { LogEvent } from '#workshop';
import { localeOf, sayNow } from '../language/use-say.ts';
import { preferences } from '../theme/preferences.ts';
import { sayEvent } from '../story/say-event.ts';

/** Puts an event of one instrument into words, in the language chosen at that moment. */
export function tellerOf(instrument: Instrument): (event: LogEvent) => string {
  return (event) => sayEvent(event, { say: sayNow(), locale: localeOf(preferences().language), compass: compassOf(instrument) });
}
