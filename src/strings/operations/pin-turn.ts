import { defineOperation, field } from '#operation';
import { andThen, ok, refuse } from '#result';
import { z } from 'zod';
import { turnedOf } from '../drift.ts';
import { checkLengths, fields } from '../schemas.ts';

/** What a turn of the tuning pin does to the pitch. */
export const pinTurnOperation = defineOperation({
  name: 'pin-turn',
  input: z.strictObject({
    speakingLengthMm: fields.speakingLengthMm,
    totalLengthMm: fields.totalLengthMm,
    diameterMm: fields.diameterMm,
    frequencyHz: fields.frequencyHz,
    pinDiameterMm: field.millimetres({ min: 1, max: 30, describe: 'Tuning pin' }),
    turnDeg: field.degrees({ min: -3600, max: 3600, describe: 'Turn of the pin; tightening is positive' }),
    youngsModulusGPa: fields.youngsModulusGPa,
    densityKgM3: fields.densityKgM3,
  }),
  output: z.strictObject({
    lengthChangeMm: field.millimetres({ describe: 'Wire drawn onto the pin' }),
    tensionAfterN: field.newtons(),
    offsetCents: field.cents({ describe: 'Against the pitch before' }),
  }),
  formula: ['Δl = π·(pin + d)·φ/360', 'T₂ = T + E·A·Δl/L_total', 'cents = 600·log₂(T₂/T)'],
  sources: ['OWN'],
  example: { speakingLengthMm: 622, totalLengthMm: 810, diameterMm: 1.016, frequencyHz: 261.6256, pinDiameterMm: 7, turnDeg: 1 },
  run: (input) => andThen(checkLengths(input), (turn) => {
    const turned = turnedOf(turn);
    if (turned !== undefined) return ok(turned);
    return refuse({ code: 'range', path: 'turnDeg', given: turn.turnDeg, allowed: 'a turn that leaves the string taut', params: { reason: 'slack' } });
  }),
});
