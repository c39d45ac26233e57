import { type CubicMetres, type Seconds, cubicMetres, seconds } from '#units';
import { type PerBand, perBand } from './bands.ts';

/** Group A of the standard: what a room is for. T = slope·lg V + at one cubic metre, for volumes between. @source DIN-18041 */
const groups = {
  music: { group: 'A1', slope: 0.45, offset: 0.07, fromM3: 30, toM3: 1000 },
  speech: { group: 'A2', slope: 0.37, offset: -0.14, fromM3: 50, toM3: 5000 },
  teaching: { group: 'A3', slope: 0.32, offset: -0.17, fromM3: 30, toM3: 5000 },
  'inclusive-teaching': { group: 'A4', slope: 0.26, offset: -0.14, fromM3: 30, toM3: 500 },
} as const;

export type RoomUse = keyof typeof groups;
/** What a room may be for. */
export const roomUses = Object.keys(groups) as readonly RoomUse[] as readonly [RoomUse, ...RoomUse[]];

/** Share of the target time that each band may have. @source DIN-18041-OPEN figures of an open program that holds the standard */
const LOWER: PerBand = [0.65, 0.8, 0.8, 0.8, 0.8, 0.65];
const UPPER: PerBand = [1.45, 1.2, 1.2, 1.2, 1.2, 1.2];

export interface ReverberationTarget {
  readonly seconds: Seconds;
  readonly lower: PerBand<Seconds>;
  readonly upper: PerBand<Seconds>;
  readonly standard: string;
  /** Volumes it is stated for, where it says so. */
  readonly fromM3?: CubicMetres | undefined;
  readonly toM3?: CubicMetres | undefined;
  readonly outsideVolumes: boolean;
}

/** Reverberation time wanted of a room with people in it, and its tolerance by band. Seconds. @source DIN-18041 */
export function reverberationTargetOf(volumeM3: CubicMetres, use: RoomUse): ReverberationTarget {
  const { group, slope, offset, fromM3, toM3 } = groups[use];
  const time = Math.max(0, slope * Math.log10(volumeM3) + offset);
  return {
    seconds: seconds(time),
    lower: perBand((band) => seconds(time * (LOWER[band] ?? Number.NaN))),
    upper: perBand((band) => seconds(time * (UPPER[band] ?? Number.NaN))),
    standard: `DIN 18041:2016-03, ${group}`,
    fromM3: cubicMetres(fromM3), toM3: cubicMetres(toM3),
    outsideVolumes: volumeM3 < fromM3 || volumeM3 >= toM3,
  };
}
