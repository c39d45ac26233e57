import type { KeyNumber, ScaleTerms, State } from '#instrument';
import { type OrderMaterial, type OrderedNote, hasBareEnds, hasSteps, orderedNotesOf } from './ordered-notes.ts';
import type { OrderTerms } from './terms.ts';
import { type WireToBuy, wireToBuyOf } from './wire-to-buy.ts';

/** What an order lacks, or rests on without a measurement. */
export type GapName = 'nothing' | 'noWire' | 'noLength' | 'noCount' | 'fault' | 'noSuchString' | 'wrapWires' | 'bareEnds' | 'steps' | 'backLength' | 'frontLength' | 'lengthEstimated' | 'fromFound' | 'wrapMetal';

/** A gap with the notes it is at. */
export interface OrderGap {
  readonly what: GapName;
  readonly keys: readonly KeyNumber[];
}

/** The strings of one state of a piano as they are ordered, bought and strung. */
export interface StringOrder {
  readonly state: State;
  /** Every key of the compass, bass to treble. */
  readonly notes: readonly OrderedNote[];
  readonly wire: readonly WireToBuy[];
  readonly gaps: readonly OrderGap[];
  readonly terms: OrderTerms;
  readonly wireSeries: ScaleTerms['wireSeries'];
  /** Copper where nobody stated it, which is told as a gap. */
  readonly wrapMetal: 'copper' | 'iron';
}

/**
 * The strings of a state as an order: every note, the wire it takes, and by name what is missing and at which notes.
 * Nothing that is not known is filled in; a length laid between measured neighbours is told as such. @source OWN
 */
export function stringOrderOf(material: OrderMaterial): StringOrder {
  const { state, terms, orderTerms } = material;
  const { notes, fromFound } = orderedNotesOf(material);
  const wireSeries = terms?.wireSeries ?? null;
  return {
    state, notes, wireSeries, terms: orderTerms, wrapMetal: terms?.wrapMetal ?? 'copper',
    wire: wireToBuyOf(notes, orderTerms, wireSeries),
    gaps: gapsOf(notes, fromFound, terms),
  };
}

/** True where any string of the state is noted at all. */
export function hasStrings({ notes }: StringOrder): boolean {
  return notes.some(({ wire, fault }) => wire !== undefined || fault !== undefined);
}

function gapsOf(notes: readonly OrderedNote[], fromFound: readonly KeyNumber[], terms: ScaleTerms | null): readonly OrderGap[] {
  const where = (what: GapName, holds: (note: OrderedNote) => boolean): OrderGap => ({ what, keys: notes.filter(holds).map(({ key }) => key) });
  const isStrung = ({ wire, speakingLengthMm }: OrderedNote): boolean => wire !== undefined && speakingLengthMm !== undefined;
  const isBlank = ({ wire, fault, speakingLengthMm, strings }: OrderedNote): boolean => wire === undefined && fault === undefined && speakingLengthMm === undefined && strings === undefined;
  const wound = (holds: (wire: Extract<OrderedNote['wire'], { kind: 'wound' }>) => boolean) => ({ wire }: OrderedNote): boolean => wire?.kind === 'wound' && holds(wire);
  return [
    where('nothing', isBlank),
    where('noWire', (note) => !isBlank(note) && note.wire === undefined && note.fault === undefined),
    where('fault', ({ fault }) => fault !== undefined),
    where('noLength', (note) => !isBlank(note) && note.speakingLengthMm === undefined),
    where('noCount', ({ wire, strings }) => wire !== undefined && strings === undefined),
    where('noSuchString', ({ issues }) => issues.length > 0),
    where('wrapWires', wound((wire) => 'overallDiameterMm' in wire)),
    where('bareEnds', wound((wire) => !hasBareEnds(wire))),
    where('steps', wound((wire) => !hasSteps(wire))),
    where('lengthEstimated', (note) => isStrung(note) && note.isLengthEstimated),
    where('frontLength', (note) => isStrung(note) && note.frontLengthMm === undefined),
    where('backLength', (note) => isStrung(note) && note.backLengthMm === undefined),
    { what: 'fromFound' as const, keys: fromFound },
    where('wrapMetal', wound(() => terms?.wrapMetal == null)),
  ].filter(({ keys }) => keys.length > 0);
}
