import type { KeyNumber, Reading } from '#instrument';
import { type AnalysedNote, type RescaleProblem, type Rescaled, type ScaleAnalysis, type ScaleWire, analyseScale, roughnessOf } from '#strings';
import { scaleInputOf, wireOfCandidate } from '#workshop';
import type { Piano } from '../../api/piano.tsx';
import type { ReadingBook } from '../../api/reading-book.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { type Trial, type TrialNote, standingSizes, triedReadings, wireFields } from '../trial.ts';

/** The sizes of a wire as they would be typed; what the wire has not is taken away. */
export function triedWire(note: Pick<AnalysedNote, 'key' | 'frequencyHz'>, wire: ScaleWire, locale: string): TrialNote {
  const sizes = standingSizes({ ...note, isLengthEstimated: false, wire });
  return Object.fromEntries(wireFields.map((name) => [name, sizes[name] === undefined ? '' : wholeNumber(sizes[name], locale)]));
}

/** What a rescale chose, as sizes tried: every note that was not to keep its string. */
export function trialOf({ notes }: RescaleProblem, { choices }: Rescaled, lockedKeys: readonly KeyNumber[], locale: string): Trial {
  const locked = new Set(lockedKeys);
  return Object.fromEntries(notes.flatMap((note, place) => {
    const candidate = note.candidates[choices[place]?.candidateIndex ?? 0];
    return candidate === undefined || locked.has(note.key) ? [] : [[String(note.key), triedWire(note, wireOfCandidate(candidate), locale)] as const];
  }));
}

/** The readings a plan stands on with sizes laid over it. */
function readingsOf(book: ReadingBook, trial: Trial, where: { readonly cycle: number; readonly locale: string }): readonly Reading[] {
  return [...book.found.values(), ...triedReadings(book.planned.values(), trial, where)];
}

/** The whole scale with sizes laid over what is planned, worked out. */
export function planAnalysisOf({ instrument, cycle, scale: terms }: Piano, book: ReadingBook, trial: Trial, locale: string): ScaleAnalysis {
  return analyseScale(scaleInputOf({ instrument, readings: readingsOf(book, trial, { cycle, locale }), cycle, state: 'planned', terms }).input);
}

/** What plans are compared by. */
export interface PlanTotals {
  readonly tensionN: number;
  readonly counted: number;
  readonly of: number;
  readonly most: { readonly key: KeyNumber; readonly pct: number } | undefined;
  readonly least: { readonly key: KeyNumber; readonly pct: number } | undefined;
  readonly tensionRoughness: number | undefined;
  readonly inharmonicityRoughness: number | undefined;
  readonly plainSizes: number;
  readonly windings: number;
  /** Plain notes whose size differs from the plain note below. */
  readonly sizeChanges: number;
  /** Notes whose wire is another than in the scale compared with. */
  readonly changed: number;
}

/** The totals of a scale, and how many notes of it are strung otherwise than in another. @source OWN */
export function totalsOf({ notes, plate, breaks }: ScaleAnalysis, against: ScaleAnalysis | undefined): PlanTotals {
  const shares = notes.flatMap(({ key, figures }) => (figures === undefined ? [] : [{ key, pct: figures.breakingPct }])).toSorted((a, b) => a.pct - b.pct);
  const wires = notes.map(({ wire }) => (wire === undefined ? undefined : wireName(wire)));
  const before = new Map(against?.notes.map(({ key, wire }) => [key, wire === undefined ? undefined : wireName(wire)]));
  const sizesOf = (kind: ScaleWire['kind']): number => new Set(notes.flatMap(({ wire }) => (wire?.kind === kind ? [wireName(wire)] : []))).size;
  const broken = new Set(breaks.flatMap(({ upperKey }) => [upperKey, upperKey + 1]).map((key) => notes.findIndex((note) => note.key === key)));
  return {
    tensionN: plate.tensionN, counted: plate.counted, of: plate.of, least: shares[0], most: shares.at(-1),
    tensionRoughness: roughnessOf(notes.map(({ figures }) => figures?.tensionN), broken),
    inharmonicityRoughness: roughnessOf(notes.map(({ figures }) => figures?.inharmonicityB), broken),
    plainSizes: sizesOf('plain'), windings: sizesOf('wound'),
    sizeChanges: notes.filter(({ wire }, place) => wire?.kind === 'plain' && notes[place - 1]?.wire?.kind === 'plain' && wires[place] !== wires[place - 1]).length,
    changed: notes.filter(({ key }, place) => wires[place] !== undefined && before.get(key) !== undefined && before.get(key) !== wires[place]).length,
  };
}

function wireName(wire: ScaleWire): string {
  if (wire.kind === 'plain') return String(wire.diameterMm);
  const outer = 'wraps' in wire ? wire.wraps.map(({ wireDiameterMm }) => wireDiameterMm).join('+') : `over ${String(wire.overallDiameterMm)}`;
  return `${wire.coreShape ?? 'round'} ${String(wire.coreDiameterMm)} ${outer}`;
}
