import { placementsOf, rectangleOf, standingsOf } from '#room';
import { celsius, millimetres, seconds } from '#units';
import { describe, expect, it } from 'vitest';
import { type PlacesNews, tryPlaces } from './places-jobs.ts';
import { type RoomForm, emptyRoom, roomFormOf, roomOf } from './room-draft.ts';

const grand = { kind: 'grand', lengthMm: 1830 } as const;
const base = { cycle: 1, measured: [], locale: 'de-DE' };
const typed: RoomForm = { ...emptyRoom(grand, 'de-DE'), name: 'Saal', lengthMm: '7,2 m', widthMm: '5400', heightMm: '3,05 m' };
const pathsOf = (form: Partial<RoomForm>): readonly string[] => { const result = roomOf({ ...typed, ...form }, base); return result.ok ? [] : result.issues.map(({ path }) => path); };

describe('a room as typed', () => {
  it('is understood in metres with a decimal comma, and shown again without losing a decimal', () => {
    const result = roomOf({ ...typed, humidityPct: '44,25', floor: { surface: 'own', own: '0,1 0,1 0,1; 0,1 0,1 0,123456' } }, base);
    expect(result).toMatchObject({ ok: true, value: { plan: { shape: 'box', lengthMm: 7200 }, heightMm: 3050, humidityPct: 44.25, piano: null, loudness: null, use: null, floor: { surface: null, own: [0.1, 0.1, 0.1, 0.1, 0.1, 0.123456] } } });
    if (!result.ok) return;
    const again = roomOf(roomFormOf({ ...result.value, id: 'r', at: '' }, grand, 'de-DE'), base);
    expect(again).toEqual(result);
  });

  it('takes corners one a line, and has as many walls', () => {
    const result = roomOf({ ...typed, shape: 'points', points: '0 0\n7,2 m ; 0\n7200\t3400\n5200;5400\n0 5400\n' }, base);
    expect(result).toMatchObject({ ok: true, value: { plan: { points: [{}, { alongMm: 7200, acrossMm: 0 }, {}, {}, {}] } } });
    expect(result.ok && result.value.walls).toHaveLength(5);
  });

  it('names the field that is missing or wrong', () => {
    expect(pathsOf({ heightMm: '' })).toEqual(['heightMm']);
    expect(pathsOf({ lengthMm: '7 kg' })).toEqual(['lengthMm']);
    expect(pathsOf({ lengthMm: '7.2' })).toEqual(['lengthMm']);
    expect(pathsOf({ floor: { surface: 'own', own: '0,1 0,2' } })).toEqual(['floor']);
    expect(pathsOf({ shape: 'points', points: '0 0\n1000 0' })).toContain('points');
    expect(pathsOf({ shape: 'points', points: '0 0\n4000 4000\n4000 0\n0 4000' })).toEqual(['points']);
    expect(pathsOf({ things: [{ words: '', surface: 'carpet-on-felt', own: '', areaM2: '90', on: 'floor' }] })).toEqual(['things[0].areaM2']);
    expect(pathsOf({ pianoXMm: '2000' })).toEqual(['pianoYMm']);
    expect(pathsOf({ loudness: 'reading', levelDb: '88' })).toEqual(['distanceMm']);
    expect(pathsOf({ people: '2,5' })).toEqual(['people']);
  });
});

it('tries places in steps and finds those the whole ranking finds', async () => {
  const grid = { lengthMm: millimetres(6000), widthMm: millimetres(4500), heightMm: millimetres(2800), temperatureC: celsius(20), reverberationS: seconds(0.8), gridMm: millimetres(500), fromWallMm: millimetres(750), heightAboveFloorMm: millimetres(800) };
  const standing = { points: rectangleOf(grid.lengthMm, grid.widthMm), fromWallMm: grid.fromWallMm, piano: { lengthMm: millimetres(1830), widthMm: millimetres(1520) } };
  const told: PlacesNews[] = [];
  let clock = 0;
  await tryPlaces({ grid, standing }, { onNews: (news) => { told.push(news); }, shouldStop: () => false, pause: () => Promise.resolve(), nowMs: () => (clock += 100) });
  expect(told.filter(({ type }) => type === 'progress').length).toBeGreaterThan(2);
  expect(told.at(-1)).toEqual({ type: 'places', places: standingsOf(placementsOf(grid), standing) });
});
