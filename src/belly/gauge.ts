import { carriedUncertaintiesOf } from '#numerics';
import { type Degrees, type Millimetres, degrees, millimetres } from '#units';
import { RADIANS_PER_DEGREE } from './bearing.ts';

/** A gauge of three feet: one on the bridge, one on the string before it, one behind. */
export interface GaugeFeet {
  readonly frontSpanMm: Millimetres;
  readonly rearSpanMm: Millimetres;
}

/**
 * How far the foot on the bridge stands above the line of the outer two: r = s_f·s_r/(s_f + s_r)·(tan a + tan b), spans
 * and reading along and square to the datum of the angles. Millimetres; negative where the string sags over the bridge.
 * Keep the feet more than 15 mm from the bridge pins: stiff wire is still bent there.
 * @source OWN two similar triangles
 */
export function gaugeReadingOf({ frontSpanMm, rearSpanMm, frontDeg, rearDeg }: GaugeFeet & { readonly frontDeg: Degrees; readonly rearDeg: Degrees }): Millimetres {
  const slope = Math.tan(frontDeg * RADIANS_PER_DEGREE) + Math.tan(rearDeg * RADIANS_PER_DEGREE);
  return millimetres((frontSpanMm * rearSpanMm * slope) / (frontSpanMm + rearSpanMm));
}

/**
 * The total angle behind a reading: θ = atan(r/s_f) + atan(r/s_r), the base of the gauge being the datum. How it is
 * shared between front and rear the reading does not tell. A gauge whose base leans, because one side carries all the
 * angle, differs from the level one by less than one part in 10 000 up to 1°.
 * @source OWN angles at the base of a triangle of which the height is known
 */
export function gaugeAngleOf({ frontSpanMm, rearSpanMm, readingMm }: GaugeFeet & { readonly readingMm: Millimetres }): Degrees {
  return degrees((Math.atan2(readingMm, frontSpanMm) + Math.atan2(readingMm, rearSpanMm)) / RADIANS_PER_DEGREE);
}

/** Standard uncertainty of the total angle, from those of the reading and of either span. First order. @source JCGM-100 clause 5.1.2 */
export function gaugeUncertaintyOf(read: GaugeFeet & { readonly readingMm: Millimetres }, { readingUncertaintyMm, spanUncertaintyMm }: { readonly readingUncertaintyMm: Millimetres; readonly spanUncertaintyMm: Millimetres }): Degrees {
  const [total = 0] = carriedUncertaintiesOf(
    ([front = 0, rear = 0, reading = 0]) => [gaugeAngleOf({ frontSpanMm: millimetres(front), rearSpanMm: millimetres(rear), readingMm: millimetres(reading) })],
    [read.frontSpanMm, read.rearSpanMm, read.readingMm],
    [spanUncertaintyMm, spanUncertaintyMm, readingUncertaintyMm],
  );
  return degrees(total);
}
