import { type CubicMetres, type Ratio, type Seconds, seconds } from '#units';
import { type PerBand, perBand } from './bands.ts';
import type { ReverberationTarget } from './target.ts';

/** A target that comes from whoever uses the program: a standard they own, the wish of a house. */
export interface OwnTarget {
  readonly name: string;
  /** T = slope·lg V + offset with V in cubic metres, or one time for every volume. */
  readonly time: { readonly slopeS: Seconds; readonly offsetS: Seconds } | { readonly fixedS: Seconds };
  /** Share of that time each band may have. */
  readonly lower: readonly Ratio[];
  readonly upper: readonly Ratio[];
  /** What volumes it is stated for; nothing where it says none. */
  readonly volumes: { readonly fromM3: CubicMetres; readonly toM3: CubicMetres } | null;
  readonly source: string;
}

/** Time an own target gives a volume, T = a·lg V + b or the fixed one. Seconds; may come out at nought or less where the formula is stretched. @source OWN as stated by the user */
export const ownTimeOf = ({ time }: Pick<OwnTarget, 'time'>, volumeM3: CubicMetres): Seconds => ('fixedS' in time ? time.fixedS : seconds(time.slopeS * Math.log10(volumeM3) + time.offsetS));

/** Reverberation time wanted by an own target, and its tolerance by band. Seconds. @source OWN as stated by the user */
export function ownTargetOf(volumeM3: CubicMetres, own: OwnTarget): ReverberationTarget {
  const time = ownTimeOf(own, volumeM3);
  const allowed = (shares: readonly Ratio[]): PerBand<Seconds> => perBand((band) => seconds(time * (shares[band] ?? Number.NaN)));
  const { volumes } = own;
  return {
    seconds: time, lower: allowed(own.lower), upper: allowed(own.upper), standard: own.source === '' ? own.name : `${own.name}: ${own.source}`, ...volumes,
    outsideVolumes: volumes !== null && (volumeM3 < volumes.fromM3 || volumeM3 > volumes.toM3),
  };
}
