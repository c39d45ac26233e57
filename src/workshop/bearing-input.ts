import { type Instrument, type KeyNumber, type Reading, type ScaleTerms, type State, compassOf, keysOf } from '#instrument';
import type { BellyInput, BellyNote, BearingRead, Pull } from '#belly';
import type { AnalysedNote } from '#strings';
import { degrees } from '#units';
import { readsOf } from './bearing-reads.ts';
import { type BellySizes, type StationHeights, heightsOf } from './bearing-stations.ts';
import { sizesByKey } from './scale-sizes.ts';

/** What the bearing of one state of an instrument is read from. */
export interface BearingMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'sections'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly terms: ScaleTerms | null;
  /** The strings of that state, worked out: lengths, counts and tensions. */
  readonly strings: readonly AnalysedNote[];
  /** The strings as planned, which stand in where the finished ones were not taken down again. */
  readonly plannedStrings?: readonly AnalysedNote[];
}

/** What had to be taken for granted, or left open, because it was not stated, and for how many notes. */
export interface BearingAssumption {
  readonly what: 'heightEstimated' | 'lengthEstimated' | 'fromFound' | 'stringsPlanned' | 'noTension' | 'noLength' | 'noSpans' | 'oneAngle' | 'otherReadings' | 'noSections' | 'noDoubt';
  readonly notes: readonly KeyNumber[];
}

export interface GatheredBearing {
  readonly input: BellyInput;
  readonly assumed: readonly BearingAssumption[];
}

/**
 * Gathers standing readings into what the analysis of the belly takes, and lists what had to be assumed.
 *
 * Heights measured at the note come first, then both angles, then the gauge, then heights laid between stations; the other
 * ways it was read stay beside. A missing height or back length is laid on a straight line over the keys between measured
 * neighbours of one section, and told as estimated; beyond the last station of a section nothing is laid. Tension and speaking
 * length come from the strings. Of a plan, what it does not say stays as found; where it moves a height, angles and gauge
 * readings of before no longer hold. Nothing else is filled in.
 * @source OWN
 */
export function bearingInputOf(material: BearingMaterial): GatheredBearing {
  const { instrument, state, terms, strings, plannedStrings = [] } = material;
  const sizes = bellySizesOf(material);
  const stations = heightsOf(sizes, instrument.sections);
  const [own, planned] = [byKey(strings), byKey(plannedStrings)];
  const rows = keysOf(compassOf(instrument)).map((key): Row => {
    const string = stringOf(own.get(key), planned.get(key));
    const reads = readsOf({ sizes: sizes.get(key) ?? {}, heights: stations.get(key) ?? {}, string: string.note, terms });
    return { key, sizes: sizes.get(key) ?? {}, heights: stations.get(key) ?? {}, isStandIn: string.isStandIn, string: string.note, reads, pull: pullOf(string.note) };
  });
  const notes = rows.map(({ key, reads: [read, ...also], pull }): BellyNote => ({ key, also, ...(read === undefined ? {} : { read }), ...(pull === undefined ? {} : { pull }) }));
  return { input: { notes, sections: instrument.sections, asked: askedOf(terms) }, assumed: assumptionsOf(rows, material, state === 'planned' ? sizesByKey(material.readings, material.cycle, state, 'belly') : undefined) };
}

/** One key with everything known of it. */
interface Row {
  readonly key: KeyNumber;
  readonly sizes: BellySizes;
  readonly heights: StationHeights;
  readonly string: AnalysedNote | undefined;
  readonly isStandIn: boolean;
  readonly reads: readonly BearingRead[];
  readonly pull: Pull | undefined;
}

function bellySizesOf({ readings, cycle, state }: BearingMaterial): ReadonlyMap<KeyNumber, BellySizes> {
  const own = sizesByKey(readings, cycle, state, 'belly');
  if (state !== 'planned') return own;
  const found = sizesByKey(readings, cycle, 'found', 'belly');
  return new Map([...new Set([...own.keys(), ...found.keys()])].map((key) => [key, planOver(own.get(key) ?? {}, found.get(key) ?? {})]));
}

