import type { Reading } from '#instrument';
import type { SustainInput } from '#workshop';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';

/** How a figure of a stretch that rings short was made: the whole map, and the place of the stretch in it. */
export function stretchStory(title: string, output: string, input: SustainInput, humidity: Reading | undefined): FigureStory {
  const origins = Object.fromEntries(input.notes.flatMap(({ key, bearingDeg }, place): readonly (readonly [string, Origin])[] => [
    [`notes[${String(place)}].decayS`, { key, how: 'ofRecording' }],
    ...(bearingDeg === undefined ? [] : [[`notes[${String(place)}].bearingDeg`, { key, how: 'ofBearing' }] as const]),
  ]));
  return { title, operation: 'sustain-map', input: { ...input }, output, origins: { ...origins, shortPct: { how: 'shortShare' }, ...(humidity === undefined ? {} : { humidityPct: { readings: [humidity] } }) } };
}
