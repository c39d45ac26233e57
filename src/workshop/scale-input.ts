import { type Instrument, type KeyNumber, type Reading, type ScaleTerms, type State, compassOf, equalTemperedHzOf, keysOf } from '#instrument';
import { copperWire, ironWire } from '#materials';
import type { ScaleInput, ScaleNote } from '#strings';
import { type Millimetres, hertz, percent } from '#units';
import { type NoteSizes, hasWire, sizesByKey } from './scale-sizes.ts';
import { lengthsOf } from './scale-lengths.ts';
import { type WireTerms, certificateFor, wireOf } from './scale-wire.ts';

/** What the scale of one state of an instrument is read from. */
export interface ScaleMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'a4Hz' | 'sections'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly terms: ScaleTerms | null;
}

/** What had to be taken for granted, because it was not stated, and for how many notes. */
export interface ScaleAssumption {
  readonly what: 'equalTemperament' | 'lengthEstimated' | 'fromFound' | 'copperWrap' | 'closePacking' | 'noBareEnds' | 'strengthTable' | 'shopStrength' | 'wiresOverOverall' | 'noCount' | 'noSections';
  readonly notes: readonly KeyNumber[];
}

export interface GatheredScale {
  readonly input: ScaleInput;
  readonly assumed: readonly ScaleAssumption[];
}

/**
 * Gathers standing readings into what the analysis of a scale takes, and lists what had to be assumed.
 *
 * f = a4·2^((midi − 69)/12 + offset/1200). A missing length is laid between measured neighbours of the same section on a line in
 * ln L, and told as estimated; beyond the last measured note of a section nothing is laid. Of a plan, what it does not say stays as
 * found: length, count and pitch each for itself, the wire only as a whole. Nothing else is filled in.
 * @source OWN
 */
export function scaleInputOf({ instrument, readings, cycle, state, terms }: ScaleMaterial): GatheredScale {
  const compass = compassOf(instrument);
  const own = sizesByKey(readings, cycle, state);
  const sizes = state === 'planned' ? planOver(own, sizesByKey(readings, cycle, 'found')) : own;
  const lengths = lengthsOf(sizes, instrument.sections);
  const wireTerms = wireTermsOf(terms, state);
  const notes = keysOf(compass).map((key): ScaleNote => {
    const of = sizes.get(key) ?? {};
    const frequencyHz = hertz(equalTemperedHzOf(compass, key, instrument.a4Hz) * 2 ** ((of.pitchOffsetCt?.value ?? 0) / 1200));
    const length = lengths.get(key);
    const wire = wireOf(of, wireTerms);
    const certificateMPa = certificateFor(wire.wire, wireTerms.certified);
    const doubt = doubtOf(of, terms, length?.isEstimated === true);
    return {
      key, frequencyHz, isLengthEstimated: length?.isEstimated ?? false, ...wire,
      ...(length === undefined ? {} : { speakingLengthMm: length.lengthMm }),
      ...(of.stringCount === undefined ? {} : { strings: of.stringCount.value }),
      ...(certificateMPa === undefined ? {} : { certificateMPa }),
      ...(doubt === undefined ? {} : { doubt }),
    };
  });
  const input: ScaleInput = {
    notes, sections: instrument.sections,
    ...(terms?.strengthModel == null ? {} : { strengthModel: terms.strengthModel }),
    asked: { ...(terms?.leastBreakingPct == null ? {} : { leastPct: percent(terms.leastBreakingPct) }), ...(terms?.mostBreakingPct == null ? {} : { mostPct: percent(terms.mostBreakingPct) }) },
  };
  return { input, assumed: assumptionsOf(input, sizes, { own, terms, isPlan: state === 'planned' }) };
}

/** What a plan says, over what was found where it says nothing; a wire is taken as a whole. */
function planOver(plan: ReadonlyMap<KeyNumber, NoteSizes>, found: ReadonlyMap<KeyNumber, NoteSizes>): ReadonlyMap<KeyNumber, NoteSizes> {
  const keys = new Set([...plan.keys(), ...found.keys()]);
  return new Map([...keys].map((key) => {
    const [own, before] = [plan.get(key) ?? {}, found.get(key) ?? {}];
    const { speakingLengthMm, stringCount, pitchOffsetCt } = before;
    const placed: NoteSizes = { ...(speakingLengthMm && { speakingLengthMm }), ...(stringCount && { stringCount }), ...(pitchOffsetCt && { pitchOffsetCt }) };
    return [key, { ...(hasWire(own) ? placed : before), ...own }];
  }));
}

