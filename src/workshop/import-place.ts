import { type Compass, type KeyNumber, type Scope, keyCountOf, keyOfNote, noteNameOf } from '#instrument';
import { type Issue, type Result, ok, refuse } from '#result';
import { partOfWord } from './import-words.ts';

/** What a row of the file is about: a key, the naturals or sharps, or the whole instrument. */
export interface RowPlace {
  readonly scope: Scope;
  readonly index: number;
}

export interface RowNames {
  readonly key: string;
  readonly note: string;
  /** Where it stands, for issues. */
  readonly path: string;
}

export interface NamingContext {
  readonly compass: Compass;
  /** How the file writes the note below C: `H` and B♭ as `B` (German), or as `B`; unknown when no H stands in it. */
  readonly usesH: boolean;
  /** True for a reader to whom a lone `B` could be B♭. */
  readonly readsGerman: boolean;
}

/**
 * Place of a row by its key number (`40`, `40.0`), its note name (`C#4`), or the words for naturals, sharps and instrument.
 * Errors: neither given, no key of this compass, number and note that name different keys, a `B` that may be B or B♭.
 */
export function placeOfRow({ key, note, path }: RowNames, naming: NamingContext): Result<RowPlace> {
  const [first, second] = [key.trim(), note.trim()];
  if (first === '' && second === '') {
    return refuse({ code: 'required', path, given: '', allowed: 'a key number or a note name', params: { reason: 'importKey' } });
  }
  const part = partOfWord(first === '' ? second : first);
  if (part !== undefined) return ok(part);
  if (first === '') return placeOfNote(second, path, naming);
  const number = keyOfNumber(first, naming.compass);
  if (number === undefined) return /^\d/u.test(first) ? noSuchKey(first, path, naming.compass) : placeOfNote(first, path, naming);
  return second === '' || keysOfNote(second, naming).includes(number) ? ok({ scope: 'key', index: number }) : refuse(contradiction(number, second, path, naming.compass));
}

function keyOfNumber(text: string, compass: Compass): KeyNumber | undefined {
  const key = /^\d{1,3}(?:[.,]0*)?$/u.test(text) ? Number.parseInt(text, 10) : 0;
  return key >= 1 && key <= keyCountOf(compass) ? key : undefined;
}

function placeOfNote(note: string, path: string, naming: NamingContext): Result<RowPlace> {
  const keys = keysOfNote(note, naming);
  const [only, other] = keys;
  if (only === undefined) return noSuchKey(note, path, naming.compass);
  if (other === undefined) return ok({ scope: 'key', index: only });
  return refuse({ code: 'ambiguous', path, given: note, allowed: 'B♭ as Bb3, the note below C as H3, or the key number', params: { reason: 'importNote' } });
}

/** Keys a note name can mean, `Cis4` and `Es4` included: two for a lone `B` where nothing in the file tells B from B♭. */
function keysOfNote(written: string, { compass, usesH, readsGerman }: NamingContext): readonly KeyNumber[] {
  const note = written.replace(/^([a-h])is(?=-?\d)/iu, '$1#').replace(/^([a-h])e?s(?=-?\d)/iu, '$1b');
  const loneB = /^b(?=-?\d)/iu;
  const found = (name: string): readonly KeyNumber[] => [keyOfNote(compass, name)].flatMap((key) => (key === undefined ? [] : [key]));
  const flat = loneB.test(note) ? found(note.replace(loneB, 'Bb')) : [];
  if (usesH && flat.length > 0) return flat;
  return readsGerman ? [...found(note), ...flat] : found(note);
}

function noSuchKey(given: string, path: string, compass: Compass): Result<never> {
  const max = keyCountOf(compass);
  const [low, high] = [noteNameOf(compass, 1), noteNameOf(compass, max)];
  return refuse({ code: 'choice', path, given, allowed: `a key 1 to ${String(max)}, a note ${low} to ${high}, or naturals, sharps`, params: { reason: 'importKey', max, low, high } });
}

function contradiction(key: KeyNumber, given: string, path: string, compass: Compass): Issue {
  const note = noteNameOf(compass, key);
  return { code: 'conflict', path, given, allowed: `${note}, the note of key ${String(key)}`, params: { reason: 'importNote', key, note } };
}
