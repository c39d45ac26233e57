import { sumOf } from '#numerics';
import { type Seconds, ratio, type Ratio } from '#units';
import { type PerBand, midbandOf, perBand } from './bands.ts';
import { airDecayPerM } from './air-absorption.ts';
import { type ReverberationModel, type Room, SABINE_S_PER_M, areaOf } from './reverberation.ts';

/** How far a published figure may be off: the share of it and, for figures near nought, the least. @source PRACTICE */
export const USUAL_DOUBT = { share: 0.5, least: 0.03 } as const;
const MOST_ABSORPTION = 1;
const HALVINGS = 200;

export interface FitQuestion {
  readonly room: Room;
  readonly model: ReverberationModel;
  /** Nothing where the band was not told. */
  readonly measured: PerBand<Seconds | null>;
  /** How far each surface may move, up and down, by band. */
  readonly doubts: readonly PerBand[];
}

/** One band fitted. `held`: every surface stands at its limit and the time is still another. */
export interface BandFit {
  readonly absorption: readonly Ratio[];
  readonly seconds: Seconds | null;
  readonly outcome: 'fitted' | 'held' | 'unmeasured';
}

/** What the surfaces must take in together, Σ Sᵢαᵢ, for a time; below nought where the air alone takes more. Square metres. @source SABINE-1922, EYRING-1930 */
function wantedOf({ room, model }: FitQuestion, time: number, band: number): number {
  const air = room.air === undefined ? 0 : 4 * airDecayPerM(room.air, midbandOf(band)) * room.volumeM3;
  const wanted = (SABINE_S_PER_M * room.volumeM3) / time - air;
  const area = areaOf(room.surfaces);
  return model === 'sabine' ? wanted : area * (1 - Math.exp(-wanted / area));
}

/**
 * Absorption nearest to the one taken that gives the measured times: least Σ Sᵢ·((αᵢ − α₀ᵢ)/dᵢ)² with Σ Sᵢαᵢ as measured and |αᵢ − α₀ᵢ| ≤ dᵢ,
 * 0 ≤ αᵢ ≤ 1. So αᵢ = α₀ᵢ + μ·dᵢ², cut at its limits, and μ is found by halving: what is taken in grows with μ. @source OWN conditions of Karush, Kuhn and Tucker
 */
export function fitAbsorption(question: FitQuestion): PerBand<BandFit> {
  return perBand((band) => {
    const { room, measured, doubts } = question;
    const own = room.surfaces.map(({ absorption }) => absorption[band] ?? 0);
    const time = measured[band] ?? null;
    if (time === null) return { absorption: own.map(ratio), seconds: null, outcome: 'unmeasured' };
    const limits = own.map((alpha, at) => ({ low: Math.max(0, alpha - (doubts[at]?.[band] ?? 0)), high: Math.max(alpha, Math.min(MOST_ABSORPTION, alpha + (doubts[at]?.[band] ?? 0))) }));
    const at = (mu: number): readonly number[] => own.map((alpha, index) => Math.min(limits[index]?.high ?? alpha, Math.max(limits[index]?.low ?? alpha, alpha + mu * (doubts[index]?.[band] ?? 0) ** 2)));
    const takenIn = (alphas: readonly number[]): number => sumOf(alphas.map((alpha, index) => alpha * (room.surfaces[index]?.areaM2 ?? 0)));
    const wanted = wantedOf(question, time, band);
    const reach = 1 / Math.max(1e-6, Math.min(...doubts.flatMap((doubt) => ((doubt[band] ?? 0) > 0 ? [doubt[band] ?? 0] : []))));
    const alphas = at(rootOf((mu) => takenIn(at(mu)) - wanted, reach));
    const isMet = Math.abs(takenIn(alphas) - wanted) <= 1e-6 * Math.max(1e-9, Math.abs(wanted));
    return { absorption: alphas.map(ratio), seconds: time, outcome: isMet ? 'fitted' : 'held' };
  });
}

/** Where a growing function passes nought between −reach and reach; the end nearest to it where it does not. */
function rootOf(rising: (at: number) => number, reach: number): number {
  let [low, high] = [-reach, reach];
  for (let step = 0; step < HALVINGS && high - low > 0; step += 1) {
    const middle = (low + high) / 2;
    if (rising(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** How far the figures of a surface are doubted, by band: the usual share, and where tables differ as far as they do. */
export function doubtOf(absorption: PerBand, alsoGiven?: PerBand): PerBand {
  return perBand((band) => {
    const own = absorption[band] ?? 0;
    return Math.max(USUAL_DOUBT.least, USUAL_DOUBT.share * own, alsoGiven === undefined ? 0 : Math.abs((alsoGiven[band] ?? own) - own));
  });
}
