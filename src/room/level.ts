import { type Decibels, type Seconds, type CubicMetres, decibels } from '#units';
import { SABINE_S_PER_M } from './reverberation.ts';

/** What a source sends out and how strongly towards the place asked about: 1 evenly all round. */
export interface Source {
  readonly powerDb: Decibels;
  readonly directivity: number;
}

export interface LevelRoom {
  readonly volumeM3: CubicMetres;
  readonly reverberationS: Seconds;
}

const absorptionAreaOf = ({ volumeM3, reverberationS }: LevelRoom): number => (SABINE_S_PER_M * volumeM3) / reverberationS;
const gainOf = (room: LevelRoom, directivity: number, distanceM: number): number => 10 * Math.log10(directivity / (4 * Math.PI * distanceM ** 2) + 4 / absorptionAreaOf(room));

/** Level at a distance: L = L_W + 10·lg(Q/(4πr²) + 4/A). Decibels. @source KUTTRUFF */
export const levelAt = (room: LevelRoom, { powerDb, directivity }: Source, distanceM: number): Decibels => decibels(powerDb + gainOf(room, directivity, distanceM));

/** Power behind a level read at a distance, the same turned round. Decibels over 1 pW. @source KUTTRUFF */
export const powerBehind = (room: LevelRoom, levelDb: Decibels, directivity: number, distanceM: number): Decibels => decibels(levelDb - gainOf(room, directivity, distanceM));

/** Level of the room’s own sound, far from the source: L_W + 10·lg(4/A). Decibels. @source KUTTRUFF */
export const reverberantLevelOf = (room: LevelRoom, powerDb: Decibels): Decibels => decibels(powerDb + 10 * Math.log10(4 / absorptionAreaOf(room)));

/** Where direct and reverberant sound are alike: √(Q·A/16π). Metres. @source KUTTRUFF */
export const criticalDistanceM = (room: LevelRoom, directivity: number): number => Math.sqrt((directivity * absorptionAreaOf(room)) / (16 * Math.PI));
