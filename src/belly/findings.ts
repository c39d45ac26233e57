import { type Degrees, degrees } from '#units';
import { type Bearing, type BearingSide, bearingSides } from './bearing.ts';
import type { BearingUncertainty } from './bearing-uncertainty.ts';

/** A row of notes, bass to treble; an angle that was not read is absent and not judged. */
export interface BearingRow extends Partial<Pick<Bearing, 'frontDeg' | 'rearDeg' | 'totalDeg'>> {
  readonly section?: string | undefined;
  readonly uncertainty?: Partial<Pick<BearingUncertainty, 'frontUncertaintyDeg' | 'rearUncertaintyDeg' | 'totalUncertaintyDeg'>> | undefined;
}

/** What is asked of the bearing; what is left out is not judged. */
export interface AskedBearing {
  /** Below this total angle, and not below nought, bearing counts as lost. */
  readonly leastTotalDeg?: Degrees | undefined;
  readonly mostTotalDeg?: Degrees | undefined;
  /** Largest step of the total angle between neighbours of one section. */
  readonly mostStepDeg?: Degrees | undefined;
}

/** What can be found of bearing: a string lifts; below the least, above the most, or further from its neighbour than asked. */
export const bearingFindingCodes = ['bearingNegative', 'bearingLost', 'bearingHigh', 'bearingUneven'] as const;
export type BearingFindingCode = (typeof bearingFindingCodes)[number];

export interface BearingFinding {
  readonly code: BearingFindingCode;
  /** Place in the row, from 0; of a step, the upper note. */
  readonly index: number;
  readonly side: BearingSide;
  /** The angle, or the step from the note below. */
  readonly figureDeg: Degrees;
  /** Nought, or what was asked. */
  readonly limitDeg: Degrees;
  /** Standard uncertainty of the figure, where it is known. */
  readonly uncertaintyDeg?: Degrees;
  /** Within twice its uncertainty of the limit: measure again before acting. */
  readonly inDoubt?: boolean;
}

/**
 * Findings of a row of notes: where a string lifts (a fact), and, only as far as limits are asked, where bearing is lost,
 * too high or uneven. A step is taken only between neighbours of one section, and only from note to next note.
 * @source JCGM-106 clause 8.3 for the doubt of 2·u at a limit
 */
export function bearingFindingsOf(row: readonly BearingRow[], asked: AskedBearing = {}): readonly BearingFinding[] {
  return row.flatMap((note, index) => [...negativeOf(note, index), ...outsideOf(note, index, asked), ...stepOf(row[index - 1], note, index, asked)]);
}

function negativeOf(note: BearingRow, index: number): readonly BearingFinding[] {
  return bearingSides.flatMap((side) => {
    const figure = readAngleOf(note, side);
    return figure === undefined || figure >= 0 ? [] : [finding({ code: 'bearingNegative', index, side, figure, limit: 0, uncertainty: uncertaintyOf(note, side) })];
  });
}

function outsideOf(note: BearingRow, index: number, { leastTotalDeg, mostTotalDeg }: AskedBearing): readonly BearingFinding[] {
  const { totalDeg } = note;
  if (totalDeg === undefined) return [];
  const about = { index, side: 'total', figure: totalDeg, uncertainty: uncertaintyOf(note, 'total') } as const;
  return [
    ...(leastTotalDeg !== undefined && totalDeg >= 0 && totalDeg < leastTotalDeg ? [finding({ ...about, code: 'bearingLost', limit: leastTotalDeg })] : []),
    ...(mostTotalDeg !== undefined && totalDeg > mostTotalDeg ? [finding({ ...about, code: 'bearingHigh', limit: mostTotalDeg })] : []),
  ];
}

function stepOf(below: BearingRow | undefined, note: BearingRow, index: number, { mostStepDeg }: AskedBearing): readonly BearingFinding[] {
  if (below?.totalDeg === undefined || note.totalDeg === undefined || mostStepDeg === undefined || below.section !== note.section) return [];
  const step = note.totalDeg - below.totalDeg;
  if (Math.abs(step) <= mostStepDeg) return [];
  const [one, other] = [uncertaintyOf(below, 'total'), uncertaintyOf(note, 'total')];
  const uncertainty = one === undefined || other === undefined ? undefined : Math.hypot(one, other);
  return [finding({ code: 'bearingUneven', index, side: 'total', figure: step, limit: mostStepDeg, uncertainty })];
}

function readAngleOf({ frontDeg, rearDeg, totalDeg }: BearingRow, side: BearingSide): number | undefined {
  return { front: frontDeg, rear: rearDeg, total: totalDeg }[side];
}

function uncertaintyOf({ uncertainty }: BearingRow, side: BearingSide): number | undefined {
  if (uncertainty === undefined) return undefined;
  return { front: uncertainty.frontUncertaintyDeg, rear: uncertainty.rearUncertaintyDeg, total: uncertainty.totalUncertaintyDeg }[side];
}

function finding({ code, index, side, figure, limit, uncertainty }: { readonly code: BearingFindingCode; readonly index: number; readonly side: BearingSide; readonly figure: number; readonly limit: number; readonly uncertainty: number | undefined }): BearingFinding {
  const beyond = code === 'bearingUneven' ? Math.abs(figure) - limit : Math.abs(figure - limit);
  return {
    code, index, side, figureDeg: degrees(figure), limitDeg: degrees(limit),
    ...(uncertainty === undefined ? {} : { uncertaintyDeg: degrees(uncertainty), inDoubt: beyond <= 2 * uncertainty }),
  };
}
