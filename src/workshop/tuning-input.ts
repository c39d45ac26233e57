import { type Instrument, type KeyNumber, type Reading, type ScaleTerms, type State, type TuningTerms, compassOf, equalTemperedHzOf, keysOf } from '#instrument';
import { type AnalysedNote, analyseScale, partialsOfNote } from '#strings';
import { type StiffNote, USUAL_SMOOTHNESS, usualOctaveRules } from '#tuning';
import { ratio } from '#units';
import { type ScaleAssumption, scaleInputOf } from './scale-input.ts';
import { type NoteSizes, hasWire, sizesByKey } from './scale-sizes.ts';

/** What the tuning of one state of an instrument is worked out from. */
export interface TuningMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'a4Hz' | 'sections'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  /** Whose strings the curve is laid over. */
  readonly state: State;
  readonly tuning: TuningTerms | null;
  readonly scale: ScaleTerms | null;
}

/** What had to be taken for granted, and for how many notes. */
export interface TuningAssumption {
  readonly what: 'computed' | 'between' | 'left' | 'planned' | 'equalTemperament' | 'usualOctaves' | 'usualSmoothness';
  readonly notes: readonly KeyNumber[];
}

/** Where the inharmonicity of a note comes from. */
export type CurveBasis = 'measured' | 'computed' | 'between';

/** One key of the curve as the operation `tuning-curve` takes it. */
export type CurveEntry = { readonly key: KeyNumber; readonly inharmonicityB: number; readonly inharmonicityUncertainty?: number } | { readonly key: KeyNumber; readonly partialsHz: readonly number[] };

export interface GatheredTuning {
  /** What the operation `tuning-curve` is given; absent while no note has a string or a measured B. */
  readonly input?: Readonly<Record<string, unknown>> & { readonly keys: readonly CurveEntry[]; readonly anchorKey: KeyNumber };
  readonly bases: ReadonlyMap<KeyNumber, CurveBasis>;
  readonly assumed: readonly TuningAssumption[];
  /** What the strings behind computed notes had to assume. */
  readonly ofStrings: readonly ScaleAssumption[];
}

/** MIDI number of A0, with which the usual octave rules count from key 1, and of A4. */
const [A0, A4] = [21, 69];
/** Partials an octave type may ask of a wound string. */
const MOST_PARTIALS = 6;

/**
 * Gathers what the tuning curve of a state is laid over: B measured there, else what its strings are worked out to, else ln B laid
 * on a line between neighbours of the same section; notes beyond are left out. A state as finished without strings of its own
 * takes those of the plan. Wound strings go in by their partials, plain ones by B at the exact tension. Everything taken for
 * granted is listed.
 * @source OWN
 */
export function tuningInputOf(material: TuningMaterial): GatheredTuning {
  const { instrument, readings, cycle, state, tuning } = material;
  const compass = compassOf(instrument);
  const stringState = state === 'finished' && ![...sizesByKey(readings, cycle, state).values()].some(hasWire) ? 'planned' : state;
  const gathered = scaleInputOf({ ...material, terms: material.scale, state: stringState });
  const measured = sizesByKey(readings, cycle, state, 'tuning');
  const notes = new Map(analyseScale(gathered.input).notes.map((note) => [note.key, note]));
  const own = keysOf(compass).flatMap((key) => knownAt(key, measured.get(key), notes.get(key)));
  const laid = keysOf(compass).flatMap((key) => (own.some(({ entry }) => entry.key === key) ? [] : betweenAt(key, own, instrument.sections)));
  const known = [...own, ...laid].sort((a, b) => a.entry.key - b.entry.key);
  const of = (basis: CurveBasis): readonly KeyNumber[] => known.filter((one) => one.basis === basis).map(({ entry }) => entry.key);
  const computed = new Set(of('computed'));
  const assumed: readonly TuningAssumption[] = [
    { what: 'computed', notes: of('computed') },
    { what: 'planned', notes: stringState === state ? [] : of('computed') },
    { what: 'between', notes: of('between') },
    { what: 'left', notes: known.length === 0 ? [] : keysOf(compass).filter((key) => !known.some(({ entry }) => entry.key === key)) },
  ];
  return {
    ...(known.length === 0 ? {} : { input: { keys: known.map(({ entry }) => entry), ...askedOf(instrument, tuning) } }),
    bases: new Map(known.map(({ entry, basis }) => [entry.key, basis])),
    assumed: [...assumed.filter(({ notes: keys }) => keys.length > 0), ...unstated(tuning).map((what) => ({ what, notes: [] }))],
    ofStrings: gathered.assumed.map((one) => ({ ...one, notes: one.notes.filter((key) => computed.has(key)) })).filter(({ what, notes: keys }) => keys.length > 0 && ABOUT_SOUND.has(what)),
  };
}

/** Assumptions on strings that reach their partials; strength and counts do not. */
const ABOUT_SOUND: ReadonlySet<ScaleAssumption['what']> = new Set(['equalTemperament', 'lengthEstimated', 'fromFound', 'copperWrap', 'closePacking', 'noBareEnds', 'wiresOverOverall', 'noSections']);

interface Known {
  readonly entry: CurveEntry;
  readonly basis: CurveBasis;
}

