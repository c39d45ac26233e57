import { type Compass, noteNameOf } from '#instrument';
import { type ScaleWire, windingFiguresOf } from '#strings';
import type { PrintedTable } from '#workshop';
import type { OrderedNote } from './ordered-notes.ts';
import type { StringOrder } from './string-order.ts';
import { gaugeOf } from './wire-to-buy.ts';

type Value = string | number;
type Columns<Row> = readonly (readonly [header: string, of: (row: Row) => Value | undefined])[];

function tableOf<Row>(columns: Columns<Row>, rows: readonly Row[]): PrintedTable {
  return { header: columns.map(([header]) => header), rows: rows.map((row) => columns.map(([, of]) => of(row) ?? '')) };
}

/** Note name in plain letters, as every spreadsheet reads it. */
const plainNote = (compass: Compass, key: number): string => noteNameOf(compass, key).replace('♯', '#');

const woundOf = ({ wire }: OrderedNote): Extract<ScaleWire, { kind: 'wound' }> | undefined => (wire?.kind === 'wound' ? wire : undefined);
const coreOf = (note: OrderedNote, shape: 'round' | 'hex'): number | undefined => {
  const wire = woundOf(note);
  return wire !== undefined && (wire.coreShape ?? 'round') === shape ? wire.coreDiameterMm : undefined;
};

/** The wrap wires of a note, outer first; none where only the diameter over all is known. */
const wrapsOf = (note: OrderedNote): readonly (number | undefined)[] => {
  const wire = woundOf(note);
  return wire !== undefined && 'wraps' in wire ? wire.wraps.map(({ wireDiameterMm }) => wireDiameterMm).toReversed() : [];
};

const overallOf = (note: OrderedNote): { readonly stated?: number; readonly workedOut?: number } => {
  const wire = woundOf(note);
  if (wire === undefined) return {};
  if ('overallDiameterMm' in wire) return { stated: wire.overallDiameterMm };
  const winding = windingFiguresOf(wire);
  return winding.ok ? { workedOut: winding.value.overallDiameterMm } : {};
};

/**
 * The wound strings of an order, in full precision. What was stated stands under the names an import reads, so that the sheet reads
 * back as the same plan; what follows from it under names of its own. Empty where it is not known.
 */
export function woundSheetTable({ notes, wrapMetal, gaps }: StringOrder, compass: Compass): PrintedTable {
  const isMetalStated = gaps.every(({ what }) => what !== 'wrapMetal');
  return tableOf<OrderedNote>([
    ['key', ({ key }) => key], ['note', ({ key }) => plainNote(compass, key)], ['woundNumber', ({ woundNumber }) => woundNumber],
    ['stringCount', ({ strings }) => strings], ['wireDiameterMm', (note) => coreOf(note, 'round')], ['hexCoreMm', (note) => coreOf(note, 'hex')],
    ['innerWrapMm', (note) => wrapsOf(note)[1]], ['outerWrapMm', (note) => wrapsOf(note)[0]], ['overallDiameterMm', (note) => overallOf(note).stated],
    ['wrapMetal', () => (isMetalStated ? wrapMetal : '')], ['speakingLengthMm', ({ speakingLengthMm }) => speakingLengthMm], ['lengthIsEstimated', ({ isLengthEstimated }) => (isLengthEstimated ? 'yes' : 'no')],
    ['bareFrontMm', (note) => woundOf(note)?.bareFrontMm], ['bareRearMm', (note) => woundOf(note)?.bareRearMm], ['stepFrontMm', (note) => woundOf(note)?.stepFrontMm], ['stepRearMm', (note) => woundOf(note)?.stepRearMm],
    ['overallWorkedOutMm', (note) => overallOf(note).workedOut], ['innerWrappedMm', ({ coveredMm = [] }) => (coveredMm.length > 1 ? coveredMm[0] : undefined)], ['outerWrappedMm', ({ coveredMm }) => coveredMm?.at(-1)],
    ['frontLengthMm', ({ frontLengthMm }) => frontLengthMm], ['backLengthMm', ({ backLengthMm }) => backLengthMm], ['totalLengthMm', ({ totalLengthMm }) => totalLengthMm],
  ], notes.filter(({ wire }) => wire?.kind === 'wound'));
}

/** The wire to buy, in full precision. */
export function wireTable({ wire, wireSeries, wrapMetal }: StringOrder): PrintedTable {
  return tableOf<StringOrder['wire'][number]>([
    ['use', ({ use }) => use], ['metal', ({ use }) => (use === 'wrap' ? wrapMetal : 'steel')], ['shape', ({ shape }) => shape], ['diameterMm', ({ diameterMm }) => diameterMm], ['series', ({ gauge }) => (gauge === undefined ? '' : (wireSeries ?? ''))], ['gauge', ({ gauge }) => gauge],
    ['strings', ({ strings }) => strings], ['speakingMm', ({ speakingMm }) => speakingMm], ['frontAndBackMm', ({ beyondMm }) => beyondMm], ['endsMm', ({ endsMm }) => endsMm], ['wasteMm', ({ wasteMm }) => wasteMm],
    ['totalMm', ({ totalMm }) => totalMm], ['massG', ({ massG }) => massG], ['isAtLeast', ({ isAtLeast }) => (isAtLeast ? 'yes' : 'no')],
  ], wire);
}

/** The stringing chart, one row for each key. */
export function chartTable({ notes, wireSeries }: StringOrder, compass: Compass): PrintedTable {
  const plainOf = ({ wire }: OrderedNote) => (wire?.kind === 'plain' ? wire.diameterMm : undefined);
  return tableOf<OrderedNote>([
    ['key', ({ key }) => key], ['note', ({ key }) => plainNote(compass, key)], ['stringCount', ({ strings }) => strings], ['plainDiameterMm', plainOf],
    ['series', (note) => (plainOf(note) === undefined ? '' : (wireSeries ?? ''))], ['gauge', (note) => { const diameterMm = plainOf(note); return diameterMm === undefined ? undefined : gaugeOf(diameterMm, wireSeries); }],
    ['woundNumber', ({ woundNumber }) => woundNumber],
  ], notes);
}
