import { readRecording } from '#recording';
import type { Result } from '#result';
import type { ToThread } from './messages.ts';
import { methods } from './methods.ts';

/** Works a task out: the sound out of its file, then the figures out of the sound. What is wrong with either comes back as issues. */
export async function workOut({ task, bytes }: ToThread, onProgress: (progress: number) => void): Promise<Result<unknown>> {
  const read = await readRecording(bytes);
  if (!read.ok) return read;
  onProgress(0.1);
  return methods[task.method](read.value, task.input, (part) => { onProgress(0.1 + 0.9 * part); });
}
