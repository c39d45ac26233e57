import { carriedUncertaintiesOf } from '#numerics';
import { type Degrees, type Millimetres, type Newtons, degrees, millimetres, newtons } from '#units';
import { type BearingNote, RADIANS_PER_DEGREE, bearingOf } from './bearing.ts';
import { type BearingDoubt, bearingUncertaintyOf } from './bearing-uncertainty.ts';
import { type GaugeFeet, gaugeAngleOf } from './gauge.ts';

/** What pulls over the bridge at a note. */
export interface Pull {
  /** Of one string. */
  readonly tensionN: Newtons;
  readonly strings: number;
  /** Standard uncertainty (k = 1). */
  readonly tensionUncertaintyN?: Newtons | undefined;
}

/** The three heights and two lengths of a note. */
export interface HeightsRead extends Omit<BearingNote, 'tensionN' | 'strings'> {
  readonly source: 'heights';
  /** True where one of them was laid between measured neighbours, or noted as an estimate. */
  readonly isEstimated: boolean;
  /** Absent unless heights and lengths both state how sure they are. */
  readonly doubt?: Omit<BearingDoubt, 'tensionUncertaintyN'>;
}

/** Angles as a gauge reads them, one or both. */
export interface AnglesRead {
  readonly source: 'angles';
  readonly frontDeg?: Degrees;
  readonly rearDeg?: Degrees;
  readonly frontUncertaintyDeg?: Degrees;
  readonly rearUncertaintyDeg?: Degrees;
}

/** A gauge of three feet as read. */
export interface GaugeRead extends GaugeFeet {
  readonly source: 'gauge';
  readonly readingMm: Millimetres;
  readonly readingUncertaintyMm?: Millimetres;
}

/** How the bearing of a note was taken. */
export type BearingRead = HeightsRead | AnglesRead | GaugeRead;

/** What follows of a note; absent is what the reading does not tell. Uncertainties are standard ones (k = 1). */
export interface BearingFigures {
  readonly frontDeg?: Degrees;
  readonly rearDeg?: Degrees;
  readonly totalDeg?: Degrees;
  readonly forceN?: Newtons;
  readonly frontUncertaintyDeg?: Degrees;
  readonly rearUncertaintyDeg?: Degrees;
  readonly totalUncertaintyDeg?: Degrees;
  readonly forceUncertaintyN?: Newtons;
}

/**
 * Bearing of a note from whatever was read of it: heights give front, rear, total and force; angles the same once both
 * are read; a gauge the total alone, its force with the base of the gauge as datum. Without a pull there is no force.
 * @source VARIGNON-1687
 */
export function bearingAsRead(read: BearingRead, pull?: Pull): BearingFigures {
  switch (read.source) {
    case 'heights': return fromHeights(read, pull);
    case 'angles': return fromAngles(read, pull);
    case 'gauge': return fromGauge(read, pull);
  }
}

/** F = n·T·(sin a + sin b), down positive. @source VARIGNON-1687 */
export function forceOfAngles({ tensionN, strings, frontDeg, rearDeg }: Pull & { readonly frontDeg: Degrees; readonly rearDeg: Degrees }): Newtons {
  return newtons(strings * tensionN * (Math.sin(frontDeg * RADIANS_PER_DEGREE) + Math.sin(rearDeg * RADIANS_PER_DEGREE)));
}

/** Standard uncertainty of {@link forceOfAngles}, angles and tension independent. First order. @source JCGM-100 clause 5.1.2 */
export function angleForceUncertaintyOf(of: Pull & { readonly frontDeg: Degrees; readonly rearDeg: Degrees; readonly frontUncertaintyDeg: Degrees; readonly rearUncertaintyDeg: Degrees; readonly tensionUncertaintyN: Newtons }): Newtons {
  const [force = 0] = carriedUncertaintiesOf(
    ([front = 0, rear = 0, tension = 0]) => [forceOfAngles({ strings: of.strings, tensionN: newtons(tension), frontDeg: degrees(front), rearDeg: degrees(rear) })],
    [of.frontDeg, of.rearDeg, of.tensionN],
    [of.frontUncertaintyDeg, of.rearUncertaintyDeg, of.tensionUncertaintyN],
  );
  return newtons(force);
}

