import { convertSound } from '#files';
import type { ReadSound } from '#operation';
import { MAX_RECORDING_BYTES, isAac, readRecording, recordingTooLarge } from '#recording';
import { type Result, map, refuse } from '#result';
import { readNamed } from './named-file.ts';

const CONVERT_MS = 120_000;

/** The bytes of a recording named on the command line, those of M4A turned to WAV; its issues have paths below the name. */
export async function soundBytesOf(name: string): Promise<Result<Uint8Array>> {
  const bytes = await namedSound(name);
  return bytes.ok && isAac(bytes.value) ? convertedSound(name) : bytes;
}

/** The bytes of a recording named on the command line, as they are; its issues have paths below the name. */
export async function namedSound(name: string): Promise<Result<Uint8Array>> {
  const bytes = await readNamed(name, { max: MAX_RECORDING_BYTES, issue: recordingTooLarge });
  return bytes.ok ? bytes : refuse(...bytes.issues.map((issue) => ({ ...issue, path: '' })));
}

/** A recording this program reads none of itself, as WAV. */
export function convertedSound(name: string): Promise<Result<Uint8Array>> {
  return convertSound(name, { mostBytes: MAX_RECORDING_BYTES, mostMs: CONVERT_MS });
}

/** A recording in the input of a calculation: the path of a file. */
export const readSoundAt: ReadSound = async (given) => {
  if (typeof given !== 'string') return refuse({ code: 'type', path: '', given, allowed: 'the path of a recording', params: { kind: 'sound' } });
  const bytes = await soundBytesOf(given);
  return bytes.ok ? map(await readRecording(bytes.value), ({ samples }) => samples) : bytes;
};
