import { compassOf } from '#instrument';
import { type Block, roomBlocksOf } from '#report';
import { roomToldOf } from '#workshop';
import type { ProofInput } from './input.ts';

/** The rooms it stands in or may stand in, on pages of their own; nothing where none was noted. */
export function roomOf(input: ProofInput): readonly Block[] {
  const { say, instrument, rooms = [] } = input;
  const told = rooms.flatMap((room) => roomToldOf(room, { ...instrument, a4Hz: instrument.a4Hz ?? 440 }) ?? []);
  if (told.length === 0) return [];
  const isMeasured = told.some(({ measuredS }) => measuredS !== undefined);
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.room') },
    { type: 'paragraph', size: 'body', text: say('proof.room.how', { measured: isMeasured ? 'yes' : 'no' }) },
    ...told.flatMap((room) => roomBlocksOf(room, compassOf(instrument), input)),
  ];
}
