import { defineOperation, field } from '#operation';
import { andThen, ok, refuse } from '#result';
import { z } from 'zod';
import { driftOf } from '../drift.ts';
import { checkLengths, fields } from '../schemas.ts';

const warming = (describe: string) => field.kelvins({ min: -200, max: 500, describe });

/** How far a string drifts with the warmth of string and plate. */
export const stringDriftOperation = defineOperation({
  name: 'string-drift',
  input: z.strictObject({
    speakingLengthMm: fields.speakingLengthMm,
    totalLengthMm: fields.totalLengthMm,
    diameterMm: fields.diameterMm,
    frequencyHz: fields.frequencyHz,
    stringWarmingK: warming('How much the whole string warms'),
    frameWarmingK: warming('How much the plate warms'),
    youngsModulusGPa: fields.youngsModulusGPa,
    densityKgM3: fields.densityKgM3,
    stringExpansionPerK: fields.stringExpansionPerK,
    frameExpansionPerK: fields.frameExpansionPerK,
  }),
  output: z.strictObject({
    tensionN: field.newtons({ describe: 'Before' }),
    tensionChangeN: field.newtons(),
    offsetCents: field.cents({ describe: 'Against the pitch before' }),
  }),
  formula: ['ΔT = E·A·(α_f·Δθ_f − α_s·Δθ_s)', 'cents = 600·log₂[(T₂/T)·(L/L₂)], L₂ = L·(1 + α_f·Δθ_f)'],
  sources: ['OWN', 'WIRE-DATA-PAGE', 'METALS-MEMORY'],
  example: { speakingLengthMm: 622, totalLengthMm: 810, diameterMm: 1.016, frequencyHz: 261.6256, stringWarmingK: 1, frameWarmingK: 1 },
  run: (input) => andThen(checkLengths(input), (warmed) => {
    const drift = driftOf(warmed);
    if (drift !== undefined) return ok(drift);
    return refuse({ code: 'range', path: 'stringWarmingK', given: warmed.stringWarmingK, allowed: 'a warming that leaves the string taut', params: { reason: 'slack' } });
  }),
});
