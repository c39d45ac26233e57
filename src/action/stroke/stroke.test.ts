import { mustBe } from '#result';
import { degrees, millimetres, percent } from '#units';
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { leverRatiosOf } from '../levers.ts';
import { type Point, along, arrow, cross, from, lengthOf, turned, turnedAbout } from '../plane.ts';
import { BENCH_JACK, benchActionWith } from '../testing/bench-action.ts';
import { type StrokeMeasures, assemblyOf } from './assembly.ts';
import { poseOfHammer, poseOfKey } from './pose.ts';
import { type KeyStroke, keyStrokeOf } from './stroke.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const mm = (min: number, max: number) => between(min, max).map(millimetres);

/** Actions of many shapes about the invented one. */
const actions: fc.Arbitrary<StrokeMeasures> = fc.record({
  levers: fc.record({ keyFrontMm: mm(190, 260), keyBackMm: mm(95, 130), wippenHeelMm: mm(58, 72), wippenJackMm: mm(88, 104), rollerMm: mm(16, 20), hammerMm: mm(122, 138) }),
  capstanHeightMm: mm(66, 80), wippenCentreHeightMm: mm(78, 92), jackTopHeightMm: mm(122, 130), hammerCentreHeightMm: mm(138, 146),
  capstanRadiusMm: mm(0, 10), rollerDiameterMm: mm(8, 12), blowMm: mm(40, 50), letOffMm: mm(1, 3), measuredAtPct: between(0, 100).map(percent),
  heelTiltDeg: between(-4, 4).map(degrees), jackTiltDeg: between(-4, 4).map(degrees), jack: fc.constantFrom(undefined, { ...BENCH_JACK, overlapMm: millimetres(5) }),
}).map((changed) => benchActionWith({ ...changed, keyEdgeMm: millimetres(changed.levers.keyFrontMm + 13) }));

const strokeOf = (given: StrokeMeasures, count = 41): KeyStroke => mustBe(keyStrokeOf(given, count));
const heightOf = ({ assembly }: KeyStroke, hammerTurn: number): number => assembly.hammer.yMm + turned(assembly.strike, hammerTurn).yMm;

/** Distance of a point from the line through a point of it along a direction, on the left above nought. */
const offLine = (spot: Point, through: Point, direction: Point): number => cross(direction, from(through, spot)) / lengthOf(direction);

describe('the parts of an action', () => {
  it('touch where a general root finder makes them touch: Newton on all turns at once, slopes by differences', () => {
    fc.assert(fc.property(actions, between(-0.01, 0.02), (given, keyTurn) => {
      const assembly = assemblyOf({ ...given, jack: undefined });
      const pose = poseOfKey(assembly, keyTurn);
      if ('contact' in pose) return;
      const heel = along(assembly.balance, along(assembly.capstan, arrow(((90 + given.heelTiltDeg) * Math.PI) / 180), given.capstanRadiusMm));
      const top = along(assembly.hammer, along(assembly.roller, arrow(((90 + given.jackTiltDeg) * Math.PI) / 180), (0 - given.rollerDiameterMm) / 2));
      const misses = ([wippen = 0, hammer = 0]: readonly number[]): readonly [number, number] => {
        const capstan = turnedAbout(assembly.balance, along(assembly.balance, assembly.capstan), keyTurn);
        const roller = turnedAbout(assembly.hammer, along(assembly.hammer, assembly.roller), hammer);
        return [
          -offLine(capstan, turnedAbout(assembly.wippen, heel, wippen), arrow((given.heelTiltDeg * Math.PI) / 180 + wippen)) - given.capstanRadiusMm,
          offLine(roller, turnedAbout(assembly.wippen, top, wippen), arrow((given.jackTiltDeg * Math.PI) / 180 + wippen)) - given.rollerDiameterMm / 2,
        ];
      };
      let turns: readonly number[] = [0, 0];
      for (let step = 0; step < 30; step += 1) {
        const now = misses(turns);
        const slopes = [0, 1].map((place) => {
          const moved = misses(turns.map((turn, index) => turn + (index === place ? 1e-7 : 0)));
          return now.map((value, row) => ((moved[row] ?? 0) - value) / 1e-7);
        });
        const change = solve(new Matrix(slopes).transpose(), Matrix.columnVector([...now])).to1DArray();
        turns = turns.map((turn, index) => turn - (change[index] ?? 0));
      }
      expect(pose.wippen).toBeCloseTo(turns[0] ?? NaN, 9);
      expect(pose.hammer).toBeCloseTo(turns[1] ?? NaN, 9);
      const back = poseOfHammer(assembly, pose.hammer);
      expect('contact' in back ? NaN : back.key).toBeCloseTo(keyTurn, 9);
    }));
  });
});

