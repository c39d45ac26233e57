import type { SurfaceName } from '#materials';
import { type AbsorptionNeed, type PerBand, octaveBands } from '#room';
import type { Say } from '#text';
import { cell } from './build.ts';
import type { Block, TableBlock } from './document.ts';
import { type Tongue, bare } from './words.ts';

/** What one material would do in a room, as far as a report tells of it. */
export interface HangingTold {
  readonly hanging: { readonly material: SurfaceName };
  readonly on: 'floor' | 'ceiling' | number;
  readonly freeM2: number;
  readonly needs: PerBand<AbsorptionNeed>;
  readonly areaM2?: number | undefined;
  readonly after?: { readonly hungM2: number; readonly midS: number; readonly bassRatio: number; readonly isBooming: boolean } | undefined;
}

/** What a room asks for, and what each material would do. */
export interface RoomHung {
  readonly middle: 'dry' | 'live' | 'within';
  readonly isBooming: boolean;
  readonly bassRatio: number;
  readonly advices: readonly HangingTold[];
}

/** What a wall, the floor or the ceiling is called. */
export const sideWords = (side: string | number, say: Say): string => (side === 'floor' || side === 'ceiling' ? say(`room.side.${side}`) : say('room.side.wall', { number: side }));

/** Whether the middle is dry, live or as wanted, and whether the bass lingers. */
export const hungWords = ({ middle, isBooming }: Pick<RoomHung, 'middle' | 'isBooming'>, say: Say): string => [say(`room.hang.${middle}`), isBooming ? say('room.hang.booms') : ''].filter((words) => words !== '').join(' ');

/** What one material would do, in a sentence: how much, what it leaves, where it is no help. */
export function hangingWords({ hanging, on, areaM2, freeM2, needs, after }: HangingTold, bassRatio: number, tongue: Tongue): string {
  const { say } = tongue;
  const what = say(`room.surface.${hanging.material}`);
  if (areaM2 === undefined || after === undefined) return say('room.hang.useless', { what });
  const idle = octaveBands.filter((_, band) => needs[band]?.advice === 'no-help');
  const figure = (value: number, decimals: number): string => bare(value, tongue, { decimals });
  const values = { what, where: sideWords(on, say), area: figure(after.hungM2, 1), wanted: figure(areaM2, 1), before: figure(bassRatio, 2), bass: figure(after.bassRatio, 2), mid: figure(after.midS, 2) };
  return [say(areaM2 > freeM2 ? 'room.hang.notEnough' : 'room.hang.so', values), idle.length > 0 ? say('room.hang.idle', { bands: idle.join(', ') }) : '', after.isBooming ? say('room.hang.leavesBoom') : ''].filter((words) => words !== '').join(' ');
}

/** What to hang or lay, how much, in which band it helps and where not. Heading of level 3. */
export function hangingBlocksOf(hung: RoomHung, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    { type: 'heading', level: 3, text: say('room.hang') },
    { type: 'paragraph', size: 'body', text: hungWords(hung, say) },
    needsTable(hung, tongue),
    ...(hung.middle === 'live' ? [{ type: 'list', items: hung.advices.map((advice) => hangingWords(advice, hung.bassRatio, tongue)) } as const] : []),
    { type: 'caution', text: say('room.hang.caution') },
  ];
}

function needsTable({ advices }: RoomHung, tongue: Tongue): TableBlock {
  const { say } = tongue;
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('room.figures', { what: say('room.hang') }),
    columns: [{ label: say('room.hang.area.m2'), align: 'start', width: 5 }, ...octaveBands.map((band) => ({ label: `${String(band)}\u00A0${say('room.unit.hertz')}`, align: 'end', width: 1 } as const))],
    rows: advices.map(({ hanging, on, needs }) => [
      cell(`${say(`room.surface.${hanging.material}`)} (${sideWords(on, say)})`),
      ...octaveBands.map((_, band) => { const area = needs[band]?.areaM2 ?? null; return area === null ? cell(say('room.hang.noHelp'), 'quiet') : cell(bare(area, tongue, { signed: true })); }),
    ]),
  };
}
