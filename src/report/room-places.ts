import type { PlacedPiano, StandingPiano } from '#room';
import { cell } from './build.ts';
import type { Block } from './document.ts';
import { type Tongue, bare } from './words.ts';

/** Places of a room for its piano, the bass most even first. */
export interface PlacesTold {
  readonly best: readonly (PlacedPiano | StandingPiano)[];
  readonly count: number;
  readonly worstDb: number;
  readonly gridMm: number;
  readonly isBox: boolean;
}

/** Where the piano would best stand and its lid look. Heading of level 3. */
export function placesBlocksOf({ best, count, worstDb, gridMm, isBox }: PlacesTold, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  const isTurned = best.some((place) => 'tailDeg' in place);
  const mm = (value: number): string => `${bare(value, tongue, { decimals: 0 })}\u00A0mm`;
  const figures = (['along', 'across', 'spread'] as const).map((name) => ({ label: say(`room.places.${name}`), align: 'end', width: 3 } as const));
  const turns = [{ label: say('room.places.tail'), align: 'start', width: 4 }, { label: say('room.places.open'), align: 'end', width: 3 }] as const;
  return [
    { type: 'heading', level: 3, text: say('room.places') },
    { type: 'paragraph', size: 'small', text: [say('room.places.about', { grid: gridMm }), isBox ? '' : say('room.places.enclosing')].filter((words) => words !== '').join(' ') },
    ...(count === 0 ? [{ type: 'note', text: say('room.places.none') } as const] : [{
      type: 'table', strips: 1, rowHeads: true, caption: say('room.figures', { what: say('room.places') }), columns: [{ label: say('room.places.rank'), align: 'start', width: 1 }, ...figures, ...(isTurned ? turns : [])],
      rows: best.map((place, index) => [
        cell(String(index + 1)), cell(mm(place.alongMm)), cell(mm(place.acrossMm)), cell(`${bare(place.spreadDb, tongue, { decimals: 2 })}\u00A0${say('room.unit.decibels')}`),
        ...('tailDeg' in place ? [cell(say(`room.turn.${String(place.tailDeg) as '0'}`)), cell(mm(place.openMm))] : []),
      ]),
    } as const, { type: 'paragraph', size: 'small', text: say('room.places.worst', { worst: bare(worstDb, tongue, { decimals: 2 }) }) } as const]),
    { type: 'caution', text: say('room.places.caution') },
  ];
}
