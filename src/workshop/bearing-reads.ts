import type { AnglesRead, BearingRead, GaugeRead, HeightsRead } from '#belly';
import type { ScaleTerms } from '#instrument';
import type { AnalysedNote } from '#strings';
import { degrees, millimetres } from '#units';
import type { BellySizes, StationHeights } from './bearing-stations.ts';
import type { Size } from './scale-sizes.ts';

/** Everything known of one note that its bearing can be read from. */
export interface BearingOfNote {
  readonly sizes: BellySizes;
  readonly heights: StationHeights;
  readonly string: AnalysedNote | undefined;
  readonly terms: ScaleTerms | null;
}

/**
 * Every way the bearing of a note was read, the one to go by first: heights measured at the note, both angles, the gauge,
 * heights laid between stations, one angle alone.
 */
export function readsOf(note: BearingOfNote): readonly BearingRead[] {
  const [heights, angles, gauge] = [heightsReadOf(note), anglesReadOf(note), gaugeReadOf(note)];
  const isWhole = angles?.frontDeg !== undefined && angles.rearDeg !== undefined;
  const isMeasured = heights?.isEstimated === false;
  return [isMeasured ? heights : undefined, isWhole ? angles : undefined, gauge, isMeasured ? undefined : heights, isWhole ? undefined : angles].flatMap((read) => read ?? []);
}

function heightsReadOf({ heights, string, terms }: BearingOfNote): HeightsRead | undefined {
  const { frontHeightMm, bridgeHeightMm, rearHeightMm, backLengthMm } = heights;
  const speakingLengthMm = string?.speakingLengthMm;
  if (speakingLengthMm === undefined || frontHeightMm === undefined || bridgeHeightMm === undefined || rearHeightMm === undefined || backLengthMm === undefined) return undefined;
  const isEstimated = [frontHeightMm, bridgeHeightMm, rearHeightMm, backLengthMm].some((size) => size.isEstimated);
  const doubt = isEstimated || string?.isLengthEstimated === true ? undefined : doubtOf({ heights: [frontHeightMm, bridgeHeightMm, rearHeightMm], back: backLengthMm, string, terms });
  return {
    source: 'heights', isEstimated, speakingLengthMm, backLengthMm: millimetres(backLengthMm.value),
    frontHeightMm: millimetres(frontHeightMm.value), bridgeHeightMm: millimetres(bridgeHeightMm.value), rearHeightMm: millimetres(rearHeightMm.value),
    ...(doubt === undefined ? {} : { doubt }),
  };
}

interface Sureness {
  readonly heights: readonly Size[];
  readonly back: Size;
  readonly string: AnalysedNote | undefined;
  readonly terms: ScaleTerms | null;
}

/** How sure the sizes are: a reading's own uncertainty before the terms'; of three heights the largest. Unknown unless heights and lengths are all stated. */
function doubtOf({ heights, back, string, terms }: Sureness): HeightsRead['doubt'] {
  const each = heights.map(({ uncertainty }) => uncertainty ?? terms?.heightUncertaintyMm);
  const length = string?.doubt?.lengthUncertaintyMm ?? terms?.lengthUncertaintyMm;
  const backLength = back.uncertainty ?? terms?.lengthUncertaintyMm;
  const known = each.flatMap((one) => one ?? []);
  if (known.length < each.length || length == null || backLength == null) return undefined;
  return { heightUncertaintyMm: millimetres(Math.max(...known)), speakingLengthUncertaintyMm: millimetres(length), backLengthUncertaintyMm: millimetres(backLength) };
}

function anglesReadOf({ sizes: { frontBearingDeg: front, rearBearingDeg: rear } }: BearingOfNote): AnglesRead | undefined {
  if (front === undefined && rear === undefined) return undefined;
  return {
    source: 'angles',
    ...(front === undefined ? {} : { frontDeg: degrees(front.value) }), ...(rear === undefined ? {} : { rearDeg: degrees(rear.value) }),
    ...(front?.uncertainty === undefined ? {} : { frontUncertaintyDeg: degrees(front.uncertainty) }), ...(rear?.uncertainty === undefined ? {} : { rearUncertaintyDeg: degrees(rear.uncertainty) }),
  };
}

function gaugeReadOf({ sizes: { bearingGaugeMm: read }, terms }: BearingOfNote): GaugeRead | undefined {
  if (read === undefined || terms?.gaugeFrontSpanMm == null || terms.gaugeRearSpanMm == null) return undefined;
  return {
    source: 'gauge', readingMm: millimetres(read.value), frontSpanMm: millimetres(terms.gaugeFrontSpanMm), rearSpanMm: millimetres(terms.gaugeRearSpanMm),
    ...(read.uncertainty === undefined ? {} : { readingUncertaintyMm: millimetres(read.uncertainty) }),
  };
}
