import { type Compass, type Instrument, type Observation, type Reading, type Recording, type TuningPass, type WeighingSession, isQuantityName, noteNameOf, quantityOf } from '#instrument';
import type { Say } from '#text';
import { formatMeasure } from '#units';
import { type Change, type LogEvent, type PaperRecord, type RoomRecord, type WorkItem, canonicalJson } from '#workshop';
import { printField } from '../figure/print-field.ts';
import { sayMaybe } from '../language/say-maybe.ts';
import { sayEstimate, sayQuote, sayQuoteState } from './say-worth.ts';

/** How an event is put into words: in which language, and on which keyboard. */
export interface Telling {
  readonly say: Say;
  readonly locale: string;
  readonly compass: Compass;
  /** Jobs of the piano, so that a change of one can name it. */
  readonly work?: readonly WorkItem[];
}

/** One line on what an event did: a single figure with before and after, more of them by count. */
export function sayEvent(event: LogEvent, telling: Telling): string {
  const { say } = telling;
  const [first] = event.changes;
  if (event.undoes !== null) {
    const what = first === undefined ? '' : sayChanges(event.changes, telling);
    return say('story.event.undone', { seq: event.undoes, what });
  }
  return first === undefined ? say('story.event.nothing') : sayChanges(event.changes, telling);
}

function sayChanges(changes: readonly Change[], telling: Telling): string {
  const { say } = telling;
  const [first] = changes;
  if (first === undefined) return say('story.event.nothing');
  const moved = changes.find(isOfSessionAlone);
  if (moved !== undefined) return say('story.event.assigned', { count: changes.length, state: placeParts(moved.place).state, into: String(sessionOf(moved.after) !== null) });
  if (changes.length === 1) return sayChange(first, telling);
  if (first.entity === 'work') return say('story.event.jobs', { count: changes.length });
  if (first.entity !== 'reading') return changes.map((change) => sayChange(change, telling)).join('; ');
  const places = changes.map(({ place }) => placeParts(place));
  const names = [...new Set(places.map(({ quantity }) => quantity))].map((name) => sayMaybe(say, `quantity.${name}.short`));
  return say('story.event.figures', { count: changes.length, state: places[0]?.state ?? 'found', what: names.join(', ') });
}

const sessionOf = (body: unknown): string | null => (body as Reading).sessionId;

/** True where a figure stays and only the session it belongs to becomes another. */
function isOfSessionAlone({ entity, before, after }: Change): boolean {
  if (entity !== 'reading' || before === null || after === null) return false;
  const [was, is] = [before as Reading, after as Reading];
  return was.at === is.at && was.typed === is.typed && was.outcome === is.outcome && was.sessionId !== is.sessionId;
}

/** One change in words. */
export function sayChange(change: Change, telling: Telling): string {
  const { entity, place, before, after } = change;
  const { say } = telling;
  if (isOfSessionAlone(change)) return `${sayPlace(place, telling)}: ${sayReading(after, telling)}`;
  switch (entity) {
    case 'reading':
      return say('story.event.figure', { where: sayPlace(place, telling), before: sayReading(before, telling), after: sayReading(after, telling) });
    case 'instrument':
      if (before === null) return say('story.event.pianoAdded');
      if (fieldsOf(after).includes('cycle')) return say('story.event.cycle', { cycle: Number((after as { cycle: unknown }).cycle) });
      return say('story.event.pianoChanged', { what: sayFields('pianos.field', before, after, telling) });
    case 'session':
      if (before === null) return say('story.event.sessionAdded', { state: (after as WeighingSession).state, step: sayStep(after, telling) });
      return after === null ? say('story.event.sessionGone') : say('story.event.sessionChanged', { what: sayFields('readings.session', before, after, telling) });
    case 'intent':
      return after === null ? say('story.event.intentGone') : say('story.event.intentSet', { what: sayIntent(after, telling) });
    case 'scale':
      return after === null ? say('story.event.scaleGone') : say('story.event.scaleSet', { what: sayFields('scale.field', before ?? {}, after, telling) });
    case 'action':
      return after === null ? say('story.event.actionGone') : say('story.event.actionSet', { what: sayFields('actionTerms.field', before ?? {}, after, telling) });
    case 'observation':
      if (before === null) return say('story.event.seen', { what: saySeen(after, telling) });
      return after === null ? say('story.event.seenGone', { what: saySeen(before, telling) }) : say('story.event.seenChanged', { what: sayFields('observation.field', before, after, telling) });
    case 'tuning':
      return after === null ? say('story.event.tuningGone') : say('story.event.tuningSet', { what: sayFields('tuning.field', before ?? {}, after, telling) });
    case 'pass':
      if (before === null) return say('story.event.passAdded', { what: sayPass(after, telling) });
      return after === null ? say('story.event.passGone', { what: sayPass(before, telling) }) : say('story.event.passChanged', { what: sayFields('pass.field', before, after, telling) });
    case 'room':
      if (before === null) return say('story.event.roomAdded', { what: nameOfRoom(after) });
      return after === null ? say('story.event.roomGone', { what: nameOfRoom(before) }) : say('story.event.roomChanged', { what: fieldsOf(after).map((field) => sayMaybe(say, `room.field.${field}`)).join(', ') });
    case 'recording':
      if (before === null) return say('story.event.recorded', { what: sayRecorded(after, telling) });
      return after === null ? say('story.event.recordedGone', { what: sayRecorded(before, telling) }) : say('story.event.recordedChanged', { what: sayFields('recording.field', before, after, telling) });
    case 'estimate':
      return after === null ? say('story.event.estimateGone') : say('story.event.estimateSet', { what: sayEstimate(after) });
    case 'quote':
      if (before === null) return say('story.event.quoteAdded', { what: sayQuote(after) });
      return after === null ? say('story.event.quoteGone', { what: sayQuote(before) }) : say('story.event.quoteChanged', { what: sayQuoteState(after, telling.say) });
    case 'paper':
      if (before === null) return say('story.event.paperAdded', { what: sayPaper(after, telling) });
      return after === null ? say('story.event.paperGone', { what: sayPaper(before, telling) }) : say('story.event.paperChanged', { what: sayFields('papers.field', before, after, telling) });
    case 'care':
      return say(before === null ? 'care.event.added' : after === null ? 'care.event.gone' : 'care.event.changed', { kind: place === 'plan' ? 'plan' : kindOfCare(after ?? before) });
    case 'shop':
      return '';
    case 'work':
      if (before === null) return say('story.event.jobAdded', { what: sayJob(after as WorkItem, telling) });
      return after === null ? say('story.event.jobGone') : sayJobChange(place, after, telling);
  }
}

