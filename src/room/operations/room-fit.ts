import { defineOperation, field } from '#operation';
import { map } from '#result';
import { type Ratio, ratio } from '#units';
import { z } from 'zod';
import { type PerBand, perBand } from '../bands.ts';
import { USUAL_DOUBT, doubtOf, fitAbsorption } from '../fit-absorption.ts';
import { reverberationOf } from '../reverberation.ts';
import { bandsOf, roomOf, roomSchema } from '../schemas.ts';
import { ringing } from './reverberation.ts';

const time = field.seconds({ min: 0.05, max: 60, describe: 'Reverberation time measured; nothing where it was not told' }).nullable();
const share = field.ratio({ min: 0, max: 1.2, describe: 'How far the share taken in may be another' });

/** Surfaces moved as little as gives the reverberation that was measured. */
export const roomFitOperation = defineOperation({
  name: 'room-fit',
  input: z.strictObject({
    room: roomSchema,
    measuredS: z.array(time).length(6).describe('At 125, 250, 500, 1000, 2000 and 4000 Hz'),
    doubts: z.array(z.array(share).length(6)).min(1).max(500).describe('How far each surface may move, by band; left out, half of each share and at least 0.03').optional(),
  }),
  output: z.strictObject({
    absorption: z.array(z.array(field.ratio()).length(6)).describe('Of each surface, by band'),
    outcomes: z.array(z.enum(['fitted', 'held', 'unmeasured'])).length(6).describe('By band: met; not met though every surface stands at its limit; not measured'),
    seconds: z.array(field.seconds().nullable()).length(6).describe('Reverberation of the room so changed'),
  }),
  formula: ['least Σ Sᵢ·((αᵢ − α₀ᵢ)/dᵢ)² with Σ Sᵢαᵢ as measured, |αᵢ − α₀ᵢ| ≤ dᵢ, 0 ≤ αᵢ ≤ 1', 'αᵢ = α₀ᵢ + μ·dᵢ², cut at its limits', `dᵢ = max(${String(USUAL_DOUBT.least)}, ${String(USUAL_DOUBT.share)}·α₀ᵢ) where none is given`],
  sources: ['OWN', 'SABINE-1922', 'EYRING-1930', 'PRACTICE'],
  example: {
    room: { volumeM3: 116.64, surfaces: [{ areaM2: 38.88, surface: 'wood-on-joists' }, { areaM2: 114.48, surface: 'plaster-on-brick' }], air: true },
    measuredS: [1.1, 1.5, 1.9, 2.3, 2.2, null],
  },
  run: ({ room: given, measuredS, doubts }) => {
    const room = roomOf(given);
    return map(ringing(room, given.model), () => {
      const fits = fitAbsorption({ room, model: given.model, measured: bandsOf(measuredS), doubts: room.surfaces.map(({ absorption }, index) => doubtAt(doubts?.[index], absorption)) });
      const absorption = room.surfaces.map((_, index) => perBand((band) => fits[band]?.absorption[index] ?? 0));
      const fitted = { ...room, surfaces: room.surfaces.map((surface, index) => ({ ...surface, absorption: absorption[index] ?? surface.absorption })) };
      const times = ringing(fitted, given.model).ok ? [...reverberationOf(fitted, given.model)] : fits.map(() => null);
      return { absorption: absorption.map((row): Ratio[] => row.map(ratio)), outcomes: fits.map(({ outcome }) => outcome), seconds: times };
    });
  },
});

const doubtAt = (given: readonly number[] | undefined, absorption: PerBand): PerBand => (given === undefined ? doubtOf(absorption) : perBand((band) => given[band] ?? 0));
