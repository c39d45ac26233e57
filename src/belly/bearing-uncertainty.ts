import { carriedUncertaintiesOf } from '#numerics';
import { type Issue, type Result, ok, refuse } from '#result';
import { type Degrees, type Millimetres, type Newtons, degrees, millimetres, newtons } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';

/** How sure the figures of a note are; standard uncertainties (k = 1), nought where left out. */
export interface BearingDoubt {
  /** Of each of the three heights, independent of one another. */
  readonly heightUncertaintyMm?: Millimetres | undefined;
  readonly speakingLengthUncertaintyMm?: Millimetres | undefined;
  readonly backLengthUncertaintyMm?: Millimetres | undefined;
  readonly tensionUncertaintyN?: Newtons | undefined;
}

/** Standard uncertainties (k = 1). */
export interface BearingUncertainty {
  readonly frontUncertaintyDeg: Degrees;
  readonly rearUncertaintyDeg: Degrees;
  readonly totalUncertaintyDeg: Degrees;
  readonly forceUncertaintyN: Newtons;
}

/**
 * What errors of heights, lengths and tension make of angles and force, carried by central differences.
 * For small angles u(θ)² = u(h)²·[1/L² + 1/L_r² + (1/L + 1/L_r)²]: the bridge height counts on both sides, and the short
 * back length decides. One error of tension is common to the strings of the note.
 *
 * @returns `undefined` where nothing is stated, so that nothing is claimed.
 * @source JCGM-100 clauses 5.1.2 and 5.1.3
 */
export function bearingUncertaintyOf(note: BearingNote, doubt: BearingDoubt): BearingUncertainty | undefined {
  const { heightUncertaintyMm: height, speakingLengthUncertaintyMm: length, backLengthUncertaintyMm: back, tensionUncertaintyN: tension } = doubt;
  if ([height, length, back, tension].every((each) => each === undefined)) return undefined;
  const [front = 0, rear = 0, total = 0, force = 0] = carriedUncertaintiesOf(
    (sizes) => {
      const { frontDeg, rearDeg, totalDeg, forceN } = bearingOf(noteWith(note, sizes));
      return [frontDeg, rearDeg, totalDeg, forceN];
    },
    [note.frontHeightMm, note.bridgeHeightMm, note.rearHeightMm, note.speakingLengthMm, note.backLengthMm, note.tensionN],
    [height ?? 0, height ?? 0, height ?? 0, length ?? 0, back ?? 0, tension ?? 0],
  );
  return { frontUncertaintyDeg: degrees(front), rearUncertaintyDeg: degrees(rear), totalUncertaintyDeg: degrees(total), forceUncertaintyN: newtons(force) };
}

function noteWith(note: BearingNote, [front = 0, bridge = 0, rear = 0, length = 0, back = 0, tension = 0]: readonly number[]): BearingNote {
  return {
    strings: note.strings,
    frontHeightMm: millimetres(front), bridgeHeightMm: millimetres(bridge), rearHeightMm: millimetres(rear),
    speakingLengthMm: millimetres(length), backLengthMm: millimetres(back), tensionN: newtons(tension),
  };
}

/** Refuses an uncertainty as large as the length or tension it belongs to: first order would mean nothing. */
export function checkDoubt<T extends BearingNote>(note: T, doubt: BearingDoubt): Result<T> {
  const issues = ([
    ['speakingLengthUncertaintyMm', doubt.speakingLengthUncertaintyMm, note.speakingLengthMm],
    ['backLengthUncertaintyMm', doubt.backLengthUncertaintyMm, note.backLengthMm],
    ['tensionUncertaintyN', doubt.tensionUncertaintyN, note.tensionN],
  ] as const).flatMap(([path, uncertainty, whole]): readonly Issue[] =>
    (uncertainty ?? 0) < whole ? [] : [{ code: 'range', path, given: uncertainty, allowed: `less than the figure itself, ${String(whole)}`, params: { below: whole } }]);
  return issues.length === 0 ? ok(note) : refuse(...issues);
}
