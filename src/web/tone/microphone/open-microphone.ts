import tapAddress from './tap-worklet.js?url';

/** What browsers do to speech and would do to a piano: each is asked to be off. */
const TREATMENTS = ['autoGainControl', 'echoCancellation', 'noiseSuppression'] as const;
export type Treatment = (typeof TREATMENTS)[number];

/** A microphone that listens. */
export interface OpenMicrophone {
  readonly sampleRateHz: number;
  /** Its name, as the device has it. */
  readonly name: string;
  /** What the device does to the sound although it was asked not to. */
  readonly treatments: readonly Treatment[];
  close(): void;
}

/** Opens the microphone with everything off that changes the sound, and hands on every piece it takes. @throws DOMException when it may not listen or there is none. */
export async function openMicrophone(onPiece: (channels: readonly Float32Array[]) => void): Promise<OpenMicrophone> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: Object.fromEntries(TREATMENTS.map((treatment) => [treatment, false])) });
  const context = new AudioContext();
  await context.audioWorklet.addModule(tapAddress);
  const source = context.createMediaStreamSource(stream);
  const tap = new AudioWorkletNode(context, 'tap', { numberOfOutputs: 0 });
  tap.port.addEventListener('message', ({ data }: MessageEvent<readonly Float32Array[]>) => { onPiece(data); });
  tap.port.start();
  source.connect(tap);
  await context.resume();
  const [track] = stream.getAudioTracks();
  const settings = track?.getSettings() ?? {};
  return {
    sampleRateHz: context.sampleRate,
    name: track?.label ?? '',
    treatments: TREATMENTS.filter((treatment) => settings[treatment] === true),
    close: () => {
      for (const one of stream.getTracks()) one.stop();
      void context.close();
    },
  };
}
