import { type Issue } from '#result';
import { readRecording } from '#recording';
import { impulseAnswerOf, roomImpulseOf } from '#room';
import type { ThreadWatch } from '../ui/thread.ts';

/** A sound to be listened to, and the sweep that was played, where one was. */
export interface ImpulseOrder {
  readonly bytes: ArrayBuffer;
  readonly sweep?: { readonly fromHz: number; readonly toHz: number; readonly lengthS: number } | undefined;
}

export type ImpulseAnswer = ReturnType<typeof impulseAnswerOf>;
export type ImpulseNews = { readonly type: 'progress'; readonly part: number } | { readonly type: 'heard'; readonly answer: ImpulseAnswer } | { readonly type: 'refused'; readonly issues: readonly Issue[] };

/** Reads a recording and hears the room in it, band by band. */
export async function hearRoom({ bytes, sweep }: ImpulseOrder, { onNews }: ThreadWatch<ImpulseNews>): Promise<void> {
  const read = await readRecording(new Uint8Array(bytes));
  if (!read.ok) {
    onNews({ type: 'refused', issues: read.issues });
    return;
  }
  onNews({ type: 'progress', part: 0.1 });
  const heard = roomImpulseOf(read.value.samples, sweep as Parameters<typeof roomImpulseOf>[1], (done, of) => { onNews({ type: 'progress', part: 0.1 + (0.9 * done) / of }); });
  onNews({ type: 'heard', answer: impulseAnswerOf(heard) });
}
