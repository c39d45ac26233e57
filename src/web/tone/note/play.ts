/** A sound to be played. */
export interface Played {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  readonly gain: number;
}

export interface Playing {
  stop(): void;
}

const BETWEEN_S = 0.4;
const LONGEST_S = 8;
const FADE_S = 0.05;

/** Gains by which sounds come out equally loud: each is brought down to the softest, so that none is overdriven. */
export function gainsFor(rms: readonly number[]): readonly number[] {
  const least = Math.min(...rms.filter((value) => value > 0));
  return rms.map((value) => (value > 0 && Number.isFinite(least) ? least / value : 1));
}

/** Plays sounds one after the other, each for eight seconds at most. */
export function play(sounds: readonly Played[], onEnd: () => void): Playing {
  const context = new AudioContext();
  let at = context.currentTime + 0.05;
  let last: AudioBufferSourceNode | undefined;
  for (const sound of sounds) {
    const seconds = Math.min(LONGEST_S, (sound.channels[0]?.length ?? 0) / sound.sampleRateHz);
    last = playAt(context, sound, { at, seconds });
    at += seconds + BETWEEN_S;
  }
  const end = (): void => {
    void context.close();
    onEnd();
  };
  last?.addEventListener('ended', end, { once: true });
  return {
    stop: () => {
      last?.removeEventListener('ended', end);
      if (context.state !== 'closed') void context.close();
    },
  };
}

function playAt(context: AudioContext, { channels, sampleRateHz, gain }: Played, { at, seconds }: { readonly at: number; readonly seconds: number }): AudioBufferSourceNode {
  const buffer = context.createBuffer(Math.max(1, channels.length), Math.max(1, channels[0]?.length ?? 1), sampleRateHz);
  channels.forEach((channel, index) => { buffer.copyToChannel(Float32Array.from(channel), index); });
  const source = new AudioBufferSourceNode(context, { buffer });
  const level = new GainNode(context, { gain });
  level.gain.setValueAtTime(gain, at + seconds - FADE_S);
  level.gain.linearRampToValueAtTime(0, at + seconds);
  source.connect(level).connect(context.destination);
  source.start(at, 0, seconds);
  return source;
}
