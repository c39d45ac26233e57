import { type Compass, noteNameOf } from '#instrument';
import { bandPlot } from '#plot';
import { type PerBand, type ReverberationTarget, type RoomNote, type Shoebox, type ReverberationModel, octaveBands } from '#room';
import { cell } from './build.ts';
import type { Block, Cell, FigureBlock, TableBlock } from './document.ts';
import { type Tongue, bare } from './words.ts';

/** A room worked out, as far as a report tells of it. */
export interface RoomTold {
  readonly name: string;
  readonly remark: string;
  readonly box: Shoebox;
  readonly isBox: boolean;
  readonly volumeM3: number;
  readonly model: ReverberationModel;
  readonly times: PerBand;
  readonly midS: number;
  readonly bassRatio: number;
  readonly target?: ReverberationTarget | undefined;
  readonly notes: readonly RoomNote[];
  readonly playerDb?: number | undefined;
  readonly dailyDbA?: number | undefined;
  /** The last that was measured; nothing in a band the recording did not bear. */
  readonly measuredS?: readonly (number | null)[] | undefined;
}

const DRAWING_PX = { widthPx: 620, heightPx: 130 } as const;

/** The blocks that tell of one room: size, reverberation by band beside what is wanted and measured, the notes it holds, how loud it is. Heading of level 2, so a heading of level 1 goes before. */
export function roomBlocksOf(room: RoomTold, compass: Compass, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    ...roomFactsOf(room, compass, tongue), tableOf(room, tongue), plotOf(room, tongue),
    ...(room.target === undefined ? [{ type: 'note', text: say('room.noUse') } as const] : []),
    { type: 'paragraph', size: 'small', text: `${say(room.isBox ? 'room.boom.about' : 'room.boom.enclosing')} ${say('room.doubt')}` },
    ...(room.remark === '' ? [] : [{ type: 'paragraph', size: 'body', text: room.remark } as const]),
    ...(room.dailyDbA === undefined ? [] : [{ type: 'caution', text: say('room.exposure.caution') } as const]),
  ];
}

/** The room in a few lines: size, how long it rings and should, the notes it holds, how loud it is. */
export function roomFactsOf(room: RoomTold, compass: Compass, tongue: Tongue): readonly Block[] {
  return [
    { type: 'heading', level: 2, text: room.name },
    { type: 'keyValues', rows: factsOf(room, compass, tongue).map(([label, value]) => ({ label, value: cell(value) })) },
  ];
}

type Fact = readonly [label: string, value: string];

function factsOf(room: RoomTold, compass: Compass, tongue: Tongue): readonly Fact[] {
  const { say } = tongue;
  const figure = (value: number, decimals: number, unit: string): string => `${bare(value, tongue, { decimals })}\u00A0${unit}`;
  const metres = (mm: number): string => bare(mm / 1000, tongue, { decimals: 2 });
  const held = room.notes.filter(({ booms }) => booms.some(({ partial }) => partial === 1)).map(({ key }) => noteNameOf(compass, key));
  const facts: readonly (Fact | undefined)[] = [
    [say('proof.room.size'), say('proof.room.stated', { length: metres(room.box.lengthMm), width: metres(room.box.widthMm), height: metres(room.box.heightMm), volume: bare(room.volumeM3, tongue, { decimals: 1 }) })],
    [say('room.mid'), figure(room.midS, 2, 's')], [say('room.bassRatio'), bare(room.bassRatio, tongue, { decimals: 2 })],
    room.target === undefined ? undefined : [say('room.wanted'), `${figure(room.target.seconds, 2, 's')} (${room.target.standard})`],
    [say('room.boom'), held.length === 0 ? say('room.boom.none') : say('room.boom.these', { notes: held.join(', ') })],
    room.playerDb === undefined ? undefined : [say('room.compare.player'), figure(room.playerDb, 0, say('room.unit.decibels'))],
    room.dailyDbA === undefined ? undefined : [say('room.exposure'), figure(room.dailyDbA, 1, say('room.unit.decibelsA'))],
  ];
  return facts.flatMap((fact) => (fact === undefined ? [] : [fact]));
}

function tableOf({ name, times, model, target, measuredS }: RoomTold, tongue: Tongue): TableBlock {
  const { say } = tongue;
  const seconds = (value: number | null | undefined): Cell => (value == null ? cell('–', 'quiet') : cell(bare(value, tongue, { decimals: 2 })));
  const rows: readonly (readonly [string, (band: number) => Cell])[] = [
    [say(`room.model.${model}`), (band) => seconds(times[band])],
    ...(target === undefined ? [] : [[say('room.allowed'), (band: number) => cell(`${bare(target.lower[band] ?? 0, tongue, { decimals: 2 })}–${bare(target.upper[band] ?? 0, tongue, { decimals: 2 })}`)] as const]),
    ...(measuredS === undefined ? [] : [[say('room.measuredT20'), (band: number) => seconds(measuredS[band])] as const]),
  ];
  return {
    type: 'table', strips: 1, rowHeads: true, caption: `${say('room.times')}: ${name}`,
    columns: [{ label: say('room.seconds'), align: 'start', width: 2 }, ...octaveBands.map((band) => ({ label: `${String(band)}\u00A0${say('room.unit.hertz')}`, align: 'end', width: 1 } as const))],
    rows: rows.map(([label, of]) => [cell(label), ...octaveBands.map((_, band) => of(band))]),
  };
}

function plotOf({ name, times, model, target, measuredS }: RoomTold, { say, locale }: Tongue): FigureBlock {
  const alt = say('room.times.described', { model: say(`room.model.${model}`), measured: measuredS === undefined ? 'no' : 'yes', wanted: target === undefined ? 'no' : 'yes' });
  const scene = bandPlot({
    ...DRAWING_PX, bands: octaveBands.map(String), xLabel: say('room.band'), yLabel: `${say('room.times')} (${say('room.seconds')})`, title: say('room.times'), description: alt, locale,
    wanted: target === undefined ? undefined : { value: target.seconds, lower: target.lower, upper: target.upper },
    series: [{ state: 'planned', label: say(`room.model.${model}`), values: times }, ...(measuredS === undefined ? [] : [{ state: 'finished' as const, label: say('room.measuredT20'), values: measuredS }])],
  });
  return { type: 'figure', scene, alt, caption: `${say('room.times')}: ${name}` };
}