/** A pull that stands in where none is known; no force is told of it. */
const NO_PULL: Pull = { tensionN: newtons(1), strings: 1 };

function fromHeights({ source: _, isEstimated: __, doubt, ...heights }: HeightsRead, pull: Pull | undefined): BearingFigures {
  const note = { ...heights, ...(pull ?? NO_PULL) };
  const { frontDeg, rearDeg, totalDeg, forceN } = bearingOf(note);
  const angles = { frontDeg, rearDeg, totalDeg, ...(pull === undefined ? {} : { forceN }) };
  const uncertainty = doubt === undefined ? undefined : bearingUncertaintyOf(note, { ...doubt, tensionUncertaintyN: pull?.tensionUncertaintyN });
  if (uncertainty === undefined) return angles;
  const { forceUncertaintyN, ...ofAngles } = uncertainty;
  return { ...angles, ...ofAngles, ...(pull?.tensionUncertaintyN === undefined ? {} : { forceUncertaintyN }) };
}

function fromAngles({ source: _, ...read }: AnglesRead, pull: Pull | undefined): BearingFigures {
  const { frontDeg, rearDeg, frontUncertaintyDeg, rearUncertaintyDeg } = read;
  if (frontDeg === undefined || rearDeg === undefined) return read;
  const together = { ...read, totalDeg: degrees(frontDeg + rearDeg), ...(pull === undefined ? {} : { forceN: forceOfAngles({ ...pull, frontDeg, rearDeg }) }) };
  if (frontUncertaintyDeg === undefined || rearUncertaintyDeg === undefined) return together;
  const tensionUncertaintyN = pull?.tensionUncertaintyN;
  return {
    ...together, totalUncertaintyDeg: degrees(Math.hypot(frontUncertaintyDeg, rearUncertaintyDeg)),
    ...(pull === undefined || tensionUncertaintyN === undefined ? {} : { forceUncertaintyN: angleForceUncertaintyOf({ ...pull, frontDeg, rearDeg, frontUncertaintyDeg, rearUncertaintyDeg, tensionUncertaintyN }) }),
  };
}

function fromGauge(read: GaugeRead, pull: Pull | undefined): BearingFigures {
  const totalDeg = gaugeAngleOf(read);
  if (read.readingUncertaintyMm === undefined) return { totalDeg, ...(pull === undefined ? {} : { forceN: gaugeForceOf(read, pull) }) };
  const [total = 0, force = 0] = carriedUncertaintiesOf(
    ([reading = 0, tension = 0]) => {
      const at = { ...read, readingMm: millimetres(reading) };
      return [gaugeAngleOf(at), gaugeForceOf(at, { strings: pull?.strings ?? 1, tensionN: newtons(tension) })];
    },
    [read.readingMm, pull?.tensionN ?? 0],
    [read.readingUncertaintyMm, pull?.tensionUncertaintyN ?? 0],
  );
  return {
    totalDeg, totalUncertaintyDeg: degrees(total), ...(pull === undefined ? {} : { forceN: gaugeForceOf(read, pull) }),
    ...(pull?.tensionUncertaintyN === undefined ? {} : { forceUncertaintyN: newtons(force) }),
  };
}

/** F = n·T·(sin atan(r/s_f) + sin atan(r/s_r)): a lean of the gauge takes less than one part in 10 000 from it up to 1°. @source VARIGNON-1687 */
export function gaugeForceOf({ frontSpanMm, rearSpanMm, readingMm }: GaugeFeet & { readonly readingMm: Millimetres }, { tensionN, strings }: Pull): Newtons {
  return newtons(strings * tensionN * (readingMm / Math.hypot(frontSpanMm, readingMm) + readingMm / Math.hypot(rearSpanMm, readingMm)));
}