const nameOfRoom = (body: unknown): string => (body as RoomRecord).name;

/** A change of fields does not name its kind. */
function kindOfCare(body: unknown): string {
  return (body as { readonly kind?: string }).kind ?? 'other';
}

function fieldsOf(body: unknown): readonly string[] {
  return typeof body === 'object' && body !== null ? Object.keys(body) : [];
}

/** `c1/found/downWeightG/key/40/1` taken apart. */
function placeParts(place: string): { readonly state: string; readonly quantity: string; readonly scope: string; readonly index: number; readonly repeat: number } {
  const [, state = '', quantity = '', scope = '', index = '0', repeat = '1'] = place.split('/');
  return { state, quantity, scope, index: Number(index), repeat: Number(repeat) };
}

/** `Down weight C4, as found`. */
export function sayPlace(place: string, { say, compass }: Telling): string {
  const { state, quantity, scope, index, repeat } = placeParts(place);
  const name = sayMaybe(say, `quantity.${quantity}.name`);
  const where = scope === 'key' ? noteNameOf(compass, index) : scope === 'colour' ? sayMaybe(say, `colour.${index === 0 ? 'natural' : 'sharp'}`) : '';
  const again = repeat > 1 ? say('story.place.repeat', { repeat }) : '';
  return [name, where, again, `(${sayMaybe(say, `state.${state}`)})`].filter((part) => part !== '').join(' ');
}

/** A reading as typed where that says more than its value; a dash for none. */
export function sayReading(body: unknown, { say, locale }: Telling): string {
  if (body === null || body === undefined) return '–';
  const { value, outcome, typed, quantity } = body as Reading;
  if (outcome !== null) return sayMaybe(say, `outcome.${outcome}`);
  if (value === null) return typed ?? '–';
  const { unit, decimals } = isQuantityName(quantity) ? quantityOf(quantity) : { unit: '1' as const, decimals: 2 };
  return formatMeasure(value, { locale, decimals: decimalsFor(value, decimals), unit });
}

/** As many decimals as the figure has, so that 49 is not told as 49.0, nor 49.25 as 49.3. */
export function decimalsFor(value: number, most: number): number {
  const needed = [0, 1, 2, 3].find((decimals) => Math.abs(value - Number(value.toFixed(decimals))) < 1e-9);
  return needed ?? Math.max(most, 3);
}

function sayStep(body: unknown, { say, locale }: Telling): string {
  const { stepG } = body as WeighingSession;
  return stepG === null ? say('story.notStated') : formatMeasure(stepG, { locale, decimals: decimalsFor(stepG, 2), unit: 'g' });
}

/** `Crack, Soundboard (as found): beside the third rib`. */
function saySeen(body: unknown, { say }: Telling): string {
  const { part, fault, state, remark } = body as Observation;
  const what = `${say(`observation.fault.${fault}`)}, ${say(`observation.part.${part}`)} (${say(`state.${state}`)})`;
  return remark === '' ? what : `${what}: ${remark}`;
}