function knownAt(key: KeyNumber, sizes: NoteSizes | undefined, note: AnalysedNote | undefined): readonly Known[] {
  const measured = sizes?.inharmonicityB;
  if (measured !== undefined) {
    const { value, uncertainty } = measured;
    return [{ basis: 'measured', entry: { key, inharmonicityB: value, ...(uncertainty === undefined ? {} : { inharmonicityUncertainty: uncertainty }) } }];
  }
  const string = note === undefined ? undefined : partialsOfNote(note, MOST_PARTIALS);
  if (string === undefined) return [];
  const standard = note?.figures?.uncertainty?.inharmonicityUncertainty;
  if ('partialsHz' in string) return [{ basis: 'computed', entry: { key, partialsHz: string.partialsHz } }];
  return [{ basis: 'computed', entry: { key, inharmonicityB: string.inharmonicityB, ...(standard === undefined ? {} : { inharmonicityUncertainty: standard }) } }];
}

/** ln B on a line between the nearest known neighbours of the section that are known by their B. */
function betweenAt(key: KeyNumber, known: readonly Known[], sections: Instrument['sections']): readonly Known[] {
  const section = sections.find(({ firstKey, lastKey }) => key >= firstKey && key <= lastKey);
  const near = known.flatMap(({ entry }) => (section !== undefined && 'inharmonicityB' in entry && entry.inharmonicityB > 0 && entry.key >= section.firstKey && entry.key <= section.lastKey ? [entry] : []));
  const [below, above] = [near.findLast((entry) => entry.key < key), near.find((entry) => entry.key > key)];
  if (below === undefined || above === undefined) return [];
  const share = (key - below.key) / (above.key - below.key);
  return [{ basis: 'between', entry: { key, inharmonicityB: below.inharmonicityB ** (1 - share) * above.inharmonicityB ** share } }];
}

function askedOf({ firstMidi, a4Hz }: TuningMaterial['instrument'], tuning: TuningTerms | null) {
  const shift = A0 - firstMidi;
  const usual = usualOctaveRules.map((rule) => ({ ...rule, fromKey: Math.max(1, rule.fromKey + shift), toKey: Math.min(128, rule.toKey + shift) })).filter(({ fromKey, toKey }) => fromKey <= toKey);
  return {
    octaves: tuning === null || tuning.octaves.length === 0 ? usual : tuning.octaves.map((rule) => ({ ...rule, weight: 1 })),
    anchorKey: A4 - firstMidi + 1, a4Hz, smoothness: tuning?.smoothness ?? USUAL_SMOOTHNESS, temperament: tuning?.temperament ?? 'equal', root: tuning?.root ?? 'C',
  };
}

function unstated(tuning: TuningTerms | null): readonly TuningAssumption['what'][] {
  return [
    ...(tuning?.temperament == null ? ['equalTemperament' as const] : []),
    ...(tuning === null || tuning.octaves.length === 0 ? ['usualOctaves' as const] : []),
    ...(tuning?.smoothness == null ? ['usualSmoothness' as const] : []),
  ];
}

/** The string of a curve entry as the physics takes it. */
export function stiffNoteOf(entry: CurveEntry): StiffNote {
  return 'partialsHz' in entry ? { partialsHz: entry.partialsHz as never } : { inharmonicityB: ratio(entry.inharmonicityB) };
}

/** The pitch of a note as read: cents of partial 1 off equal temperament at the instrument's A4. */
export interface HeardPitch {
  readonly offsetCt: number;
  readonly uncertaintyCt?: number;
  readonly quantity: 'pitchHz' | 'pitchOffsetCt';
}

/** The pitch of every note read in one state: its frequency, else the cents noted of it. */
export function pitchesOf(instrument: TuningMaterial['instrument'], readings: readonly Reading[], cycle: number, state: State): ReadonlyMap<KeyNumber, HeardPitch> {
  const compass = compassOf(instrument);
  const noted = [...sizesByKey(readings, cycle, state)].flatMap(([key, { pitchOffsetCt: size }]) => (size === undefined ? [] : [[key, { offsetCt: size.value, quantity: 'pitchOffsetCt' }] as const]));
  const heard = [...sizesByKey(readings, cycle, state, 'tuning')].flatMap(([key, { pitchHz: size }]) => {
    if (size === undefined) return [];
    const offsetCt = 1200 * Math.log2(size.value / equalTemperedHzOf(compass, key, instrument.a4Hz));
    return [[key, { offsetCt, quantity: 'pitchHz', ...(size.uncertainty === undefined ? {} : { uncertaintyCt: (1200 / Math.LN2) * (size.uncertainty / size.value) }) }] as const];
  });
  return new Map<KeyNumber, HeardPitch>([...noted, ...heard]);
}

/** Spread of the unison of every note read in one state; cents. */
export function unisonsOf(readings: readonly Reading[], cycle: number, state: State): ReadonlyMap<KeyNumber, number> {
  return new Map([...sizesByKey(readings, cycle, state, 'tuning')].flatMap(([key, { unisonSpreadCt }]) => (unisonSpreadCt === undefined ? [] : [[key, unisonSpreadCt.value] as const])));
}
