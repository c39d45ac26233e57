import { surfaces } from '#materials';
import { seededRandom } from '#numerics';
import { cubicMetres, seconds, squareMetres } from '#units';
import { describe, expect, it } from 'vitest';
import { type PerBand, perBand } from './bands.ts';
import { type FitQuestion, doubtOf, fitAbsorption } from './fit-absorption.ts';
import { type Room, reverberationOf } from './reverberation.ts';

const areas = [38.88, 38.88, 75.6] as const;
const rows = [surfaces['wood-on-joists'], surfaces['plaster-on-lath'], surfaces['plaster-on-brick']] as const;
const room: Room = { volumeM3: cubicMetres(116.64), surfaces: rows.map(({ absorption }, index) => ({ areaM2: squareMetres(areas[index] ?? 0), absorption })) };
const doubts = rows.map(({ absorption }) => doubtOf(absorption));
const ask = (measured: PerBand, model: FitQuestion['model'] = 'sabine'): FitQuestion => ({ room, model, measured: perBand((band) => seconds(measured[band] ?? 0)), doubts });
const fittedRoom = (question: FitQuestion): Room => {
  const fits = fitAbsorption(question);
  return { ...room, surfaces: room.surfaces.map((surface, index) => ({ ...surface, absorption: perBand((band) => fits[band]?.absorption[index] ?? 0) })) };
};
const times = reverberationOf(room, 'sabine');
const scaled = (by: number, model: FitQuestion['model'] = 'sabine'): PerBand => { const own = reverberationOf(room, model); return perBand((band) => by * (own[band] ?? 0)); };

describe('surfaces fitted to a measured room', () => {
  it.each([['sabine', 0.9], ['sabine', 1.15], ['eyring', 0.9], ['eyring', 1.1]] as const)('ring as measured, by %s at %d of the time', (model, by) => {
    const question = ask(scaled(by, model), model);
    const heard = reverberationOf(fittedRoom(question), model);
    fitAbsorption(question).forEach(({ outcome }, band) => { if (outcome === 'fitted') expect(heard[band]).toBeCloseTo(by * (reverberationOf(room, model)[band] ?? 0), 5); });
    expect(fitAbsorption(question).every(({ outcome }) => outcome === 'fitted')).toBe(true);
  });

  it('move as the equations of a constrained least square have it while no limit is reached (Lagrange, in closed form)', () => {
    const [fit] = fitAbsorption(ask(scaled(0.95)));
    const d2 = doubts.map((doubt) => doubt[0] ** 2);
    const missing = (0.161 * 116.64) * (1 / (0.95 * times[0]) - 1 / times[0]);
    const mu = missing / areas.reduce((sum, area, index) => sum + area * (d2[index] ?? 0), 0);
    fit.absorption.forEach((alpha, index) => { expect(alpha).toBeCloseTo((rows[index]?.absorption[0] ?? 0) + mu * (d2[index] ?? 0), 9); });
  });

  it('are never beaten by other shares that ring as measured (2000 drawn, limits reached)', () => {
    const question = ask(scaled(0.72));
    const [fit] = fitAbsorption(question);
    const cost = (alphas: readonly number[]): number => alphas.reduce((sum, alpha, index) => sum + (areas[index] ?? 0) * ((alpha - (rows[index]?.absorption[0] ?? 0)) / (doubts[index]?.[0] ?? 1)) ** 2, 0);
    const wanted = (0.161 * 116.64) / (0.72 * times[0]);
    const random = seededRandom(7);
    const drawn = Array.from({ length: 2000 }, () => {
      const [a = 0, b = 0] = [0, 1].map((index) => (rows[index]?.absorption[0] ?? 0) + (doubts[index]?.[0] ?? 0) * (2 * random.uniform() - 1));
      return [a, b, (wanted - areas[0] * a - areas[1] * b) / areas[2]];
    }).filter((alphas) => Math.abs((alphas[2] ?? 0) - rows[2].absorption[0]) <= (doubts[2]?.[0] ?? 0) && (alphas[2] ?? 0) >= 0);
    expect(drawn.length).toBeGreaterThan(20);
    for (const alphas of drawn) expect(cost(alphas)).toBeGreaterThanOrEqual(cost(fit.absorption) - 1e-9);
  });

  it('stand at their limits and say so where the time cannot be had, and stay where nothing was measured', () => {
    const fits = fitAbsorption({ ...ask(scaled(0.2)), measured: [seconds(0.2 * times[0]), null, null, null, null, null] });
    expect(fits.map(({ outcome }) => outcome)).toEqual(['held', 'unmeasured', 'unmeasured', 'unmeasured', 'unmeasured', 'unmeasured']);
    fits[0].absorption.forEach((alpha, index) => { expect(alpha).toBeCloseTo((rows[index]?.absorption[0] ?? 0) + (doubts[index]?.[0] ?? 0), 9); });
    expect(fits[1].absorption).toEqual(rows.map(({ absorption }) => absorption[1]));
  });

  it('doubt a figure as far as tables differ', () => {
    expect(doubtOf(surfaces['gypsum-board'].absorption, surfaces['gypsum-board'].alsoGiven)[0]).toBeCloseTo(0.19, 12);
  });
});
