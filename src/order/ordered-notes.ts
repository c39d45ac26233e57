import type { Instrument, KeyNumber, State } from '#instrument';
import { meanOf } from '#numerics';
import { type AnalysedNote, type ScaleWire, type WireAllowances, type WrapLength, analyseScale, wireLengthOf, wrapLengthsOf } from '#strings';
import { type Millimetres, millimetres } from '#units';
import { type ScaleMaterial, scaleInputOf } from '#workshop';
import { type OrderTerms, termOf } from './terms.ts';

/** What an order is read from. */
export interface OrderMaterial extends ScaleMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'a4Hz' | 'sections'>;
  readonly orderTerms: OrderTerms;
}

/** A wound string as ordered. */
export type WoundWire = Extract<ScaleWire, { readonly kind: 'wound' }>;

/** One note of the order; an absent field is not known. */
export interface OrderedNote extends Pick<AnalysedNote, 'key' | 'strings' | 'wire' | 'fault' | 'issues' | 'speakingLengthMm' | 'isLengthEstimated'> {
  readonly frontLengthMm?: Millimetres;
  readonly backLengthMm?: Millimetres;
  /** Place among the wound notes, bass to treble; absent for plain wire. */
  readonly woundNumber?: number;
  /** How far each wrap covers, inner first; of a wrap known over all alone, the one cover. */
  readonly coveredMm?: readonly Millimetres[];
  /** Wire of one string, plain or core, with its allowances. */
  readonly totalLengthMm?: Millimetres;
}

/**
 * Every note of a state with what an order needs to know of it. A back length is the one measured in the state, else as found,
 * else the one stated for all; a front length only the one stated. What is not known is absent. @source OWN
 */
export function orderedNotesOf(material: OrderMaterial): { readonly notes: readonly OrderedNote[]; readonly fromFound: readonly KeyNumber[] } {
  const { input, assumed } = scaleInputOf(material);
  const backs = backLengthsOf(material);
  let wound = 0;
  const notes = analyseScale(input).notes.map((note): OrderedNote => {
    const { key, strings, wire, fault, issues, speakingLengthMm, isLengthEstimated } = note;
    const frontLengthMm = lengthTerm(material.orderTerms, 'frontLengthMm');
    const backLengthMm = backs.get(key) ?? lengthTerm(material.orderTerms, 'backLengthMm');
    const base = {
      key, issues, isLengthEstimated, ...(strings !== undefined && { strings }), ...(wire && { wire }), ...(fault && { fault }), ...(speakingLengthMm !== undefined && { speakingLengthMm }),
      ...(frontLengthMm !== undefined && { frontLengthMm }), ...(backLengthMm !== undefined && { backLengthMm }),
    };
    if (wire === undefined || speakingLengthMm === undefined || issues.length > 0) return wire?.kind === 'wound' ? { ...base, woundNumber: (wound += 1) } : base;
    const total = frontLengthMm === undefined || backLengthMm === undefined ? {}
      : { totalLengthMm: wireLengthOf({ frontLengthMm, speakingLengthMm, backLengthMm }, wire.kind === 'plain' ? wire.diameterMm : wire.coreDiameterMm, allowancesOf(material.orderTerms)) };
    if (wire.kind === 'plain') return { ...base, ...total };
    const covered = coveredOf(wire, speakingLengthMm);
    return { ...base, ...total, woundNumber: (wound += 1), ...(covered && { coveredMm: covered.map(({ coveredMm }) => coveredMm) }) };
  });
  return { notes, fromFound: assumed.find(({ what }) => what === 'fromFound')?.notes ?? [] };
}

/** The allowances of each string, stated or usual. */
export function allowancesOf(terms: OrderTerms): WireAllowances {
  const of = (name: 'pinDiameterMm' | 'hitchMm' | 'spareMm'): Millimetres => millimetres(termOf(terms, name) ?? 0);
  return { pinTurns: termOf(terms, 'pinTurns') ?? 0, pinDiameterMm: of('pinDiameterMm'), hitchMm: of('hitchMm'), spareMm: of('spareMm') };
}

/** True where both bare ends are stated. */
export function hasBareEnds({ bareFrontMm, bareRearMm }: WoundWire): boolean {
  return bareFrontMm !== undefined && bareRearMm !== undefined;
}

/** True where the steps are stated, or there is but one wrap and so none. */
export function hasSteps(wire: WoundWire): boolean {
  return !('wraps' in wire) || wire.wraps.length < 2 || (wire.stepFrontMm !== undefined && wire.stepRearMm !== undefined);
}

function coveredOf(wire: WoundWire, speakingLengthMm: Millimetres): readonly WrapLength[] | undefined {
  if (!hasBareEnds(wire) || !hasSteps(wire)) return undefined;
  const wraps = 'wraps' in wire ? wire.wraps : [{ wireDiameterMm: millimetres((wire.overallDiameterMm - wire.coreDiameterMm) / 2) }];
  return wrapLengthsOf({ ...wire, speakingLengthMm, wraps });
}

function lengthTerm(terms: OrderTerms, name: 'frontLengthMm' | 'backLengthMm'): Millimetres | undefined {
  const value = termOf(terms, name);
  return value === undefined ? undefined : millimetres(value);
}

function backLengthsOf({ readings, cycle, state }: ScaleMaterial): ReadonlyMap<KeyNumber, Millimetres> {
  const measured = readings.filter((reading) => reading.cycle === cycle && reading.quantity === 'backLengthMm' && reading.value !== null);
  const at = (key: KeyNumber, from: State): readonly number[] => measured.flatMap((reading) => (reading.index === key && reading.state === from ? (reading.value ?? []) : []));
  return new Map([...new Set(measured.map(({ index }) => index))].flatMap((key) => {
    const values = [at(key, state), at(key, 'found')].find((some) => some.length > 0);
    return values === undefined ? [] : [[key, millimetres(meanOf(values))] as const];
  }));
}
