import type { Instrument } from '#instrument';
import { compassOf } from '#instrument';
import { type RoomConsequences, roomConsequencesOf } from './consequences.ts';
import { measuredTimesOf } from './fitting.ts';
import type { RoomRecord } from './record.ts';

/** A kept room with what follows from it, flat, as reports tell it; nothing where it does not fit together. */
export function roomToldOf(room: RoomRecord, instrument: Pick<Instrument, 'firstMidi' | 'lastMidi' | 'a4Hz'>) {
  const result = roomConsequencesOf(room, { compass: compassOf(instrument), a4Hz: instrument.a4Hz });
  return result.ok ? toldOf(room, result.value) : undefined;
}

/** The same of a room that is worked out already. */
export function toldOf(room: RoomRecord, { input: { box, isBox, plan: { volumeM3 } }, model, times, midS, bassRatio, target, notes, loudness }: RoomConsequences) {
  const measured = room.measured.at(-1);
  return {
    name: room.name, remark: room.remark, box, isBox, volumeM3, model, times: times[model], midS, bassRatio, target, notes,
    playerDb: loudness?.playerDb, dailyDbA: loudness?.daily?.dailyDbA, measuredS: measured === undefined ? undefined : measuredTimesOf(measured),
  };
}
