import { defineOperation, field } from '#operation';
import { map } from '#result';
import { degrees, newtons } from '#units';
import { z } from 'zod';
import { angleForceUncertaintyOf, forceOfAngles } from '../as-read.ts';
import { negativeSidesOf } from '../bearing.ts';
import { pullOf } from '../pull.ts';
import { doubtShape, negativeField, noteShape, uncertaintyShape } from '../schemas.ts';

const angle = (describe: string) => field.degrees({ min: -80, max: 80, describe });
const doubt = (describe: string) => field.degrees({ min: 0, max: 80, describe }).optional();

/** Bearing of a note from front and rear angle as a gauge reads them. */
export const bearingAnglesOperation = defineOperation({
  name: 'bearing-angles',
  input: z.strictObject({
    frontDeg: angle('Before the bridge, negative where the string lifts'),
    rearDeg: angle('Behind the bridge, negative where the string lifts'),
    tensionN: noteShape.tensionN.optional(),
    strings: noteShape.strings.optional(),
    frontUncertaintyDeg: doubt('Standard uncertainty of the front angle'),
    rearUncertaintyDeg: doubt('Standard uncertainty of the rear angle'),
    tensionUncertaintyN: doubtShape.tensionUncertaintyN,
  }),
  output: z.strictObject({
    totalDeg: field.degrees({ describe: 'Front and rear together' }),
    forceN: field.newtons({ describe: 'Of all strings of the note, where tension and count are given; down positive' }).optional(),
    negative: negativeField,
    totalUncertaintyDeg: uncertaintyShape.totalUncertaintyDeg,
    forceUncertaintyN: uncertaintyShape.forceUncertaintyN,
  }),
  formula: ['θ = a + b', 'F = n·T·(sin a + sin b)', 'u(θ)² = u(a)² + u(b)²', 'u(F)² = Σ (∂F/∂x·u(x))²'],
  sources: ['VARIGNON-1687', 'JCGM-100'],
  example: { frontDeg: 0.2, rearDeg: 0.7, tensionN: 680, strings: 3 },
  run: (input) => map(pullOf(input), (pull) => {
    const { frontDeg, rearDeg, frontUncertaintyDeg, rearUncertaintyDeg, tensionUncertaintyN } = input;
    const totalDeg = degrees(frontDeg + rearDeg);
    const isSure = frontUncertaintyDeg !== undefined || rearUncertaintyDeg !== undefined;
    const doubts = { frontUncertaintyDeg: frontUncertaintyDeg ?? degrees(0), rearUncertaintyDeg: rearUncertaintyDeg ?? degrees(0), tensionUncertaintyN: tensionUncertaintyN ?? newtons(0) };
    return {
      totalDeg, negative: [...negativeSidesOf({ frontDeg, rearDeg, totalDeg })],
      ...(pull === undefined ? {} : { forceN: forceOfAngles({ ...pull, frontDeg, rearDeg }) }),
      ...(isSure ? { totalUncertaintyDeg: degrees(Math.hypot(doubts.frontUncertaintyDeg, doubts.rearUncertaintyDeg)) } : {}),
      ...(pull !== undefined && (isSure || tensionUncertaintyN !== undefined) ? { forceUncertaintyN: angleForceUncertaintyOf({ ...pull, ...doubts, frontDeg, rearDeg }) } : {}),
    };
  }),
});
