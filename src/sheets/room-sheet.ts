import { compassOf } from '#instrument';
import { roomScene } from '#plot';
import { type Block, type FigureBlock, type ReportDocument, bare, hangingBlocksOf, placesBlocksOf, roomBlocksOf } from '#report';
import { GRAND_WIDTH_MM, octaveBands } from '#room';
import { type PrintedTable, type RoomConsequences, type RoomRecord, hungOf, measuredTimesOf, placesToldOf, roomConsequencesOf, toldOf } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** Each room in full: drawing, reverberation by band, notes held, loudness, what to hang or lay, and places for the piano. */
export const roomSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.room.title', { name: instrument.name }),
  nothing: ({ say, rooms = [] }) => (rooms.length === 0 ? say('sheet.room.nothing') : undefined),
  document: documentOf,
  table: tableOf,
};

const DRAWING_PX = { widthPx: 620, mostHeightPx: 180 } as const;

function documentOf(material: SheetMaterial): ReportDocument {
  const { say, rooms = [] } = material;
  return sheetDocument(material, {
    title: roomSheet.title(material), subtitle: say('sheet.room.subtitle'), facts: [], isOfKeys: false,
    blocks: rooms.flatMap((room, index): readonly Block[] => [...(index === 0 ? [] : [{ type: 'pageBreak' } as const]), { type: 'heading', level: 1, text: say('room.title') }, ...roomOf(room, material)]),
  });
}

const workedOut = (room: RoomRecord, { instrument }: SheetMaterial) => roomConsequencesOf(room, { compass: compassOf(instrument), a4Hz: instrument.a4Hz });

/** One room, or that it does not fit together. Heading of level 2. */
function roomOf(room: RoomRecord, material: SheetMaterial): readonly Block[] {
  const { say, instrument } = material;
  const worked = workedOut(room, material);
  if (!worked.ok) return [{ type: 'heading', level: 2, text: room.name }, { type: 'note', text: say('sheet.room.refused') }];
  const known = worked.value;
  const hung = hungOf(known);
  const [heading, ...told] = roomBlocksOf(toldOf(room, known), compassOf(instrument), material);
  return [
    ...(heading === undefined ? [] : [heading]), drawingOf(room, known, material), ...told,
    ...(hung === undefined ? [] : hangingBlocksOf(hung, material)), ...placesBlocksOf(placesToldOf(room, known, instrument), material),
  ];
}

function drawingOf({ name, piano }: RoomRecord, { input: { points, box } }: RoomConsequences, material: SheetMaterial): FigureBlock {
  const { say, instrument } = material;
  const metres = (mm: number): string => bare(mm / 1000, material, { decimals: 2 });
  const alt = say('room.drawing.described', { length: metres(box.lengthMm), width: metres(box.widthMm), corners: points.length });
  const scene = roomScene({
    ...DRAWING_PX, points, title: name, description: alt, places: [], piano: piano === null ? undefined : { ...piano, kind: instrument.kind, widthMm: GRAND_WIDTH_MM },
    wallName: (number) => say('room.side.wall', { number }), lidName: say('room.drawing.lid'), scale: { mm: 1000, label: say('room.drawing.metre') },
  });
  return { type: 'figure', scene, alt, caption: say('sheet.room.drawing', { name }) };
}

/** Figures by octave band in full precision, seconds and square metres; empty where the room has none. */
function tableOf(material: SheetMaterial): PrintedTable {
  const rows = (material.rooms ?? []).flatMap((room) => {
    const worked = workedOut(room, material);
    return worked.ok ? bandsOf(room, worked.value).map(([what, values]) => [room.name, what, ...values.map((value) => value ?? '')]) : [];
  });
  return { header: ['room', 'what', ...octaveBands.map((band) => `${String(band)}Hz`)], rows };
}

type Row = readonly [what: string, values: readonly (number | null)[]];

function bandsOf(room: RoomRecord, known: RoomConsequences): readonly Row[] {
  const { times, target } = known;
  const measured = room.measured.at(-1);
  return [
    ['sabineS', times.sabine], ['eyringS', times.eyring],
    ...(target === undefined ? [] : [['lowerS', target.lower], ['upperS', target.upper]] satisfies readonly Row[]),
    ...(measured === undefined ? [] : [['measuredS', measuredTimesOf(measured)]] satisfies readonly Row[]),
    ...(hungOf(known)?.advices ?? []).map(({ hanging, needs }): Row => [`${hanging.material} areaM2`, needs.map(({ areaM2 }) => areaM2)]),
  ];
}
