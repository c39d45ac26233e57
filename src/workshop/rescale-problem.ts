import type { KeyNumber, ScaleTerms } from '#instrument';
import { copperWire, ironWire } from '#materials';
import { type Issue, type Result, ok, refuse } from '#result';
import { type AnalysedNote, type CoreShape, type RescaleCandidate, type RescaleLimits, type RescaleNote, type RescaleProblem, type RescaleWeights, type ScaleAnalysis, type ScaleWire, type WoundEnds, windingChoicesFor, windingsOf } from '#strings';
import { type KilogramsPerCubicMetre, type Millimetres, type Newtons, newtons } from '#units';
import { certificateFor } from './scale-wire.ts';

/** What a rescale is asked for: what there is to string with, what must hold, and what weighs how much. */
export interface RescaleWish {
  readonly plainSizesMm: readonly Millimetres[];
  readonly coreSizesMm: readonly Millimetres[];
  readonly coreShape: CoreShape;
  readonly wrapSizesMm: readonly Millimetres[];
  readonly layers: 'single' | 'double' | 'either';
  /** Notes up to this one are wound, those above plain; 0: none is wound. */
  readonly highestWoundKey: KeyNumber;
  /** Notes that keep the string they stand with. */
  readonly lockedKeys: readonly KeyNumber[];
  readonly limits: RescaleLimits;
  readonly weights: RescaleWeights;
  /** Whether unevenness counts across the breaks as well. */
  readonly acrossBreaks: boolean;
  /** Tensions wanted: as they stand, or on a line in ln T from the lowest note to the highest; none where absent. */
  readonly target?: 'standing' | { readonly lowestN: Newtons; readonly highestN: Newtons } | undefined;
}

/** Windings a note chooses among, at most. */
export const MOST_WINDINGS = 96;

/**
 * The problem of a rescale for the notes of a scale, from the lowest to the highest that has a length. A locked note keeps
 * its wire. Windings are all a stock can make within the limits, thinned to `MOST_WINDINGS` a note, with the bare ends and
 * steps of the note or of the nearest wound one. Refuses, with their keys, notes without length, count, or a string to keep.
 * @source OWN
 */
export function rescaleProblemOf({ notes: all, sections }: ScaleAnalysis, wish: RescaleWish, terms: ScaleTerms | null): Result<RescaleProblem> {
  const known = all.filter(({ speakingLengthMm }) => speakingLengthMm !== undefined).map(({ key }) => key);
  const notes = all.filter(({ key }) => key >= (known[0] ?? Infinity) && key <= (known.at(-1) ?? 0));
  const issues = issuesOf(notes, wish);
  if (issues.length > 0) return refuse(...issues);
  const candidates = candidatesBy(notes, wish, terms);
  const breaks = breaksIn(notes, sections, wish);
  return ok({
    weights: wish.weights, limits: wish.limits,
    notes: notes.flatMap((note, place): readonly RescaleNote[] => {
      const { key, frequencyHz, speakingLengthMm, strings } = note;
      if (speakingLengthMm === undefined || strings === undefined) return [];
      const targetTensionN = targetOf(note, place / Math.max(1, notes.length - 1), wish.target);
      const isAcross = !wish.acrossBreaks && [key, key - 1].some((upper) => breaks.has(upper));
      return [{
        key, frequencyHz, speakingLengthMm, strings, candidates: candidates(note),
        ...(targetTensionN === undefined ? {} : { targetTensionN }),
        ...(isAcross ? { weights: { tensionSmoothness: 0, inharmonicitySmoothness: 0, impedanceSmoothness: 0 } } : {}),
      }];
    }),
  });
}

function issuesOf(notes: readonly AnalysedNote[], wish: RescaleWish): readonly Issue[] {
  const locked = new Set(wish.lockedKeys);
  const keysOf = (lacks: (note: AnalysedNote) => boolean): readonly KeyNumber[] => notes.filter(lacks).map(({ key }) => key);
  const needed = (path: string, reason: string, keys: readonly KeyNumber[], allowed: string): readonly Issue[] =>
    keys.length === 0 ? [] : [{ code: 'required', path, given: undefined, allowed, params: { reason, keys: keys.join(' ') } }];
  return [
    ...(notes.length === 0 ? [{ code: 'required' as const, path: 'notes', given: undefined, allowed: 'a note with a speaking length', params: { reason: 'noLengths', keys: '' } }] : []),
    ...needed('speakingLengthMm', 'noLength', keysOf(({ speakingLengthMm }) => speakingLengthMm === undefined), 'a speaking length'),
    ...needed('strings', 'noCount', keysOf(({ strings }) => strings === undefined), 'a number of strings'),
    ...needed('lockedKeys', 'nothingToKeep', keysOf(({ key, wire }) => locked.has(key) && wire === undefined), 'a string to keep'),
    ...needed('plainSizesMm', 'noPlainSizes', wish.plainSizesMm.length > 0 ? [] : keysOf(({ key }) => key > wish.highestWoundKey && !locked.has(key)), 'sizes of plain wire'),
    ...needed('wrapSizesMm', 'noWindings', wish.coreSizesMm.length > 0 && wish.wrapSizesMm.length > 0 ? [] : keysOf(({ key }) => key <= wish.highestWoundKey && !locked.has(key)), 'sizes of core and wrap wire'),
  ];
}

