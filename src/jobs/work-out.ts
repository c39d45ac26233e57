import { readRecording } from '#recording';
import { type Result, map } from '#result';
import { workedOutOf } from '#workshop';
import type { ToThread } from './messages.ts';

/** Works a task out: the sound out of its file, then the figures out of the sound. What is wrong with either comes back as issues. */
export async function workOut({ task, bytes }: ToThread, onProgress: (progress: number) => void): Promise<Result<unknown>> {
  const read = await readRecording(bytes);
  onProgress(0.1);
  return map(read, ({ samples }) => workedOutOf(task.method, samples, task.input, (part) => { onProgress(0.1 + 0.9 * part); }));
}