describe('a stroke', () => {
  it('begins a blow below the string, and rises by the work of the key: no step gains or loses any', () => {
    fc.assert(fc.property(actions, (given) => {
      const stroke = strokeOf({ ...given, lossMm: millimetres(0), dipMm: millimetres(strokeOf(given).letOff.edgeTravelMm - given.lossMm * (given.keyEdgeMm / given.levers.keyFrontMm)) }, 1601);
      const driven = stroke.positions.filter(({ rates }) => rates !== undefined);
      let rise = 0;
      for (const [index, { rates, keyTravelMm }] of driven.slice(1).entries()) {
        const before = driven[index];
        rise += (((rates?.actionRatio ?? 0) + (before?.rates?.actionRatio ?? 0)) / 2) * (keyTravelMm - (before?.keyTravelMm ?? 0));
      }
      expect(stroke.positions[0]?.hammerToStringMm).toBeCloseTo(given.blowMm, 9);
      expect(driven.length).toBeGreaterThanOrEqual(1600);
      const asRaised = driven.at(-1)?.hammerRiseMm ?? NaN;
      expect(Math.abs(rise - asRaised)).toBeLessThan(0.005);
      expect(asRaised).toBeCloseTo(given.blowMm - given.letOffMm, 1);
    }), { numRuns: 25 });
  });

  it('has at each place the ratio by which the hammer really rises there', () => {
    fc.assert(fc.property(actions, between(0.02, 0.98), (given, share) => {
      const stroke = strokeOf(given);
      const { assembly, buttonHeightMm, letOff } = stroke;
      const step = 1e-6;
      const key = (stroke.positions[0]?.pose.key ?? 0) * (1 - share) + letOff.pose.key * share;
      const at = (turn: number): number => {
        const pose = poseOfKey(assembly, turn, buttonHeightMm);
        return 'contact' in pose ? NaN : heightOf(stroke, pose.hammer);
      };
      const travel = given.lossMm + given.levers.keyFrontMm * (key - (stroke.positions[0]?.pose.key ?? 0));
      if (Math.abs(travel - (stroke.toeTravelMm ?? -1)) < 0.01) return;
      const found = strokeOf({ ...given, dipMm: millimetres((travel * given.keyEdgeMm) / given.levers.keyFrontMm) }, 2).positions[1]?.rates?.actionRatio;
      expect(found).toBeCloseTo((at(key + step) - at(key - step)) / (2 * step * given.levers.keyFrontMm), 5);
    }));
  });

  it('agrees with the levers where they were measured, and only there', () => {
    fc.assert(fc.property(actions, (given) => {
      const { measured, positions } = strokeOf({ ...given, heelTiltDeg: degrees(0), jackTiltDeg: degrees(0) });
      const levers = leverRatiosOf(given.levers);
      expect(measured.departurePct).toBeCloseTo(0, 9);
      expect(measured.rates?.keyRatio).toBeCloseTo(levers.keyRatio, 12);
      expect(measured.rates?.wippenRatio).toBeCloseTo(levers.wippenRatio, 12);
      expect(measured.rates?.hammerRatio).toBeCloseTo(levers.hammerRatio, 12);
      expect(measured.hammerRiseMm).toBeCloseTo((given.blowMm * given.measuredAtPct) / 100, 9);
      expect(Math.max(...positions.map(({ departurePct }) => Math.abs(departurePct ?? 0)))).toBeGreaterThan(1);
    }));
  });

  it('departs where it was measured by what a tilted face does to the arms', () => {
    const tilt = 3;
    const { measured } = strokeOf(benchActionWith({ heelTiltDeg: degrees(tilt), jack: undefined }));
    const [s, c] = [Math.sin((tilt * Math.PI) / 180), Math.cos((tilt * Math.PI) / 180)];
    const [key, heel] = [115 * c + (72 - 25) * s, 65 * c - (72 - 85) * s];
    expect(measured.departurePct).toBeCloseTo(100 * ((key * 65) / (heel * 115) - 1), 9);
  });

  it('comes as near to the levers as one likes when the blow is small', () => {
    const departures = [8, 4, 2].map((blow) => {
      const { meanRatio, levers } = strokeOf(benchActionWith({ blowMm: millimetres(blow), letOffMm: millimetres(0), dipMm: millimetres(3), jack: undefined, lossMm: millimetres(0) }));
      return Math.abs(meanRatio / levers.actionRatio - 1);
    });
    expect(departures[2]).toBeLessThan(1e-3);
    expect(departures[1]).toBeLessThan((departures[0] ?? 0) / 3);
    expect(departures[2]).toBeLessThan((departures[1] ?? 0) / 3);
  });

  it('lets go where the roller stands on the edge of the jack top and the toe under its button', () => {
    fc.assert(fc.property(actions, (given) => {
      const { assembly, letOff, buttonHeightMm, toeTravelMm } = strokeOf({ ...given, jack: { ...BENCH_JACK, overlapMm: millimetres(5) } });
      const { jack } = assembly;
      if (jack === undefined || buttonHeightMm === undefined) throw new Error('this action has a jack');
      const centre = turnedAbout(assembly.wippen, jack.centre, letOff.pose.wippen);
      const edge = along(centre, turned(jack.edge, letOff.pose.jack));
      const roller = along(assembly.hammer, turned(assembly.roller, letOff.pose.hammer));
      expect(lengthOf(from(edge, roller))).toBeCloseTo(given.rollerDiameterMm / 2, 9);
      expect(Math.abs(cross(from(edge, roller), arrow(((90 + given.jackTiltDeg) * Math.PI) / 180 + letOff.pose.jack)))).toBeLessThan(1e-9);
      expect(along(centre, turned(jack.toe, letOff.pose.jack)).yMm).toBeCloseTo(buttonHeightMm, 9);
      expect(letOff.hammerToStringMm).toBeCloseTo(given.letOffMm, 9);
      expect(toeTravelMm).toBeLessThan(letOff.keyTravelMm);
      const again = poseOfKey(assembly, letOff.pose.key, buttonHeightMm);
      if ('contact' in again) throw new Error('the parts meet at let-off');
      for (const part of ['wippen', 'jack', 'hammer'] as const) expect(again[part]).toBeCloseTo(letOff.pose[part], 8);
    }));
  });

  it('refuses a jack the roller would slip off before it trips, with the overlap that holds it', () => {
    const given = benchActionWith({ hammerCentreHeightMm: millimetres(150), stringHeightMm: millimetres(200), jack: { ...BENCH_JACK, overlapMm: millimetres(0.5) } });
    const result = keyStrokeOf(given, 5);
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'unreachable', path: 'jack.overlapMm', given: 0.5 }] });
    if (result.ok) return;
    const { min = 0 } = result.issues[0]?.params as Readonly<Record<string, number>>;
    const withOverlap = (overlap: number) => keyStrokeOf({ ...given, jack: { ...BENCH_JACK, overlapMm: millimetres(overlap) } }, 5);
    expect(withOverlap(min + 1e-6).ok).toBe(true);
    expect(withOverlap(min - 1e-6).ok).toBe(false);
  });

  it('never lowers the hammer, and drives it in order: slack, driven, tripping, free', () => {
    fc.assert(fc.property(actions, (given) => {
      const { positions, aftertouchMm, letOff } = strokeOf(given, 101);
      for (const [index, { hammerRiseMm }] of positions.slice(1).entries()) expect(hammerRiseMm).toBeGreaterThanOrEqual((positions[index]?.hammerRiseMm ?? 0) - 1e-9);
      const order = positions.map(({ phase }) => ['slack', 'driven', 'tripping', 'free'].indexOf(phase));
      expect(order).toEqual([...order].sort((a, b) => a - b));
      expect(positions.at(-1)?.phase === 'free').toBe(aftertouchMm > 0);
      expect(aftertouchMm).toBeCloseTo(given.dipMm - letOff.edgeTravelMm, 12);
    }));
  });
});
