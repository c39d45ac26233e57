import { sumOf } from '#numerics';
import { type CubicMetres, type SquareMetres, type Seconds, seconds, squareMetres } from '#units';
import { type RoomAir, airDecayPerM } from './air-absorption.ts';
import { type PerBand, midbandOf, perBand } from './bands.ts';

/** A surface with what it takes in at each band. */
export interface RoomSurface {
  readonly areaM2: SquareMetres;
  readonly absorption: PerBand;
}

export interface Room {
  readonly volumeM3: CubicMetres;
  readonly surfaces: readonly RoomSurface[];
  /** Left out, the air takes nothing. */
  readonly air?: RoomAir;
}

/** Rival formulas of reverberation. */
export const reverberationModels = ['sabine', 'eyring'] as const;
export type ReverberationModel = (typeof reverberationModels)[number];

/** 24·ln 10/c at 343 m/s, as the textbooks round it. Seconds for each metre. @source SABINE-1922 */
export const SABINE_S_PER_M = 0.161;

/** Area of all surfaces. Square metres. */
export const areaOf = (surfaces: readonly RoomSurface[]): SquareMetres => squareMetres(sumOf(surfaces.map(({ areaM2 }) => areaM2)));

/** What the surfaces take in at a band, Σ Sᵢαᵢ. Square metres of open window. */
const takenInOf = (surfaces: readonly RoomSurface[], band: number): number => sumOf(surfaces.map(({ areaM2, absorption }) => areaM2 * (absorption[band] ?? 0)));

const airAreaOf = ({ volumeM3, air }: Room, band: number): number => (air === undefined ? 0 : 4 * airDecayPerM(air, midbandOf(band)) * volumeM3);

/** Absorption of a room by Sabine: Σ Sᵢαᵢ + 4mV. Square metres, by band. @source SABINE-1922 */
export const sabineAbsorptionOf = (room: Room): PerBand<SquareMetres> => perBand((band) => squareMetres(takenInOf(room.surfaces, band) + airAreaOf(room, band)));

/** Absorption of a room by Eyring: −S·ln(1 − ᾱ) + 4mV; infinite where every surface takes in everything. Square metres, by band. @source EYRING-1930 */
export function eyringAbsorptionOf(room: Room): PerBand<SquareMetres> {
  const area = areaOf(room.surfaces);
  return perBand((band) => squareMetres(area * -Math.log1p(-Math.min(1, takenInOf(room.surfaces, band) / area)) + airAreaOf(room, band)));
}

const absorptionBy = { sabine: sabineAbsorptionOf, eyring: eyringAbsorptionOf } as const;

/** What a model divides by, by band. Square metres. */
export const absorptionOf = (room: Room, model: ReverberationModel): PerBand<SquareMetres> => absorptionBy[model](room);

/** Time in which a sound falls by 60 dB: T = 0.161 V/A. Seconds, by band. Eyring where the mean absorption is above 0.2; the gap between both is a measure of doubt. @source SABINE-1922, EYRING-1930 */
export function reverberationOf(room: Room, model: ReverberationModel): PerBand<Seconds> {
  const absorption = absorptionOf(room, model);
  return perBand((band) => seconds((SABINE_S_PER_M * room.volumeM3) / (absorption[band] ?? Number.NaN)));
}

/** Mean of 500 and 1000 Hz. Seconds. */
export const midOf = (times: PerBand): Seconds => seconds((times[2] + times[3]) / 2);

/** How the bass lingers beside the middle: (T125 + T250)/(T500 + T1000). @source BERANEK-1962 */
export const bassRatioOf = (times: PerBand): number => (times[0] + times[1]) / (times[2] + times[3]);
