import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { millimetres } from '#units';
import { z } from 'zod';
import { contactOf } from '../contact.ts';

const coordinate = () => field.millimetres({ min: -10_000, max: 10_000 });
const spot = (describe: string) => z.strictObject({ xMm: coordinate(), yMm: coordinate() }).describe(describe);

/** Lever arms, speeds and sliding where two levers touch. */
export const contactGeometryOperation = defineOperation({
  name: 'contact-geometry',
  input: z.strictObject({
    first: spot('Centre of the driving lever'),
    second: spot('Centre of the driven lever'),
    contact: spot('Where they touch'),
    normalDeg: field.degrees({ min: -360, max: 360, describe: 'Direction the faces press in, square to both, from level' }),
  }),
  output: z.strictObject({
    firstArmMm: field.millimetres({ describe: 'From the first centre, square to the force; its sign tells the sense of turning' }),
    secondArmMm: field.millimetres({ describe: 'The same from the second centre' }),
    speedRatio: field.ratio({ describe: 'Turning speed of the second lever for one of the first' }),
    pitchPoint: spot('Where line of force and line of centres cross; null when they are parallel').nullable(),
    slidingMm: field.millimetres({ describe: 'Sliding of the faces for a radian of the first lever' }),
  }),
  formula: ['ω₂/ω₁ = p₁/p₂', 'sliding = |ω₂ − ω₁|·|CP|'],
  sources: ['ARONHOLD-KENNEDY'],
  example: { first: { xMm: 0, yMm: 0 }, second: { xMm: 180, yMm: 30 }, contact: { xMm: 115, yMm: 29 }, normalDeg: 90 },
  run: (levers) => {
    const contact = contactOf(levers);
    if (contact !== undefined) return ok({ ...contact, pitchPoint: contact.pitchPoint === undefined ? null : { xMm: millimetres(contact.pitchPoint.xMm), yMm: millimetres(contact.pitchPoint.yMm) } });
    return refuse({ code: 'unsolvable', path: 'normalDeg', given: levers.normalDeg, allowed: 'a direction that passes beside the second centre, not through it', params: { reason: 'deadCentre' } });
  },
});