/** What a plan says, over what was found where it says nothing; angles and gauge of before only while no height moves. */
function planOver(plan: BellySizes, found: BellySizes): BellySizes {
  const moves = plan.frontHeightMm ?? plan.bridgeHeightMm ?? plan.rearHeightMm ?? plan.backLengthMm;
  if (moves === undefined) return { ...found, ...plan };
  const { frontBearingDeg: _, rearBearingDeg: __, bearingGaugeMm: ___, ...stays } = found;
  return { ...stays, ...plan };
}

const byKey = (notes: readonly AnalysedNote[]): ReadonlyMap<KeyNumber, AnalysedNote> => new Map(notes.map((note) => [note.key, note]));

/** The strings of the state itself, or the planned ones where they were not taken down again. */
function stringOf(own: AnalysedNote | undefined, planned: AnalysedNote | undefined): { readonly note: AnalysedNote | undefined; readonly isStandIn: boolean } {
  if (own?.figures !== undefined || planned?.figures === undefined) return { note: own, isStandIn: false };
  return { note: planned, isStandIn: true };
}

function pullOf(note: AnalysedNote | undefined): Pull | undefined {
  if (note?.figures === undefined || note.strings === undefined) return undefined;
  const { tensionN, uncertainty } = note.figures;
  return { tensionN, strings: note.strings, ...(uncertainty === undefined ? {} : { tensionUncertaintyN: uncertainty.tensionUncertaintyN }) };
}

function askedOf(terms: ScaleTerms | null): BellyInput['asked'] {
  if (terms?.bearingTargetDeg == null || terms.bearingToleranceDeg == null) return {};
  return { leastTotalDeg: degrees(terms.bearingTargetDeg - terms.bearingToleranceDeg), mostTotalDeg: degrees(terms.bearingTargetDeg + terms.bearingToleranceDeg) };
}

function assumptionsOf(rows: readonly Row[], { instrument, terms }: BearingMaterial, plan: ReadonlyMap<KeyNumber, BellySizes> | undefined): readonly BearingAssumption[] {
  const where = (what: BearingAssumption['what'], holds: (row: Row) => boolean): BearingAssumption => ({ what, notes: rows.filter(holds).map(({ key }) => key) });
  const hasAny = ({ sizes }: Row): boolean => Object.keys(sizes).length > 0;
  const fromHeights = ({ reads: [read] }: Row): boolean => read?.source === 'heights';
  return [
    where('heightEstimated', (row) => fromHeights(row) && Object.values(row.heights).some(({ isEstimated }) => isEstimated)),
    where('noSections', (row) => instrument.sections.length === 0 && hasAny(row) && row.reads.length === 0),
    where('lengthEstimated', (row) => fromHeights(row) && row.string?.isLengthEstimated === true),
    where('fromFound', (row) => plan !== undefined && row.reads.length > 0 && !plan.has(row.key)),
    where('stringsPlanned', ({ isStandIn, reads }) => isStandIn && reads.length > 0),
    where('noLength', ({ heights, string }) => ['frontHeightMm', 'bridgeHeightMm', 'rearHeightMm', 'backLengthMm'].every((name) => name in heights) && string?.speakingLengthMm === undefined),
    where('noTension', ({ reads, pull }) => reads.length > 0 && pull === undefined),
    where('noSpans', ({ sizes }) => sizes.bearingGaugeMm !== undefined && (terms?.gaugeFrontSpanMm == null || terms.gaugeRearSpanMm == null)),
    where('oneAngle', ({ reads: [read] }) => read?.source === 'angles' && (read.frontDeg === undefined || read.rearDeg === undefined)),
    where('otherReadings', ({ reads }) => reads.length > 1),
    where('noDoubt', (row) => fromHeights(row) && row.reads[0]?.source === 'heights' && !row.reads[0].isEstimated && row.string?.isLengthEstimated !== true && row.reads[0].doubt === undefined),
  ].filter(({ notes }) => notes.length > 0);
}