/** Density of wrap wire after the terms; copper where they do not say. */
export function wrapDensityOf(terms: Pick<ScaleTerms, 'wrapMetal'> | null): KilogramsPerCubicMetre {
  return (terms?.wrapMetal === 'iron' ? ironWire : copperWire).densityKgM3.value;
}

function candidatesBy(notes: readonly AnalysedNote[], wish: RescaleWish, terms: ScaleTerms | null): (note: AnalysedNote) => readonly RescaleCandidate[] {
  const locked = new Set(wish.lockedKeys);
  const strengthModel = terms?.strengthModel ?? undefined;
  const strengthOf = (wire: ScaleWire) => ({ strengthModel, certificateMPa: certificateFor(wire, terms?.wires ?? []) });
  const plain = wish.plainSizesMm.map((diameterMm): RescaleCandidate => ({ diameterMm, ...strengthOf({ kind: 'plain', diameterMm }) }));
  const wraps = wish.wrapSizesMm.map((wireDiameterMm) => ({ wireDiameterMm, densityKgM3: wrapDensityOf(terms) }));
  const cores = wish.coreSizesMm.map((diameterMm) => ({ diameterMm, shape: wish.coreShape, certificateMPa: strengthOf({ kind: 'wound', coreDiameterMm: diameterMm, coreShape: wish.coreShape, wraps: [] }).certificateMPa }));
  const windings = wish.highestWoundKey > 0 ? windingsOf({ cores, wraps, layers: wish.layers, strengthModel }) : [];
  return (note) => {
    const { key, wire, frequencyHz, speakingLengthMm } = note;
    if (locked.has(key) && wire !== undefined) return [{ ...bare(wire), ...strengthOf(wire) }];
    if (key > wish.highestWoundKey || speakingLengthMm === undefined) return plain;
    const ends = endsNear(notes, key);
    return windingChoicesFor(windings, { frequencyHz, speakingLengthMm, ...wish.limits, most: MOST_WINDINGS }).map(({ core, wraps: layers }) => ({
      coreDiameterMm: core.diameterMm, coreShape: core.shape, wraps: layers, strengthModel, certificateMPa: core.certificateMPa,
      ...ends, ...(layers.length > 1 ? {} : NO_STEPS),
    }));
  };
}

const NO_STEPS = { stepFrontMm: undefined, stepRearMm: undefined } as const;

function bare({ kind: _, ...wire }: ScaleWire): RescaleCandidate {
  return wire;
}

/** Bare ends and steps of a note, or of the nearest note that is wound. */
export function endsNear(notes: readonly AnalysedNote[], key: KeyNumber): WoundEnds {
  const wound = notes.flatMap((note) => (note.wire?.kind === 'wound' ? [{ key: note.key, wire: note.wire }] : []));
  const nearest = wound.toSorted((a, b) => Math.abs(a.key - key) - Math.abs(b.key - key))[0];
  if (nearest === undefined) return {};
  const { bareFrontMm, bareRearMm, stepFrontMm, stepRearMm } = nearest.wire;
  return Object.fromEntries(Object.entries({ bareFrontMm, bareRearMm, stepFrontMm, stepRearMm }).filter(([, mm]) => mm !== undefined));
}

/** The upper keys of the steps between sections and between wound and plain. */
function breaksIn(notes: readonly AnalysedNote[], sections: ScaleAnalysis['sections'], { highestWoundKey, lockedKeys }: RescaleWish): ReadonlySet<KeyNumber> {
  const locked = new Set(lockedKeys);
  const isWound = ({ key, wire }: AnalysedNote): boolean => (locked.has(key) ? wire?.kind === 'wound' : key <= highestWoundKey);
  return new Set(notes.flatMap((note, place) => {
    const below = notes[place - 1];
    const isBreak = below !== undefined && (isWound(below) !== isWound(note) || sections.some(({ firstKey, lastKey }) => lastKey === below.key || firstKey === note.key));
    return isBreak ? [note.key] : [];
  }));
}

function targetOf({ figures }: AnalysedNote, share: number, target: RescaleWish['target']): Newtons | undefined {
  if (target === undefined) return undefined;
  if (target === 'standing') return figures?.tensionN;
  return newtons(target.lowestN * (target.highestN / target.lowestN) ** share);
}

/** The wire of a candidate, as a note of a scale has it. */
export function wireOfCandidate(candidate: RescaleCandidate): ScaleWire {
  if ('diameterMm' in candidate) return { kind: 'plain', diameterMm: candidate.diameterMm };
  const { strengthModel: _, certificateMPa: __, ...winding } = candidate;
  return { kind: 'wound', ...winding };
}
