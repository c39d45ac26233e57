import { type Compass, noteNameOf } from '#instrument';
import type { Say } from '#text';
import type { Change, LogEvent, WorkItem } from './records.ts';

/** Fields that say nothing to a reader: references, hashes, times that stand beside the event already. */
const UNSAID: ReadonlySet<string> = new Set(['id', 'workshopId', 'by', 'at', 'typedAt', 'startedAt', 'doneAt', 'sessionId', 'supersededBy', 'file', 'hash', 'details', 'observation', 'purchase', 'cycle', 'stage', 'quantity', 'scope', 'index', 'repeat', 'basis', 'uncertainty']);

/** Where the catalogue keeps the words for a choice. */
const AREAS = ['remedy', 'cause', 'observation.part', 'observation.fault', 'outcome', 'state', 'pass.stretch', 'recording.contents', 'papers.material', 'quote.state'] as const;

interface Wording {
  readonly say: Say;
  readonly compass: Compass;
  /** Jobs of the piano, so that a change of one is found by its name. */
  readonly work?: readonly WorkItem[];
}

/**
 * True where every word typed stands in what an event changed: names of quantities, notes and jobs in the reader's language,
 * figures and remarks as they were typed. Capitals do not count, nor does a decimal comma; what holds a digit has to begin a word.
 */
export function isEventFound(event: LogEvent, typed: string, wording: Wording): boolean {
  const wanted = plain(typed).split(/\s+/u).filter((word) => word !== '');
  const said = ` ${plain(event.changes.flatMap((change) => wordsOf(change, wording)).join(' '))}`;
  return wanted.every((word) => said.includes(/\d/u.test(word) ? ` ${word}` : word));
}

const plain = (text: string): string => text.toLowerCase().replaceAll(/(\d),(\d)/gu, '$1.$2').replaceAll(/[():;/→]/gu, ' ');

function wordsOf({ entity, place, before, after }: Change, wording: Wording): readonly string[] {
  const { say } = wording;
  const where = entity === 'reading' ? placeWords(place, wording) : [];
  const job = entity === 'work' ? wording.work?.find(({ id }) => id === place) : undefined;
  return [known([`story.what.${entity}`], say)[0] ?? entity, ...where, ...bodyWords(job, wording), ...bodyWords(before, wording), ...bodyWords(after, wording)];
}

/** `c1/found/downWeightG/key/40/1` in words. */
function placeWords(place: string, { say, compass }: Wording): readonly string[] {
  const [, state = '', quantity = '', scope = '', index = ''] = place.split('/');
  const keys = [`state.${state}`, `quantity.${quantity}.name`, `quantity.${quantity}.short`, ...(scope === 'colour' ? [`colour.${index === '0' ? 'natural' : 'sharp'}`] : [])];
  return [...known(keys, say), ...(scope === 'key' ? [noteNameOf(compass, Number(index)), index] : [])];
}

function bodyWords(body: unknown, wording: Wording): readonly string[] {
  if (body === null || body === undefined || typeof body === 'boolean') return [];
  if (typeof body === 'number') return [String(body)];
  if (typeof body === 'string') return [body, ...known(AREAS.map((area) => `${area}.${body}`), wording.say)];
  if (Array.isArray(body)) return body.flatMap((one) => bodyWords(one, wording));
  return Object.entries(body).flatMap(([field, value]: [string, unknown]) =>
    UNSAID.has(field) ? [] : field === 'key' && typeof value === 'number' ? [noteNameOf(wording.compass, value), String(value)] : bodyWords(value, wording));
}

/** What the catalogue says of some keys; those it does not know say nothing. */
function known(keys: readonly string[], say: Say): readonly string[] {
  return keys.flatMap((key) => (say.knows(key) ? [say(key)] : []));
}
