import { type RoomConsequences, type RoomGiven, type RoomMeasured, roomCalculated } from '#workshop';
import type { FigureStory } from '../figure/figure-store.ts';

/** What a recording told of a room, kept with it or only just heard. */
export type HeardRoom = Omit<RoomMeasured, 'on' | 'sound'>;

/** How a reverberation time was made, or what follows from all six. */
export const reverberationStory = (title: string, { input }: RoomConsequences, model: 'sabine' | 'eyring', output: string): FigureStory => ({ title, operation: 'reverberation', input: { ...roomCalculated(input), model }, output });

export function targetStory(title: string, { input }: RoomConsequences, { use, standard }: RoomGiven, output: string): FigureStory {
  const { volumeM3 } = input.plan;
  if (standard == null) return { title, operation: 'reverberation-target', input: { volumeM3, use }, output };
  const { id: _id, ...own } = standard;
  return { title, operation: 'reverberation-target', input: { volumeM3, own }, output };
}

export const planStory = (title: string, { input: { points, box } }: RoomConsequences, output: 'floorM2' | 'volumeM3'): FigureStory => ({ title, operation: 'room-plan', input: { points, heightMm: box.heightMm }, output });

/** What the standing waves of the room, or of the rectangle around it, are worked out from. */
const boxOf = ({ input: { box, temperatureC }, midS }: RoomConsequences) => ({ ...box, temperatureC, reverberationS: midS });

export const modesStory = (title: string, known: RoomConsequences, output: string): FigureStory => ({ title, operation: 'room-modes', input: { ...boxOf(known), upToHz: Math.max(1, Math.ceil(known.firstModes.at(-1)?.frequencyHz ?? 100)) }, output });

export const notesStory = (title: string, known: RoomConsequences, a4Hz: number): FigureStory => ({ title, operation: 'room-notes', input: { ...boxOf(known), a4Hz }, output: 'notes' });

export const levelStory = (title: string, known: RoomConsequences, given: RoomGiven, { output, distancesMm }: { readonly output: string; readonly distancesMm: readonly number[] }): FigureStory => ({
  title, operation: 'room-level', output,
  input: { volumeM3: known.input.plan.volumeM3, reverberationS: known.midS, distancesMm, ...(given.loudness === null ? {} : 'powerDb' in given.loudness ? given.loudness : { measured: given.loudness }) },
});

export const criticalStory = (title: string, known: RoomConsequences): FigureStory => ({ title, operation: 'critical-distance', input: { volumeM3: known.input.plan.volumeM3, reverberationS: known.midS }, output: 'criticalDistanceMm' });

/** What a recording told, as it was kept with the room: the recording itself is listened to again on the command line. */
export const measuredStory = (title: string, { file, edtS, t20S, t30S, impulseCount, quality, sweep }: HeardRoom, output: string): FigureStory => ({
  title, operation: 'room-impulse', output, input: { file, ...(sweep == null ? {} : { sweep }) }, kept: { impulseCount, edtS, t20S, t30S, quality }, origins: { file: { how: 'ofRecording' } },
});

export const exposureStory = (title: string, levelDbA: number, hours: number): FigureStory => ({ title, operation: 'noise-exposure', input: { spans: [{ levelDbA, hours }] }, output: 'dailyDbA' });
