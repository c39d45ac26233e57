import { surfaces } from '#materials';
import { celsius, cubicMetres, hertz, kilopascals, millimetres, percent, seconds, squareMetres } from '#units';
import { describe, expect, it } from 'vitest';
import { absorptionNeededOf } from './absorption-needed.ts';
import { perBand } from './bands.ts';
import { coincidentModesOf, roomNotesOf } from './boom.ts';
import { criticalDistanceM, levelAt, powerBehind } from './level.ts';
import { modeCountOf, roomModesOf } from './modes.ts';
import { placementsOf } from './placement.ts';
import { type Room, bassRatioOf, midOf, reverberationOf, sabineAbsorptionOf } from './reverberation.ts';
import { type MirroredBox, decayOf, energiesOf, keptDirectionsOf } from './testing/image-sources.ts';

const box = [5, 4, 3] as const;
const walls = 2 * (5 * 4 + 4 * 3 + 3 * 5);
const boxRoom = (absorption: number): Room => ({ volumeM3: cubicMetres(60), surfaces: [{ areaM2: squareMetres(walls), absorption: perBand(() => absorption) }] });

describe('reverberation', () => {
  // A box with mirrors for walls has no diffuse field: its decay begins as Eyring has it, and then bends. 0.161 stands for c = 343 m/s to 0.1 %.
  it.each([0.1, 0.3, 0.5])('of a box with walls that take in %d begins as mirror images have it', (absorption) => {
    const mirrored: MirroredBox = { sides: box, absorption, speedMPerS: 343 };
    const kept = keptDirectionsOf(mirrored, 0.002, 0.001);
    const atOnce = -60 * 0.001 / (10 * Math.log10((kept[1] ?? 0) / (kept[0] ?? 1)));
    expect(Math.abs(atOnce / reverberationOf(boxRoom(absorption), 'eyring')[2] - 1)).toBeLessThan(0.003);
  });

  it.each([0.1, 0.3, 0.5])('of mirror images one by one and as a continuum is the same, to 3 %%, where %d is taken in', (absorption) => {
    const mirrored: MirroredBox = { sides: box, absorption, speedMPerS: 343 };
    const each = decayOf(energiesOf(mirrored, [1.1, 1.3, 1.2], [3.7, 2.6, 1.5], 0.9, 0.002), 0.002);
    expect(Math.abs(each / decayOf(keptDirectionsOf(mirrored, 0.9, 0.002), 0.002) - 1)).toBeLessThan(0.03);
    expect(each).toBeGreaterThan(reverberationOf(boxRoom(absorption), 'eyring')[2]);
  });

  it('is one by both formulas where little is taken in, and nought by Eyring where everything is', () => {
    expect(reverberationOf(boxRoom(1e-6), 'eyring')[2] / reverberationOf(boxRoom(1e-6), 'sabine')[2]).toBeCloseTo(1, 5);
    expect(reverberationOf(boxRoom(1), 'eyring')).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('of the salon of 117 m³ booms after cloth, as worked by hand', () => {
    const air = { temperatureC: celsius(20), humidityPct: percent(50), pressureKPa: kilopascals(101.325) };
    const [floor, plaster, glass] = [surfaces['wood-on-joists'].absorption, surfaces['plaster-on-lath'].absorption, surfaces['window-glass'].absorption];
    const bare: Room = { volumeM3: cubicMetres(116.64), air, surfaces: [{ areaM2: squareMetres(38.88), absorption: floor }, { areaM2: squareMetres(105.48), absorption: plaster }, { areaM2: squareMetres(9), absorption: glass }] };
    const hung: Room = { ...bare, surfaces: [
      { areaM2: squareMetres(24.88), absorption: floor }, { areaM2: squareMetres(14), absorption: surfaces['carpet-on-felt'].absorption },
      { areaM2: squareMetres(105.48), absorption: plaster }, { areaM2: squareMetres(9), absorption: surfaces['heavy-velour-half'].absorption }] };
    const [before, after] = [reverberationOf(bare, 'sabine'), reverberationOf(hung, 'sabine')];
    expect(midOf(after)).toBeLessThan(midOf(before));
    expect(bassRatioOf(after)).toBeGreaterThan(1.2 * bassRatioOf(before));
  });
});

describe('material needed', () => {
  it('brings a band to its target when it is put in, and takes out where the room is too dry', () => {
    const room: Room = { volumeM3: cubicMetres(60), surfaces: [{ areaM2: squareMetres(74), absorption: perBand(() => 0.05) }, { areaM2: squareMetres(20), absorption: perBand(() => 0.1) }] };
    const present = reverberationOf(room, 'sabine');
    for (const target of [0.7, 3]) {
      const [need] = absorptionNeededOf({ volumeM3: room.volumeM3, present, target: perBand(() => seconds(target)), material: perBand(() => 0.6), covers: perBand(() => 0.1) });
      expect(need.advice).toBe(target < present[0] ? 'add' : 'take-out');
      const area = need.areaM2 ?? Number.NaN;
      const changed: Room = { ...room, surfaces: [...room.surfaces, { areaM2: squareMetres(area), absorption: perBand(() => 0.6) }, { areaM2: squareMetres(-area), absorption: perBand(() => 0.1) }] };
      expect(reverberationOf(changed, 'sabine')[0]).toBeCloseTo(target, 10);
    }
  });

  it('is no help where cloth takes in no more than what it covers', () => {
    const needs = absorptionNeededOf({ volumeM3: cubicMetres(100), present: perBand(() => seconds(2)), target: perBand(() => seconds(1)), material: surfaces['heavy-velour-straight'].absorption, covers: surfaces['window-glass'].absorption });
    expect(needs.map(({ advice }) => advice)).toEqual(['no-help', 'no-help', 'add', 'add', 'add', 'add']);
  });
});

describe('modes', () => {
  const room = { lengthMm: millimetres(7200), widthMm: millimetres(5400), heightMm: millimetres(3000) };
  it('are as many as theory counts, to two in a hundred', () => {
    const modes = roomModesOf(room, celsius(20), hertz(600));
    expect(Math.abs(modes.length / modeCountOf(room, celsius(20), hertz(600)) - 1)).toBeLessThan(0.02);
  });

  it('coincide in a cube in threes, and in a room of uneven sides apart', () => {
    const cube = { lengthMm: millimetres(4000), widthMm: millimetres(4000), heightMm: millimetres(4000) };
    expect(coincidentModesOf(roomModesOf(cube, celsius(20), hertz(50)), seconds(1))).toHaveLength(2);
    expect(coincidentModesOf(roomModesOf(room, celsius(20), hertz(50)), seconds(1))).toHaveLength(0);
  });

  it('hold the note that lies on them and leave thin the one that lies between', () => {
    const modes = roomModesOf(room, celsius(20), hertz(400));
    const first = modes[0]?.frequencyHz ?? hertz(0);
    const notes = roomNotesOf([{ key: 1, frequencyHz: first }, { key: 2, frequencyHz: hertz(27.5) }], modes, seconds(1));
    expect(notes[0]?.booms[0]).toMatchObject({ partial: 1, offHz: 0 });
    expect(notes.map(({ thin }) => thin)).toEqual([false, Math.abs(27.5 - first) > 1.1]);
  });
});

describe('level', () => {
  const room = { volumeM3: cubicMetres(117), reverberationS: seconds(1) };
  it('gives back the power it was worked out from', () => {
    const level = levelAt(room, { powerDb: powerBehind(room, 88 as never, 2, 2), directivity: 2 }, 2);
    expect(level).toBeCloseTo(88, 12);
  });

  it('has direct and reverberant sound alike at the critical distance', () => {
    const r = criticalDistanceM(room, 2);
    const area = sabineAbsorptionOf({ volumeM3: room.volumeM3, surfaces: [{ areaM2: squareMetres((0.161 * 117) / 1), absorption: perBand(() => 1) }] })[0];
    expect(2 / (4 * Math.PI * r ** 2)).toBeCloseTo(4 / area, 12);
  });
});

describe('places', () => {
  const question = { lengthMm: millimetres(6000), widthMm: millimetres(4500), heightMm: millimetres(2800), temperatureC: celsius(20), reverberationS: seconds(0.8), gridMm: millimetres(250), heightAboveFloorMm: millimetres(800) };
  it('are as good at the mirrored spot, the room being symmetric', () => {
    const places = placementsOf({ ...question, fromWallMm: millimetres(750) });
    const at = (x: number, y: number) => places.find(({ alongMm, acrossMm }) => alongMm === x && acrossMm === y)?.spreadDb ?? Number.NaN;
    expect(at(1000, 1500)).toBeCloseTo(at(5000, 3000), 9);
    expect(places.map(({ spreadDb }) => spreadDb)).toEqual(places.map(({ spreadDb }) => spreadDb).sort((a, b) => a - b));
  });

  it('put the exact middle behind a place beside it, where half of all modes have no node', () => {
    const places = placementsOf({ ...question, fromWallMm: millimetres(750) });
    const rank = (x: number, y: number) => places.findIndex(({ alongMm, acrossMm }) => alongMm === x && acrossMm === y);
    expect(rank(3000, 2250)).toBeGreaterThan(rank(2000, 1500));
  });
});
