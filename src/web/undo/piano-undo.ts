import { compassOf } from '#instrument';
import type { LogEvent } from '#workshop';
import type { PianoFile } from '../api/queries.ts';
import { localeOf, sayNow } from '../language/use-say.ts';
import { sayEvent } from '../story/say-event.ts';
import { preferences } from '../theme/preferences.ts';

/** Puts an event of one piano into words, in the language chosen at that moment. */
export function tellerOf({ instrument, work }: PianoFile): (event: LogEvent) => string {
  return (event) => sayEvent(event, { say: sayNow(), locale: localeOf(preferences().language), compass: compassOf(instrument), work });
}
