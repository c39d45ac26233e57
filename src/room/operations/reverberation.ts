import { defineOperation, field } from '#operation';
import { type Result, ok, refuse } from '#result';
import { type Ratio, type SquareMetres, ratio } from '#units';
import { z } from 'zod';
import { type PerBand, octaveBands } from '../bands.ts';
import { type ReverberationModel, type Room, absorptionOf, areaOf, bassRatioOf, midOf, reverberationOf } from '../reverberation.ts';
import { roomOf, roomSchema, sixOf } from '../schemas.ts';

/** How long a room rings. */
export const reverberationOperation = defineOperation({
  name: 'reverberation',
  input: roomSchema,
  output: z.strictObject({
    seconds: sixOf(field.seconds()).describe('Reverberation time at 125, 250, 500, 1000, 2000 and 4000 Hz'),
    midS: field.seconds({ describe: 'Mean of 500 and 1000 Hz' }),
    bassRatio: field.ratio({ describe: 'Bass beside the middle: (T125 + T250)/(T500 + T1000)' }).optional(),
    absorptionM2: sixOf(field.squareMetres().nullable()).describe('What the model divides by; nothing where Eyring’s grows without end, every surface taking in everything'),
  }),
  formula: ['Sabine: T = 0.161 V/(Σ Sᵢαᵢ + 4mV)', 'Eyring: T = 0.161 V/(−S·ln(1 − ᾱ) + 4mV)', 'bass ratio = (T125 + T250)/(T500 + T1000)'],
  sources: ['SABINE-1922', 'EYRING-1930', 'ISO-9613-1', 'BERANEK-1962'],
  example: {
    volumeM3: 116.64, air: { temperatureC: 20, humidityPct: 50 },
    surfaces: [{ areaM2: 38.88, surface: 'wood-on-joists' }, { areaM2: 114.48, surface: 'plaster-on-brick' }],
  },
  run: (input) => {
    const room = roomOf(input);
    const heard = ringing(room, input.model);
    if (!heard.ok) return heard;
    const times = reverberationOf(room, input.model);
    return ok({ seconds: [...times], midS: midOf(times), ...bassOf(bassRatioOf(times)), absorptionM2: heard.value.map((area) => (Number.isFinite(area) ? area : null)) });
  },
});

const bassOf = (value: number): { readonly bassRatio?: Ratio } => (Number.isFinite(value) ? { bassRatio: ratio(value) } : {});

/** What the model divides by, refused where a band takes in so little that the room would ring for ever. */
export function ringing(room: Room, model: ReverberationModel): Result<PerBand<SquareMetres>> {
  const absorption = absorptionOf(room, model);
  const endless = octaveBands.filter((_, band) => !(room.volumeM3 / (absorption[band] ?? 0) < MOST_M));
  if (endless.length === 0) return ok(absorption);
  return refuse({ code: 'unsolvable', path: 'surfaces', given: areaOf(room.surfaces), allowed: `nothing takes sound in at ${endless.join(', ')} Hz, so that the room would never fall silent; give surfaces or air that do`, params: { reason: 'neverSilent', bands: endless.join(', ') } });
}

/** Volume over absorption, at most: a ringing of more than half an hour is no room. */
const MOST_M = 1e4;
