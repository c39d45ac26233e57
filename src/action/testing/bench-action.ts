import { degrees, millimetres, percent } from '#units';
import type { JackMeasures, StrokeMeasures } from '../stroke/assembly.ts';

const mm = millimetres;

/** A jack as it may be measured; invented. */
export const BENCH_JACK: JackMeasures = { heightMm: mm(52), toeMm: mm(25), overlapMm: mm(2) };

/** One key of an invented grand action, measured at half stroke; `changed` replaces some of it. */
export function benchActionWith(changed: Partial<StrokeMeasures> = {}): StrokeMeasures {
  return {
    levers: { keyFrontMm: mm(225), keyBackMm: mm(115), wippenHeelMm: mm(65), wippenJackMm: mm(96), rollerMm: mm(18), hammerMm: mm(130) },
    keyEdgeMm: mm(238), balanceHeightMm: mm(25), capstanHeightMm: mm(72), wippenCentreHeightMm: mm(85), jackTopHeightMm: mm(127), hammerCentreHeightMm: mm(142), stringHeightMm: mm(192),
    capstanRadiusMm: mm(6), rollerDiameterMm: mm(10), blowMm: mm(45), letOffMm: mm(1.5), dipMm: mm(10), lossMm: mm(0.3),
    measuredAtPct: percent(50), heelTiltDeg: degrees(0), jackTiltDeg: degrees(0), jack: BENCH_JACK,
    ...changed,
  };
}
