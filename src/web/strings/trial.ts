import { type KeyNumber, type QuantityName, type Reading, isQuantityName, understandFigure } from '#instrument';
import type { ScaleNote } from '#strings';
import type { ReadingEntry } from '#workshop';

/** Sizes tried for notes and not yet kept, as typed, by key; an empty text takes a size away. */
export type Trial = Readonly<Record<string, TrialNote>>;
export type TrialNote = Readonly<Partial<Record<QuantityName, string>>>;

/** Everything that makes the wire of a note; tried, planned and kept as a whole. */
export const wireFields = ['wireDiameterMm', 'hexCoreMm', 'innerWrapMm', 'outerWrapMm', 'overallDiameterMm', 'bareFrontMm', 'bareRearMm', 'stepFrontMm', 'stepRearMm'] as const satisfies readonly QuantityName[];

/** The sizes a trial can change, in the order they are shown. */
export const trialFields: readonly QuantityName[] = ['speakingLengthMm', 'stringCount', ...wireFields];

/** The sizes a note stands with, by the quantity each would be noted as. */
export function standingSizes({ speakingLengthMm, strings, wire }: ScaleNote): Readonly<Partial<Record<QuantityName, number>>> {
  const note = { ...(speakingLengthMm === undefined ? {} : { speakingLengthMm }), ...(strings === undefined ? {} : { stringCount: strings }) };
  if (wire === undefined) return note;
  if (wire.kind === 'plain') return { ...note, wireDiameterMm: wire.diameterMm };
  const { bareFrontMm, bareRearMm, stepFrontMm, stepRearMm, coreDiameterMm, coreShape } = wire;
  const ends = Object.fromEntries(Object.entries({ bareFrontMm, bareRearMm, stepFrontMm, stepRearMm }).filter(([, value]) => value !== undefined)) as Partial<Record<QuantityName, number>>;
  const core = coreShape === 'hex' ? { hexCoreMm: coreDiameterMm } : { wireDiameterMm: coreDiameterMm };
  if (!('wraps' in wire)) return { ...note, ...core, overallDiameterMm: wire.overallDiameterMm, ...ends };
  const [outer, inner] = wire.wraps.toReversed();
  return { ...note, ...core, ...(inner === undefined ? {} : { innerWrapMm: inner.wireDiameterMm }), ...(outer === undefined ? {} : { outerWrapMm: outer.wireDiameterMm }), ...ends };
}

const isOfWire = (quantity: QuantityName): boolean => (wireFields as readonly QuantityName[]).includes(quantity);

/** A trial with one more size tried. The first size of a wire takes the rest of the wire with it; a wrap by its wire replaces one measured over all, and the other way round. */
export function tried(trial: Trial, { key, quantity, text, standing }: { readonly key: KeyNumber; readonly quantity: QuantityName; readonly text: string; readonly standing: Readonly<Partial<Record<QuantityName, string>>> }): Trial {
  const before = trial[String(key)] ?? {};
  const wire = !isOfWire(quantity) || wireFields.some((name) => before[name] !== undefined) ? {} : Object.fromEntries(wireFields.map((name) => [name, standing[name] ?? '']));
  return { ...trial, [String(key)]: { ...before, ...wire, ...displacedBy(quantity, text), [quantity]: text } };
}

function displacedBy(quantity: QuantityName, text: string): TrialNote {
  if (text.trim() === '') return {};
  if (quantity === 'overallDiameterMm') return { innerWrapMm: '', outerWrapMm: '' };
  if (quantity === 'outerWrapMm' || quantity === 'innerWrapMm') return { overallDiameterMm: '' };
  if (quantity === 'hexCoreMm') return { wireDiameterMm: '' };
  return quantity === 'wireDiameterMm' ? { hexCoreMm: '' } : {};
}

/** A trial without one note. */
export function untried(trial: Trial, key: KeyNumber): Trial {
  const { [String(key)]: _, ...others } = trial;
  return others;
}

/** The readings of a plan with what is tried laid over them; a text that cannot be understood leaves its size out. */
export function triedReadings(planned: Iterable<Reading>, trial: Trial, { cycle, locale }: { readonly cycle: number; readonly locale: string }): readonly Reading[] {
  const stays = [...planned].filter(({ index, quantity }) => trial[String(index)]?.[quantity] === undefined);
  return [...stays, ...sizesOf(trial).flatMap(({ key, quantity, text }): readonly Reading[] => {
    const figure = understandFigure(quantity, text, { path: quantity, locale });
    if (!figure.ok) return [];
    return [{
      id: `trial ${String(key)} ${quantity}`, cycle, state: 'planned', quantity, scope: 'key', index: key, repeat: 1, typed: text, value: figure.value.value,
      outcome: null, uncertainty: null, basis: 'derived', remark: '', sessionId: null, at: '', by: '',
    }];
  })];
}

interface TriedSize {
  readonly key: KeyNumber;
  readonly quantity: QuantityName;
  readonly text: string;
}

function sizesOf(trial: Trial): readonly TriedSize[] {
  return Object.entries(trial).flatMap(([key, note]) =>
    Object.entries(note).flatMap(([quantity, text]) => (isQuantityName(quantity) ? [{ key: Number(key), quantity, text }] : [])));
}

/** Sizes tried that cannot be understood: they are to be put right before the trial is kept. */
export function misread(trial: Trial, locale: string): readonly TriedSize[] {
  return sizesOf(trial).filter(({ quantity, text }) => text.trim() !== '' && !understandFigure(quantity, text, { path: quantity, locale }).ok);
}

/** What keeping a trial writes as planned, as one step: sizes typed, sizes taken away where one stood, further repeats of them cleared. */
export function entriesOf(trial: Trial, planned: Iterable<Reading>): readonly ReadingEntry[] {
  const standing = [...planned];
  return sizesOf(trial).flatMap(({ key, quantity, text }): readonly ReadingEntry[] => {
    const place = { quantity, scope: 'key', index: key } as const;
    const there = standing.filter((reading) => reading.index === key && reading.quantity === quantity && reading.scope === 'key');
    const clears = there.filter(({ repeat }) => repeat > 1 || text.trim() === '').map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }));
    return text.trim() === '' ? clears : [{ ...place, typed: text.trim(), basis: 'derived' }, ...clears];
  });
}
