import type { Samples } from '#numerics';
import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { type Seconds, decibels, hertz, percent, seconds } from '#units';
import { z } from 'zod';
import { octaveBands } from '../bands.ts';
import { decayDoubts } from '../impulse/decay.ts';
import { type BandAnswer, roomImpulseOf } from '../impulse/room-impulse.ts';

const times6 = (describe: string) => z.array(field.seconds().nullable()).length(6).describe(`${describe}, at 125, 250, 500, 1000, 2000 and 4000 Hz; nothing where the data do not bear it`);
const edge = (describe: string) => field.hertz({ min: 1, max: 100_000, describe });

/** Noise that dies away, as a clap in a room leaves it. */
function exampleSound(): Samples {
  const sampleRateHz = 16_000;
  const samples = Float64Array.from({ length: 3 * sampleRateHz }, (_, at) => {
    const t = at / sampleRateHz - 0.5;
    const noise = Math.sin(12.9898 * (at + 1) ** 1.7) * Math.cos(78.233 * at);
    return t < 0 ? 1e-5 * noise : 0.5 * noise * 10 ** (-3 * t / 0.8) + 1e-5 * noise;
  });
  return { sampleRateHz, channels: [samples] };
}

/** Reverberation measured from a recording. */
export const roomImpulseOperation = defineOperation({
  name: 'room-impulse',
  input: z.strictObject({
    file: field.sound('Claps, bursts of a balloon, or a sweep, with silence before and the whole ringing after.'),
    sweep: z.strictObject({ fromHz: edge('Where the sweep begins'), toHz: edge('Where it ends'), lengthS: field.seconds({ min: 0.5, max: 120, describe: 'How long it lasts' }) })
      .describe('The rising sweep that was played; left out, impulses are looked for').optional(),
  }),
  output: z.strictObject({
    impulseCount: field.count({ describe: 'Impulses found' }),
    edtS: times6('Early decay, 0 to −10 dB'),
    t20S: times6('From −5 to −25 dB'),
    t30S: times6('From −5 to −35 dB'),
    quality: z.array(z.strictObject({
      bandHz: field.hertz({ describe: 'Name of the band' }),
      toldCount: field.count({ describe: 'Impulses that tell T20' }),
      t20SpreadS: field.seconds({ describe: 'Standard deviation of T20 between impulses' }).optional(),
      dynamicDb: field.decibels({ describe: 'From peak to noise, the worst impulse' }),
      curvaturePct: field.percent({ describe: 'How much longer the late decay is, the worst impulse' }).optional(),
      nonlinearity: field.number({ describe: 'How far from a straight line, per mille, the worst impulse' }).optional(),
      doubts: z.array(z.enum(decayDoubts)).describe('Why a time is not told, or is to be taken with care'),
    })).describe('By band, as far as the sampling rate reaches'),
  }),
  formula: ['octave filter run backwards; E(t) = ∫ p² from t to where the decay meets the noise, and its line beyond', 'EDT: 0 … −10 dB, T20: −5 … −25 dB, T30: −5 … −35 dB, each times 60 dB', 'T20 wants 35 dB over the noise, T30 45 dB, and bandwidth × T ≥ 4', 'curvature = 100·(T30/T20 − 1)'],
  sources: ['ISO-3382-2', 'SCHROEDER-1965', 'LUNDEBY-1995', 'JACOBSEN-1987', 'IEC-61260', 'FARINA-2000'],
  example: { file: 'claps.wav' },
  exampleSound,
  run: ({ file, sweep }) => {
    if (sweep !== undefined && sweep.toHz <= sweep.fromHz) return refuse({ code: 'order', path: 'sweep.toHz', given: sweep.toHz, allowed: `more than ${String(sweep.fromHz)}, where the sweep begins`, params: { above: sweep.fromHz } });
    return ok(impulseAnswerOf(roomImpulseOf(file, sweep)));
  },
});

/** What was heard, as it is answered: times by band, nothing where the data do not bear them, and how good each band is. */
export function impulseAnswerOf({ impulses, bands }: ReturnType<typeof roomImpulseOf>) {
  const times = (name: 'edt' | 't20' | 't30') => octaveBands.map((bandHz): Seconds | null => { const told = bands.find((band) => band.bandHz === bandHz)?.[name]; return told === undefined ? null : seconds(told.seconds); });
  return { impulseCount: impulses, edtS: times('edt'), t20S: times('t20'), t30S: times('t30'), quality: bands.map(qualityOf) };
}

const most = (values: readonly number[]): number => values.reduce((worst, value) => (Math.abs(value) > Math.abs(worst) ? value : worst), 0);

function qualityOf({ bandHz, each, t20 }: BandAnswer) {
  const curvatures = each.flatMap(({ curvaturePct }) => curvaturePct ?? []);
  const nonlinearities = each.flatMap(({ nonlinearity }) => nonlinearity ?? []);
  return {
    bandHz: hertz(bandHz), toldCount: t20?.count ?? 0, dynamicDb: decibels(each.length === 0 ? 0 : Math.min(...each.map(({ dynamicDb }) => dynamicDb))),
    ...(t20?.spreadS === undefined ? {} : { t20SpreadS: seconds(t20.spreadS) }),
    ...(curvatures.length === 0 ? {} : { curvaturePct: percent(most(curvatures)) }), ...(nonlinearities.length === 0 ? {} : { nonlinearity: most(nonlinearities) }),
    doubts: each.length === 0 ? ['no-impulse' as const] : [...new Set(each.flatMap(({ doubts }) => doubts))],
  };
}
