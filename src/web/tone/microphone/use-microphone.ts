import { useCallback, useEffect, useRef, useState } from 'react';
import { type Level, hasDiedAway, levelOfPiece } from './level.ts';
import { type OpenMicrophone, openMicrophone } from './open-microphone.ts';

/** Sound as it was taken, piece by piece. */
export interface TakenSound {
  readonly sampleRateHz: number;
  readonly channels: readonly Float32Array[];
  readonly isClipped: boolean;
  readonly takenAt: string;
}

interface Listening {
  readonly microphone: OpenMicrophone | undefined;
  readonly failure: string | undefined;
  readonly level: Level | undefined;
  readonly isTaking: boolean;
  /** True when what is being taken was cut off somewhere. */
  readonly isClipped: boolean;
  readonly seconds: number;
}

interface Taking {
  readonly pieces: (readonly Float32Array[])[];
  readonly levelsDb: number[];
  readonly takenAt: string;
  isClipped: boolean;
}

/** A microphone that listens while the component stands; taking begins and ends by word, or ends by itself when the note has died away. */
export function useMicrophone({ endsItself, onTaken }: { readonly endsItself: boolean; readonly onTaken: (sound: TakenSound) => void }) {
  const [now, setNow] = useState<Listening>({ microphone: undefined, failure: undefined, level: undefined, isTaking: false, isClipped: false, seconds: 0 });
  const open = useRef<OpenMicrophone>(undefined);
  const taking = useRef<Taking>(undefined);
  const latest = useRef({ endsItself, onTaken });
  useEffect(() => { latest.current = { endsItself, onTaken }; });
  const stop = useCallback((): void => {
    const taken = taking.current;
    taking.current = undefined;
    setNow((before) => ({ ...before, isTaking: false }));
    if (taken !== undefined && taken.pieces.length > 0 && open.current !== undefined) latest.current.onTaken(soundOf(taken, open.current.sampleRateHz));
  }, []);
  const hear = useCallback((piece: readonly Float32Array[]): void => {
    const level = levelOfPiece(piece);
    const taken = taking.current;
    const pieceS = (piece[0]?.length ?? 0) / (open.current?.sampleRateHz ?? 48_000);
    if (taken !== undefined) {
      taken.pieces.push(piece);
      taken.levelsDb.push(level.rmsDb);
      taken.isClipped ||= level.isClipped;
    }
    setNow((before) => ({ ...before, level, isClipped: taken?.isClipped ?? before.isClipped, seconds: (taken?.pieces.length ?? 0) * pieceS }));
    if (taken !== undefined && latest.current.endsItself && hasDiedAway(taken.levelsDb, pieceS)) stop();
  }, [stop]);
  useEffect(() => {
    let isGone = false;
    openMicrophone(hear).then((microphone) => {
      if (isGone) {
        microphone.close();
        return;
      }
      open.current = microphone;
      setNow((before) => ({ ...before, microphone }));
    }, (error: unknown) => { if (!isGone) setNow((before) => ({ ...before, failure: error instanceof Error ? error.name : String(error) })); });
    return () => {
      isGone = true;
      open.current?.close();
      open.current = undefined;
    };
  }, [hear]);
  const start = useCallback((): void => {
    taking.current = { pieces: [], levelsDb: [], takenAt: new Date().toISOString(), isClipped: false };
    setNow((before) => ({ ...before, isTaking: true, isClipped: false, seconds: 0 }));
  }, []);
  return { ...now, start, stop };
}

function soundOf({ pieces, isClipped, takenAt }: Taking, sampleRateHz: number): TakenSound {
  const count = pieces[0]?.length ?? 0;
  const channels = Array.from({ length: count }, (_, channel) => {
    const own = pieces.map((piece) => piece[channel] ?? new Float32Array());
    const all = new Float32Array(own.reduce((sum, { length }) => sum + length, 0));
    own.reduce((at, part) => {
      all.set(part, at);
      return at + part.length;
    }, 0);
    return all;
  });
  return { sampleRateHz, channels, isClipped, takenAt };
}
