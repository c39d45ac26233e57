import { readRecording } from '#recording';
import { type PictureSpan, type SoundPicture, pictureOf } from './sound-picture.ts';

/** What the worker is asked for, and what it says. */
export interface PictureAsked {
  readonly bytes: ArrayBuffer;
  readonly span: PictureSpan;
}
export type PictureSaid =
  | { readonly kind: 'progress'; readonly part: number }
  | { readonly kind: 'picture'; readonly picture: SoundPicture; readonly channels: readonly Float32Array[]; readonly sampleRateHz: number }
  | { readonly kind: 'unreadable' };

addEventListener('message', ({ data: { bytes, span } }: MessageEvent<PictureAsked>) => {
  const say = (said: PictureSaid): void => { postMessage(said); };
  void readRecording(new Uint8Array(bytes)).then((read) => {
    if (!read.ok) {
      say({ kind: 'unreadable' });
      return;
    }
    const { samples } = read.value;
    const picture = pictureOf(samples, span, (part) => { say({ kind: 'progress', part }); });
    say({ kind: 'picture', picture, channels: samples.channels.map((channel) => Float32Array.from(channel)), sampleRateHz: samples.sampleRateHz });
  });
});
