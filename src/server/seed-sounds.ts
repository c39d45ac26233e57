import { type Instrument, compassOf, noteNameOf } from '#instrument';
import type { Samples } from '#numerics';
import { writeWav } from '#recording';
import type { BenchStore } from '#store';
import { analyseScale } from '#strings';
import { demoLadderKeys, demoLadderOf, demoNotesOf, demoSoundOf, scaleInputOf } from '#workshop';

const STATES = ['found', 'finished'] as const;

/** Gives an invented piano recordings that are invented too, made from its own strings; they say so, and are put in line to be worked out. */
export async function seedSounds(store: BenchStore, instrument: Instrument, by: string): Promise<void> {
  const [readings, { scales }] = [await store.listReadings(instrument.id), await store.getPiano(instrument.id)];
  const { notes } = analyseScale(scaleInputOf({ instrument, readings, cycle: 1, state: 'found', terms: scales['1'] ?? null }).input);
  const strings = new Map(notes.flatMap(({ key, figures, frequencyHz }) => (figures === undefined ? [] : [[key, { f0Hz: frequencyHz, inharmonicityB: figures.inharmonicityB }] as const])));
  const made: string[] = [];
  for (const state of STATES) {
    for (const { key, note } of demoNotesOf(state, strings)) {
      const name = noteNameOf(compassOf(instrument), key);
      const keep = async (contents: 'note' | 'ladder', sound: Samples, fileName: string): Promise<void> => {
        const file = await store.keepRecording(once(writeWav(sound)));
        const recording = await store.addRecording(instrument.id, { cycle: 1, state, contents, file, key, fileName, place: 'over the tail, lid full', device: 'none: worked out, not recorded', remark: 'Invented: worked out from the invented strings.' }, by);
        made.push(recording.id);
      };
      await keep('note', demoSoundOf(note), `${name}.wav`);
      if (demoLadderKeys.has(key)) await keep('ladder', demoLadderOf(note), `${name} soft to loud.wav`);
    }
  }
  await store.askAnalysis(instrument.id, made);
}

async function* once(bytes: Uint8Array): AsyncIterable<Uint8Array> {
  yield await Promise.resolve(bytes);
}
