import { describe, expect, it } from 'vitest';
import { hasDiedAway, levelOfPiece } from './level.ts';

const PIECE_S = 2048 / 48_000;

describe('the level of a piece', () => {
  it('is that of a sine: 3.01 dB between peak and root mean square (arithmetic)', () => {
    const sine = Float32Array.from({ length: 48_000 }, (_, at) => 0.5 * Math.sin((2 * Math.PI * 440 * at) / 48_000));
    const { peakDb, rmsDb, isClipped } = levelOfPiece([sine]);
    expect(peakDb).toBeCloseTo(-6.02, 2);
    expect(peakDb - rmsDb).toBeCloseTo(3.01, 2);
    expect(isClipped).toBe(false);
  });

  it('tells what is cut off, and calls nothing silent by a number without end', () => {
    expect(levelOfPiece([Float32Array.of(0, 1, -0.3)]).isClipped).toBe(true);
    expect(levelOfPiece([new Float32Array(64)])).toEqual({ peakDb: -120, rmsDb: -120, isClipped: false });
  });
});

describe('the end of a note', () => {
  const room = (seconds: number, db = -72): number[] => Array.from({ length: Math.round(seconds / PIECE_S) }, (_, at) => db + (at % 3) * 0.4);
  const note = (seconds: number, dbPerS: number): number[] => Array.from({ length: Math.round(seconds / PIECE_S) }, (_, at) => -15 - dbPerS * at * PIECE_S);

  it('is not heard in a quiet room, nor while a note still rings', () => {
    expect(hasDiedAway(room(5), PIECE_S)).toBe(false);
    expect(hasDiedAway([...room(1), ...note(3, 10)], PIECE_S)).toBe(false);
  });

  it('is heard when the room is quiet again, however loud the room, and after forty seconds at the latest', () => {
    expect(hasDiedAway([...room(1), ...note(3, 19), ...room(1)], PIECE_S)).toBe(true);
    expect(hasDiedAway([...room(1, -50), ...note(2, 17), ...room(1, -50)], PIECE_S)).toBe(true);
    expect(hasDiedAway([...room(1), ...note(3, 19), ...room(0.4)], PIECE_S)).toBe(false);
    expect(hasDiedAway([...room(1), ...note(39.5, 1)], PIECE_S)).toBe(true);
  });
});
