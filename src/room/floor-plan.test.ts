import { millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { type FloorPoint, crossingWalls, isInside, isRectangle, openWayMm, rectangleOf, roomPlanOf } from './floor-plan.ts';
import { footprintOf, lidSideDeg, standingsOf } from './standing.ts';

const at = (alongMm: number, acrossMm: number): FloorPoint => ({ alongMm: millimetres(alongMm), acrossMm: millimetres(acrossMm) });
const height = millimetres(3000);
/** An L of two rectangles, 6 × 4 m with 2 × 2 m cut out of a corner. */
const ell = [at(0, 0), at(6000, 0), at(6000, 2000), at(4000, 2000), at(4000, 4000), at(0, 4000)];

describe('the floor by its corners', () => {
  it('is as large as the rectangles it is put together from (arithmetic: 6·4 − 2·2 m²)', () => {
    const plan = roomPlanOf(ell, height);
    expect(plan.floorM2).toBeCloseTo(20, 12);
    expect(plan.volumeM3).toBeCloseTo(60, 12);
    expect(plan.perimeterMm).toBe(20_000);
    expect(plan.wallsM2).toEqual([18, 6, 6, 6, 12, 12]);
  });

  it('is half the boundary and what lies inside, by corners on a lattice (Pick’s theorem: 9 + 8/2 − 1)', () => {
    expect(roomPlanOf([at(0, 0), at(4000, 0), at(4000, 4000), at(2000, 4000), at(0, 2000)], height).floorM2).toBeCloseTo(14, 12);
    expect(roomPlanOf([at(0, 0), at(5000, 0), at(0, 3000)], height).floorM2).toBeCloseTo(7.5, 12);
  });

  it('does not ask which way round the corners go, nor where the first stands', () => {
    const other = [...ell].reverse().map(({ alongMm, acrossMm }) => at(alongMm + 700, acrossMm + 300));
    expect(roomPlanOf(other, height).floorM2).toBeCloseTo(20, 9);
  });

  it('tells a rectangle from what is none, and walls that cross', () => {
    expect(isRectangle(rectangleOf(millimetres(7200), millimetres(5400)))).toBe(true);
    expect(isRectangle(ell)).toBe(false);
    expect(crossingWalls(ell)).toBeUndefined();
    expect(crossingWalls([at(0, 0), at(4000, 4000), at(4000, 0), at(0, 4000)])).toEqual([0, 2]);
  });

  it('knows inside, its walls included, and the way to the wall ahead', () => {
    expect([at(1000, 3000), at(5000, 1000), at(4000, 2000), at(0, 0)].every((place) => isInside(ell, place))).toBe(true);
    expect([at(5000, 3000), at(-1, 0), at(6001, 1000)].some((place) => isInside(ell, place))).toBe(false);
    expect(openWayMm(ell, at(1000, 3000), 0)).toBeCloseTo(3000, 9);
    expect(openWayMm(ell, at(1000, 1000), 0)).toBeCloseTo(5000, 9);
    expect(openWayMm(ell, at(1000, 3000), 270)).toBeCloseTo(3000, 9);
  });
});

describe('a grand in a room', () => {
  const piano = { lengthMm: millimetres(1830), widthMm: millimetres(1520) };
  const place = (alongMm: number, acrossMm: number) => ({ ...at(alongMm, acrossMm), spreadDb: 3 as never });

  it('has its lid on the player’s right: tail to the right of the drawing, lid down the drawing', () => {
    expect([0, 90, 180, 270].map(lidSideDeg)).toEqual([90, 180, 270, 0]);
    expect(Math.max(...footprintOf(at(3000, 2000), piano, 0).map(({ alongMm }) => alongMm))).toBe(3000 + 915);
    expect(Math.min(...footprintOf(at(3000, 2000), piano, 0).map(({ alongMm }) => alongMm))).toBe(3000 - 915 - 900);
  });

  it('is turned so that the open lid has the longest way before it, and only where case and player have room', () => {
    const [stands] = standingsOf([place(2000, 2000)], { points: rectangleOf(millimetres(9000), millimetres(4000)), fromWallMm: millimetres(700), piano });
    expect(stands).toMatchObject({ tailDeg: 270 });
    expect(stands !== undefined && 'openMm' in stands ? stands.openMm : 0).toBeCloseTo(7000 - 760, 9);
    expect(standingsOf([place(900, 900)], { points: rectangleOf(millimetres(2400), millimetres(2400)), fromWallMm: millimetres(700), piano })).toEqual([]);
  });

  it('keeps to places inside a floor that is no rectangle, in the order they came', () => {
    const kept = standingsOf([place(5000, 3000), place(1500, 1500), place(5000, 1000)], { points: ell, fromWallMm: millimetres(750) });
    expect(kept.map(({ alongMm }) => alongMm)).toEqual([1500, 5000]);
  });
});
