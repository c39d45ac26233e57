import { defineOperation, field } from '#operation';
import { type Issue, type Result, andThen, ok, refuse } from '#result';
import { type Degrees, type Millimetres, millimetres } from '#units';
import { z } from 'zod';
import { type BearingNote, bearingOf, negativeSidesOf } from '../bearing.ts';
import { type BearingDoubt, bearingUncertaintyOf, checkDoubt } from '../bearing-uncertainty.ts';
import { type Recap, recappedOf, recappedTo } from '../recap.ts';
import { bearingShape, doubtShape, negativeField, noteShape, targetTotalDeg, uncertaintyShape } from '../schemas.ts';

const limit = { min: -10_000, max: 10_000 };

const shared = {
  ...noteShape,
  leastBridgeHeightMm: field.millimetres({ ...limit, describe: 'Lowest the bridge may be cut' }).default(millimetres(limit.min)),
  mostBridgeHeightMm: field.millimetres({ ...limit, describe: 'Highest the bridge may be capped' }).default(millimetres(limit.max)),
  ...doubtShape,
} as const;

/** What a note bears with its bridge at another height, or the height for an angle wanted. */
export const bearingRecapOperation = defineOperation({
  name: 'bearing-recap',
  input: z.union([
    z.strictObject({ ...shared, targetTotalDeg }),
    z.strictObject({ ...shared, bridgeChangeMm: field.millimetres({ min: -1000, max: 1000, describe: 'Bridge raised, or planed where negative' }) }),
  ]),
  output: z.strictObject({
    bridgeHeightMm: field.millimetres({ describe: 'Afterwards' }),
    bridgeChangeMm: field.millimetres(),
    ...bearingShape,
    forceChangeN: field.newtons(),
    angleChangeDeg: field.degrees({ describe: 'Of the total angle' }),
    negative: negativeField,
    ...uncertaintyShape,
  }),
  formula: [
    'Δh given: F and θ anew at h_b + Δh',
    'θ wanted: sin θ·x² + cos θ·(L + L_r)·x = sin θ·(L·L_r + e²) − cos θ·e·(L − L_r)',
    'x = h_b − (h_f + h_r)/2, e = (h_f − h_r)/2',
  ],
  sources: ['VARIGNON-1687', 'EUCLID-III-21', 'JCGM-100'],
  example: { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 0.9, rearHeightMm: 0.1, targetTotalDeg: 1.2, heightUncertaintyMm: 0.1 },
  run: (input) => andThen(checkLimits(input), () => andThen(checkDoubt(input, input), () =>
    ('targetTotalDeg' in input ? reached(input) : changed(input)))),
});

interface Room extends BearingNote, BearingDoubt {
  readonly leastBridgeHeightMm: Millimetres;
  readonly mostBridgeHeightMm: Millimetres;
}

function checkLimits(room: Room): Result<Room> {
  const { leastBridgeHeightMm: least, mostBridgeHeightMm: most } = room;
  if (least <= most) return ok(room);
  return refuse({ code: 'order', path: 'leastBridgeHeightMm', given: least, allowed: `at most the highest, ${String(most)}`, params: { reason: 'leastAboveMost', max: most } });
}

/** The limit a height is beyond, and by how much; `undefined` within the limits. */
function beyond(height: number, { leastBridgeHeightMm: least, mostBridgeHeightMm: most }: Room): { readonly limitMm: Millimetres; readonly byMm: number } | undefined {
  if (height > most) return { limitMm: most, byMm: height - most };
  return height < least ? { limitMm: least, byMm: least - height } : undefined;
}

function changed(room: Room & { readonly bridgeChangeMm: Millimetres }): Result<Answer> {
  const recap = recappedOf(room, room.bridgeChangeMm);
  const over = beyond(recap.bridgeHeightMm, room);
  if (over === undefined) return ok(answerOf(room, recap));
  const [min, max] = [room.leastBridgeHeightMm - room.bridgeHeightMm, room.mostBridgeHeightMm - room.bridgeHeightMm];
  return refuse({ code: 'range', path: 'bridgeChangeMm', given: room.bridgeChangeMm, allowed: `${String(min)} to ${String(max)}, so that the bridge stays within its limits`, params: { min, max, unit: 'mm' } });
}

function reached(room: Room & { readonly targetTotalDeg: Degrees }): Result<Answer> {
  const recap = recappedTo(room, room.targetTotalDeg);
  const over = beyond(recap.bridgeHeightMm, room);
  if (over === undefined) return ok(answerOf(room, recap));
  return refuse(unreachable(room, recap.bridgeHeightMm, over));
}

function unreachable(room: Room & { readonly targetTotalDeg: Degrees }, neededMm: Millimetres, { limitMm, byMm }: { readonly limitMm: Millimetres; readonly byMm: number }): Issue {
  const reachableDeg = bearingOf({ ...room, bridgeHeightMm: limitMm }).totalDeg;
  return {
    code: 'unreachable', path: 'targetTotalDeg', given: room.targetTotalDeg,
    allowed: `${String(reachableDeg)} with the bridge at its limit of ${String(limitMm)} mm; it would have to stand at ${String(neededMm)} mm, ${String(byMm)} mm beyond`,
    params: { reason: 'bridgeLimit', reachableDeg, limitMm, neededMm, byMm },
  };
}

/** Uncertainties are those of the bridge as recapped, its height measured again as well as before. */
function answerOf(room: Room, recap: Recap) {
  return { ...recap, negative: [...negativeSidesOf(recap)], ...bearingUncertaintyOf({ ...room, bridgeHeightMm: recap.bridgeHeightMm }, room) };
}
type Answer = ReturnType<typeof answerOf>;