function wireTermsOf(terms: ScaleTerms | null, state: State): WireTerms {
  return {
    wrapDensityKgM3: (terms?.wrapMetal === 'iron' ? ironWire : copperWire).densityKgM3.value,
    ...(terms?.wrapPacking == null ? {} : { packing: terms.wrapPacking }),
    // What a coil of the shop is good for says nothing of the wire that was found.
    certified: state === 'found' ? [] : (terms?.wires ?? []),
  };
}

/** How sure the sizes of a note are: a reading's own uncertainty before the terms'; unknown unless both length and diameter are. */
function doubtOf({ speakingLengthMm, wireDiameterMm, hexCoreMm, outerWrapMm, overallDiameterMm }: NoteSizes, terms: ScaleTerms | null, isEstimated: boolean): ScaleNote['doubt'] {
  if (isEstimated) return undefined;
  const lengthUncertaintyMm = speakingLengthMm?.uncertainty ?? terms?.lengthUncertaintyMm;
  const diameterUncertaintyMm = (hexCoreMm ?? wireDiameterMm)?.uncertainty ?? terms?.diameterUncertaintyMm;
  const wrapUncertaintyMm = (outerWrapMm ?? overallDiameterMm)?.uncertainty ?? terms?.diameterUncertaintyMm;
  if (lengthUncertaintyMm == null || diameterUncertaintyMm == null) return undefined;
  return {
    lengthUncertaintyMm: lengthUncertaintyMm as Millimetres, diameterUncertaintyMm: diameterUncertaintyMm as Millimetres,
    ...(wrapUncertaintyMm == null ? {} : { wrapUncertaintyMm: wrapUncertaintyMm as Millimetres }),
  };
}

interface Behind {
  readonly own: ReadonlyMap<KeyNumber, NoteSizes>;
  readonly terms: ScaleTerms | null;
  readonly isPlan: boolean;
}

function assumptionsOf({ notes, sections }: ScaleInput, sizes: ReadonlyMap<KeyNumber, NoteSizes>, { own, terms, isPlan }: Behind): readonly ScaleAssumption[] {
  const where = (what: ScaleAssumption['what'], holds: (note: ScaleNote, of: NoteSizes) => boolean): ScaleAssumption =>
    ({ what, notes: notes.filter((note) => holds(note, sizes.get(note.key) ?? {})).map(({ key }) => key) });
  const isKnown = ({ wire, speakingLengthMm }: ScaleNote): boolean => wire !== undefined && speakingLengthMm !== undefined;
  const isWound = (note: ScaleNote): boolean => isKnown(note) && note.wire?.kind === 'wound';
  return [
    where('lengthEstimated', ({ isLengthEstimated }) => isLengthEstimated),
    where('noSections', ({ speakingLengthMm, wire }) => sections.length === 0 && wire !== undefined && speakingLengthMm === undefined),
    where('fromFound', ({ key, wire }) => isPlan && wire !== undefined && !hasWire(own.get(key) ?? {})),
    where('noCount', (note) => isKnown(note) && note.strings === undefined),
    where('equalTemperament', (note, { pitchOffsetCt }) => isKnown(note) && pitchOffsetCt === undefined),
    where('strengthTable', (note) => terms?.strengthModel == null && isKnown(note) && note.certificateMPa === undefined),
    where('shopStrength', (note) => isKnown(note) && note.certificateMPa !== undefined),
    where('copperWrap', (note) => isWound(note) && terms?.wrapMetal == null),
    where('closePacking', (note) => isWound(note) && note.wire !== undefined && 'overallDiameterMm' in note.wire && terms?.wrapPacking == null),
    where('wiresOverOverall', (note, { outerWrapMm, overallDiameterMm }) => isWound(note) && outerWrapMm !== undefined && overallDiameterMm !== undefined),
    where('noBareEnds', (note, { bareFrontMm, bareRearMm }) => isWound(note) && (bareFrontMm === undefined || bareRearMm === undefined)),
  ].filter(({ notes: keys }) => keys.length > 0);
}