/** `Tenor, 2026-03-09: −40 → 12 ct`. */
function sayPass(body: unknown, { say, locale }: Telling): string {
  const { stretch, day, foundCt, leftCt } = body as TuningPass;
  const cents = (value: number): string => formatMeasure(value, { locale, decimals: decimalsFor(value, 1), unit: 'ct' });
  return `${say(`pass.stretch.${stretch}`)}, ${day}: ${cents(foundCt)}${leftCt === null ? '' : ` → ${cents(leftCt)}`}`;
}

/** `One note, C4 (as found): c4.wav`. */
function sayRecorded(body: unknown, { say, compass }: Telling): string {
  const { contents, key, state, fileName } = body as Recording;
  const what = [say(`recording.contents.${contents}`), ...(key === null ? [] : [noteNameOf(compass, key)])].join(', ');
  return `${what} (${say(`state.${state}`)})${fileName === '' ? '' : `: ${fileName}`}`;
}

/** `African elephant ivory: key tops`, or the history of the instrument. */
function sayPaper(body: unknown, { say }: Telling): string {
  const record = body as PaperRecord;
  return record.kind === 'history' ? say('papers.history') : `${say(`papers.material.${record.material}`)}: ${record.where}`;
}

/** `Ease the key bushing, C4`. */
function sayJob({ remedy, remark, key }: WorkItem, { say, compass }: Telling): string {
  const what = remedy === 'other' ? remark : sayMaybe(say, `remedy.${remedy}`);
  return key === null ? what : `${what}, ${noteNameOf(compass, key)}`;
}

/** A job ticked off, dropped, taken up again or remarked on; when it was done stands beside the event already. */
function sayJobChange(id: string, after: unknown, telling: Telling): string {
  const { status, remark } = after as Partial<WorkItem>;
  const job = telling.work?.find((item) => item.id === id);
  const what = job === undefined ? '' : sayJob(job, telling);
  return telling.say('story.event.jobChanged', { status: status ?? 'remark', what, remark: remark ?? '' });
}

function sayFields(area: string, before: unknown, after: unknown, telling: Telling): string {
  const { say } = telling;
  const was = (before ?? {}) as Record<string, unknown>;
  const is = (after ?? {}) as Record<string, unknown>;
  return Object.keys(is)
    .filter((field) => canonicalJson(was[field] ?? null) !== canonicalJson(is[field] ?? null))
    .map((field) => say('story.event.field', { field: sayMaybe(say, `${area}.${field}`), before: sayValue(area, field, was[field], telling), after: sayValue(area, field, is[field], telling) }))
    .join(', ');
}

/** A value of a card: a note by its name, a choice by its word, a figure with the unit its field's name ends in. */
function sayValue(area: string, field: string, value: unknown, telling: Telling): string {
  const { say, locale, compass } = telling;
  if (value === null || value === undefined || value === '') return say('story.notStated');
  if (field === 'sections') return saySections(value, say);
  if (Array.isArray(value)) return value.length === 0 ? say('story.notStated') : value.map((one) => sayValue(area, field, one, telling)).join(', ');
  if (typeof value === 'object') return sayParts(area, value, telling);
  if (field === 'key' && typeof value === 'number') return noteNameOf(compass, value);
  if (typeof value === 'number') return field.endsWith('Midi') ? noteNameOf({ firstMidi: 0, lastMidi: 127 }, value + 1) : printField(field, value, locale);
  const choice = typeof value === 'string' ? value : value === true ? 'yes' : 'no';
  const word = field === 'state' ? `state.${choice}` : `${area.replace('.field', '')}.${field}.${choice}`;
  return say.knows(word) ? say(word) : choice;
}

/** What has a name by its name; anything else part by part: `from 0 mm to 40 mm`. */
function sayParts(area: string, value: object, telling: Telling): string {
  const { name } = value as { readonly name?: string };
  if (name !== undefined) return name;
  return Object.entries(value).filter(([, part]) => part !== null)
    .map(([field, part]) => `${sayMaybe(telling.say, `${area}.${field}`)} ${sayValue(area, field, part, telling)}`).join(' ');
}

/** `Bass 1–20, Tenor 21–51`. */
function saySections(value: unknown, say: Say): string {
  const sections = value as Instrument['sections'];
  return sections.length === 0 ? say('story.notStated') : sections.map(({ name, firstKey, lastKey }) => `${name} ${String(firstKey)}–${String(lastKey)}`).join(', ');
}

function sayIntent(body: unknown, { say, locale, compass }: Telling): string {
  const intent = body as { even: string; targetG?: number; toleranceG: number; anchors?: readonly { key: number; downWeightG: number }[] };
  const grams = (value: number): string => formatMeasure(value, { locale, decimals: decimalsFor(value, 1), unit: 'g' });
  const target = intent.anchors?.map(({ key, downWeightG }) => `${noteNameOf(compass, key)} ${grams(downWeightG)}`).join(', ') ?? grams(intent.targetG ?? 0);
  return say('story.event.intent', { even: intent.even, target, tolerance: grams(intent.toleranceG) });
}
