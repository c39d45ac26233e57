import { type Compass, type Instrument, type InstrumentDraft, compass85, compass88, instrumentDraftSchema, keyCountOf, keyOfNote, noteNameOf } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, all, ok, refuse } from '#result';
import { parseMeasure } from '#units';
import { keyTyped } from '../keys/key-typed.ts';

export type CompassChoice = '88' | '85' | 'other';

/** A section between two breaks as typed: its name, its first and last key by number or note. */
export interface SectionForm {
  readonly name: string;
  readonly first: string;
  readonly last: string;
}

/** A piano's card as typed; nothing is understood before it is asked for. */
export interface PianoForm {
  readonly name: string;
  readonly kind: InstrumentDraft['kind'];
  readonly compass: CompassChoice;
  readonly firstNote: string;
  readonly lastNote: string;
  readonly maker: string;
  readonly serial: string;
  readonly year: string;
  readonly length: string;
  readonly pitch: string;
  readonly sections: readonly SectionForm[];
  readonly remark: string;
}

/** Most sections a piano's card holds. */
export const MOST_SECTIONS = 12;

export const emptyPianoForm: PianoForm = {
  name: '', kind: 'grand', compass: '88', firstNote: 'A0', lastNote: 'C8', maker: '', serial: '', year: '', length: '', pitch: '440', sections: [], remark: '',
};

/** Notes of any keyboard, so that a name can be turned into a key before the compass is known. */
const wholeRange = { firstMidi: 0, lastMidi: 127 };

/** The card of a piano as its form shows it. */
export function pianoFormOf(instrument: Instrument): PianoForm {
  const { firstMidi, lastMidi } = instrument;
  const is = (compass: { firstMidi: number; lastMidi: number }): boolean => compass.firstMidi === firstMidi && compass.lastMidi === lastMidi;
  return {
    name: instrument.name,
    kind: instrument.kind,
    compass: is(compass88) ? '88' : is(compass85) ? '85' : 'other',
    firstNote: noteNameOf(wholeRange, firstMidi + 1),
    lastNote: noteNameOf(wholeRange, lastMidi + 1),
    maker: instrument.maker ?? '',
    serial: instrument.serial ?? '',
    year: instrument.year === null ? '' : String(instrument.year),
    length: instrument.lengthMm === null ? '' : String(instrument.lengthMm),
    pitch: String(instrument.a4Hz),
    sections: instrument.sections.map(({ name, firstKey, lastKey }) => ({ name, first: String(firstKey), last: String(lastKey) })),
    remark: instrument.remark,
  };
}

/** Understands a form, or says which fields are wrong, by the names of the card: `lengthMm`, `lastMidi`. */
export function pianoDraftOf(form: PianoForm, locale: string): Result<InstrumentDraft> {
  const issues: Issue[] = [];
  const measure = (typed: string, path: string, unit: 'mm' | 'Hz'): number | null => {
    if (typed.trim() === '') return null;
    const parsed = parseMeasure(typed, { unit, path, locale });
    if (parsed.ok) return parsed.value.value;
    issues.push(...parsed.issues);
    return null;
  };
  const note = (typed: string, path: string): number => {
    const key = keyOfNote(wholeRange, typed);
    if (key === undefined) issues.push({ code: 'format', path, given: typed, allowed: 'A0, C♯4, D♭4' });
    return (key ?? 1) - 1;
  };
  const year = form.year.trim();
  if (year !== '' && !/^\d{4}$/u.test(year)) issues.push({ code: 'format', path: 'year', given: form.year, allowed: '1885' });
  const compass = form.compass === '88' ? compass88 : form.compass === '85' ? compass85 : { firstMidi: note(form.firstNote, 'firstMidi'), lastMidi: note(form.lastNote, 'lastMidi') };
  const sections = sectionsOf(form.sections, compass);
  if (!sections.ok) issues.push(...sections.issues);
  const draft: InstrumentDraft = {
    ...compass,
    sections: sections.ok ? [...sections.value] : [],
    name: form.name,
    kind: form.kind,
    maker: orNull(form.maker),
    serial: orNull(form.serial),
    year: year === '' ? null : Number(year),
    lengthMm: measure(form.length, 'lengthMm', 'mm'),
    a4Hz: measure(form.pitch, 'a4Hz', 'Hz') ?? 440,
    remark: form.remark,
  };
  if (issues.length > 0) return { ok: false, issues };
  const checked = checkInput(instrumentDraftSchema, draft);
  return checked.ok ? ok(draft) : checked;
}

/** What a draft changes of an instrument; only the fields that differ, so that nobody's other edits are written over. */
export function changesOf(instrument: Instrument, draft: InstrumentDraft): Partial<InstrumentDraft> {
  const known = instrument as unknown as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.entries(draft).filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(known[name])));
}

type Section = Instrument['sections'][number];

/** Sections run up the keyboard: each begins above the one before it, and none ends before it begins. */
function sectionsOf(forms: readonly SectionForm[], compass: Compass): Result<readonly Section[]> {
  const last = keyCountOf(compass);
  const keyAt = (typed: string, path: string): Result<number> => {
    const key = keyTyped(typed, compass);
    return key === undefined ? refuse({ code: 'choice', path, given: typed, allowed: `a key 1 to ${String(last)} or a note`, params: { reason: 'sectionKey', min: 1, max: last } }) : ok(key);
  };
  const read = all(forms.map((form, index): Result<Section> => {
    const path = `sections[${String(index)}]`;
    const name = form.name.trim();
    const ends = all([keyAt(form.first, `${path}.firstKey`), keyAt(form.last, `${path}.lastKey`)]);
    const nameless: readonly Issue[] = name === '' ? [{ code: 'required', path: `${path}.name`, given: form.name, allowed: 'a name' }] : [];
    if (!ends.ok || nameless.length > 0) return { ok: false, issues: [...nameless, ...(ends.ok ? [] : ends.issues)] };
    const [firstKey = 1, lastKey = 1] = ends.value;
    return ok({ name, firstKey, lastKey });
  }));
  if (!read.ok) return read;
  const wrong = read.value.flatMap(({ firstKey, lastKey }, index): readonly Issue[] => {
    const path = `sections[${String(index)}]`;
    const before = read.value[index - 1]?.lastKey ?? 0;
    return [
      ...(firstKey > before ? [] : [{ code: 'order' as const, path: `${path}.firstKey`, given: firstKey, allowed: `a key above ${String(before)}`, params: { reason: 'sectionFirst', min: before } }]),
      ...(lastKey >= firstKey ? [] : [{ code: 'order' as const, path: `${path}.lastKey`, given: lastKey, allowed: `key ${String(firstKey)} or above`, params: { reason: 'sectionLast', min: firstKey } }]),
    ];
  });
  return wrong.length > 0 ? { ok: false, issues: wrong } : read;
}

function orNull(typed: string): string | null {
  const text = typed.trim();
  return text === '' ? null : text;
}
