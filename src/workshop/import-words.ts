import { type Basis, type Outcome, bases, outcomes } from '#instrument';
import { type Language, createSay, languageOf, languages } from '#text';

/** Words a cell may hold in place of a figure, beside the names and the catalogue's own words. @source PRACTICE */
const OUTCOME_WORDS: Readonly<Record<Outcome, readonly string[]>> = {
  sticks: ['sticks', 'stuck', 'sticking', 'klemmt', 'hängt'],
  noReturn: ['does not return', 'no return', 'kehrt nicht zurück', 'kommt nicht zurück'],
  overRange: ['over range', 'overrange', 'too heavy', 'über dem Messbereich', 'über Messbereich', 'Messbereich überschritten'],
  missing: ['missing', 'fehlt', 'fehlend'],
  unweighable: ['cannot be weighed', 'unweighable', 'nicht wägbar', 'nicht messbar'],
};
const BASIS_WORDS: Readonly<Record<Basis, readonly string[]>> = {
  measured: ['measured', 'gemessen'],
  estimated: ['estimated', 'geschätzt'],
  derived: ['derived', 'abgeleitet'],
};

const plain = (text: string): string => text.trim().toLowerCase().replace(/[\s_-]+/gu, ' ');

let outcomesByWord: ReadonlyMap<string, Outcome> | undefined;

/** The outcome a cell names in any language, or `undefined` when it holds something else. */
export function outcomeOfWord(cell: string): Outcome | undefined {
  const wordsOf = (outcome: Outcome): readonly string[] => [outcome, ...OUTCOME_WORDS[outcome], ...languages.map((language) => outcomeWord(outcome, language))];
  outcomesByWord ??= new Map(outcomes.flatMap((outcome) => wordsOf(outcome).map((word) => [plain(word), outcome])));
  return outcomesByWord.get(plain(cell));
}

/** The word an export writes for an outcome; `outcomeOfWord` reads it back. */
export function outcomeWord(outcome: Outcome, locale: string): string {
  const key = `outcome.${outcome}`;
  const say = createSay(locale);
  return say.knows(key) ? say(key) : outcome;
}

/** The basis a cell names in any language, or `undefined` when it names none. */
export function basisOfWord(cell: string): Basis | undefined {
  return bases.find((basis) => BASIS_WORDS[basis].some((known) => plain(known) === plain(cell)));
}

/** The word an export writes for a basis; `basisOfWord` reads it back. */
export function basisWord(basis: Basis, locale: string): string {
  return BASIS_WORDS[basis][languageOf(locale) === 'de' ? 1 : 0] ?? basis;
}

type Part = 'natural' | 'sharp' | 'instrument';

const PART_WORDS: Readonly<Record<Part, Readonly<Record<Language, string>> & { readonly also: readonly string[] }>> = {
  natural: { en: 'naturals', de: 'Untertasten', also: ['natural', 'white keys', 'untertaste', 'weiße Tasten'] },
  sharp: { en: 'sharps', de: 'Obertasten', also: ['sharp', 'black keys', 'obertaste', 'schwarze Tasten'] },
  instrument: { en: 'instrument', de: 'Instrument', also: ['piano', 'whole'] },
};

/** Place of a row that stands for a colour of key or the whole instrument, from the word in its key column. */
export function partOfWord(cell: string): { readonly scope: 'colour' | 'instrument'; readonly index: number } | undefined {
  const part = (['natural', 'sharp', 'instrument'] as const).find((name) => [PART_WORDS[name].en, PART_WORDS[name].de, ...PART_WORDS[name].also].some((known) => plain(known) === plain(cell)));
  if (part === undefined) return undefined;
  return part === 'instrument' ? { scope: 'instrument', index: 0 } : { scope: 'colour', index: part === 'natural' ? 0 : 1 };
}

/** The word an export writes in the key column of such a row; `partOfWord` reads it back. */
export function partWord(place: { readonly scope: 'colour' | 'instrument'; readonly index: number }, locale: string): string {
  const part = place.scope === 'instrument' ? 'instrument' : place.index === 0 ? 'natural' : 'sharp';
  return PART_WORDS[part][languageOf(locale)];
}

const LOOKS_LIKE_FORMULA = /^'*[=+\-@\t\r]/u;

/** A remark that a spreadsheet would take for a formula gets an apostrophe in front; others stay. `unguarded` takes it off again. */
export function guarded(remark: string): string {
  return LOOKS_LIKE_FORMULA.test(remark) ? `'${remark}` : remark;
}

/** The remark `guarded` was given. */
export function unguarded(cell: string): string {
  return /^'+[=+\-@\t\r]/u.test(cell) ? cell.slice(1) : cell;
}
