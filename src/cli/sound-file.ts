import type { ReadSound } from '#operation';
import { MAX_RECORDING_BYTES, type Recording, readRecording, recordingTooLarge } from '#recording';
import { type Result, map, refuse } from '#result';
import { readNamed } from './named-file.ts';

/** A recording named on the command line; its issues have paths below the name. */
export async function readSoundFile(name: string): Promise<Result<Recording>> {
  const bytes = await readNamed(name, { max: MAX_RECORDING_BYTES, issue: recordingTooLarge });
  return bytes.ok ? readRecording(bytes.value) : refuse(...bytes.issues.map((issue) => ({ ...issue, path: '' })));
}

/** A recording in the input of a calculation: the path of a file. */
export const readSoundAt: ReadSound = async (given) => {
  if (typeof given !== 'string') return refuse({ code: 'type', path: '', given, allowed: 'the path of a recording', params: { kind: 'sound' } });
  return map(await readSoundFile(given), ({ samples }) => samples);
};
