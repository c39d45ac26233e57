import { degrees, millimetres, newtons } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingOf, bearingUncertaintyOf, bridgeHeightFor, gaugeAngleOf, gaugeReadingOf, gaugeUncertaintyOf, negativeSidesOf, recappedOf, recappedTo } from './index.ts';
import { within, anyNote } from './testing/notes.ts';

const radians = (angle: number): number => (angle * Math.PI) / 180;

describe('down bearing', () => {
  it('has the force of two equal pulls at their angle: sin a + sin b = 2·sin((a + b)/2)·cos((a − b)/2)', () => {
    fc.assert(fc.property(anyNote(20), (note) => {
      const { frontDeg, rearDeg, totalDeg, forceN } = bearingOf(note);
      const expected = note.strings * note.tensionN * 2 * Math.sin(radians(totalDeg) / 2) * Math.cos(radians(frontDeg - rearDeg) / 2);
      expect(Math.abs(forceN - expected)).toBeLessThan(1e-12 * note.strings * note.tensionN);
    }));
  });

  it('lies below the small-angle force T·(h/L + h/L_r) and above it times cos³ of the steeper side', () => {
    fc.assert(fc.property(anyNote(0), within(0.1, 20), (level, rise) => {
      const note = { ...level, frontHeightMm: millimetres(0), rearHeightMm: millimetres(0), bridgeHeightMm: millimetres(rise) };
      const small = note.strings * note.tensionN * (rise / note.speakingLengthMm + rise / note.backLengthMm);
      const { frontDeg, rearDeg, forceN } = bearingOf(note);
      expect(forceN).toBeLessThan(small);
      expect(forceN).toBeGreaterThan(small * Math.cos(radians(Math.max(frontDeg, rearDeg))) ** 3);
    }));
  });

  it('keeps its angles when every length is scaled, and scales its force with the tension', () => {
    fc.assert(fc.property(anyNote(20), within(0.1, 10), within(0.1, 10), (note, size, pull) => {
      const { frontDeg, totalDeg, forceN, stringStiffnessNPerMm } = bearingOf(note);
      const scaled = bearingOf({
        ...note, tensionN: newtons(pull * note.tensionN), speakingLengthMm: millimetres(size * note.speakingLengthMm), backLengthMm: millimetres(size * note.backLengthMm),
        frontHeightMm: millimetres(size * note.frontHeightMm), bridgeHeightMm: millimetres(size * note.bridgeHeightMm), rearHeightMm: millimetres(size * note.rearHeightMm),
      });
      expect(scaled.frontDeg).toBeCloseTo(frontDeg, 9);
      expect(scaled.totalDeg).toBeCloseTo(totalDeg, 9);
      expect(Math.abs(scaled.forceN - pull * forceN)).toBeLessThan(1e-10 * pull * note.strings * note.tensionN);
      expect(scaled.stringStiffnessNPerMm / ((pull / size) * stringStiffnessNPerMm)).toBeCloseTo(1, 12);
    }));
  });

  it('does not know where the datum lies', () => {
    fc.assert(fc.property(anyNote(20), within(-100, 100), (note, shift) => {
      const moved = bearingOf({ ...note, frontHeightMm: millimetres(note.frontHeightMm + shift), bridgeHeightMm: millimetres(note.bridgeHeightMm + shift), rearHeightMm: millimetres(note.rearHeightMm + shift) });
      expect(moved.totalDeg).toBeCloseTo(bearingOf(note).totalDeg, 9);
    }));
  });

  it('grows with the bridge, by the stiffness it states', () => {
    fc.assert(fc.property(anyNote(20), (note) => {
      const step = 1e-4 * note.backLengthMm;
      const [above, below] = [step, -step].map((change) => recappedOf(note, millimetres(change)).forceN);
      const slope = ((above ?? 0) - (below ?? 0)) / (2 * step);
      expect(slope).toBeGreaterThan(0);
      expect(slope / bearingOf(note).stringStiffnessNPerMm).toBeCloseTo(1, 5);
    }));
  });

  it('names the side that lifts', () => {
    const note = { tensionN: newtons(680), strings: 3, speakingLengthMm: millimetres(622), backLengthMm: millimetres(95), frontHeightMm: millimetres(0), bridgeHeightMm: millimetres(2), rearHeightMm: millimetres(2.1) };
    expect(negativeSidesOf(bearingOf(note))).toEqual(['rear']);
    expect(negativeSidesOf(bearingOf({ ...note, bridgeHeightMm: millimetres(-1) }))).toEqual(['front', 'rear', 'total']);
    expect(negativeSidesOf(bearingOf({ ...note, rearHeightMm: millimetres(2) }))).toEqual([]);
  });
});

describe('recapping', () => {
  it('reaches every angle between −180° and 180° it is asked for', () => {
    fc.assert(fc.property(anyNote(300), within(-170, 170), (note, target) => {
      expect(recappedTo(note, degrees(target)).totalDeg).toBeCloseTo(target, 9);
    }), { numRuns: 500 });
  });

  it('gives back the height of the angle a bridge has', () => {
    fc.assert(fc.property(anyNote(20), (note) => {
      expect(bridgeHeightFor(note, bearingOf(note).totalDeg)).toBeCloseTo(note.bridgeHeightMm, 9);
    }), { numRuns: 500 });
  });

  it('by nothing changes nothing', () => {
    fc.assert(fc.property(anyNote(20), (note) => {
      expect(recappedOf(note, millimetres(0))).toEqual({ ...bearingOf(note), bridgeHeightMm: note.bridgeHeightMm, bridgeChangeMm: 0, forceChangeN: 0, angleChangeDeg: 0 });
    }));
  });
});

describe('a bearing gauge', () => {
  const feet = fc.record({ frontSpanMm: within(15, 60), rearSpanMm: within(15, 60) }).map(({ frontSpanMm, rearSpanMm }) => ({ frontSpanMm: millimetres(frontSpanMm), rearSpanMm: millimetres(rearSpanMm) }));

  it('read, turned into an angle and read again gives the same reading', () => {
    fc.assert(fc.property(feet, within(-2, 2), (spans, reading) => {
      const [frontDeg, rearDeg] = [spans.frontSpanMm, spans.rearSpanMm].map((span) => degrees(Math.atan2(reading, span) * (180 / Math.PI)));
      if (frontDeg === undefined || rearDeg === undefined) return;
      expect(gaugeReadingOf({ ...spans, frontDeg, rearDeg })).toBeCloseTo(reading, 12);
      expect(gaugeAngleOf({ ...spans, readingMm: millimetres(reading) })).toBeCloseTo(frontDeg + rearDeg, 12);
    }));
  });

  it('tells the total angle to one part in 10 000, however up to 1° is shared', () => {
    fc.assert(fc.property(feet, within(0.01, 1), within(0, 1), (spans, total, share) => {
      const readingMm = gaugeReadingOf({ ...spans, frontDeg: degrees(share * total), rearDeg: degrees((1 - share) * total) });
      expect(Math.abs(gaugeAngleOf({ ...spans, readingMm }) / total - 1)).toBeLessThan(1.1e-4);
    }));
  });

  it('with even feet is as sure as u(r)·2/s says', () => {
    const found = gaugeUncertaintyOf({ frontSpanMm: millimetres(25), rearSpanMm: millimetres(25), readingMm: millimetres(0.2) }, { readingUncertaintyMm: millimetres(0.01), spanUncertaintyMm: millimetres(0) });
    expect(radians(found) / ((2 * 0.01) / 25)).toBeCloseTo(1, 3);
  });
});

describe('uncertainty of bearing', () => {
  it('follows the closed form for small angles, the bridge counting on both sides', () => {
    fc.assert(fc.property(anyNote(0.5), within(0.01, 0.2), (note, height) => {
      const [front, rear] = [1 / note.speakingLengthMm, 1 / note.backLengthMm];
      const found = bearingUncertaintyOf(note, { heightUncertaintyMm: millimetres(height) });
      expect(radians(found?.totalUncertaintyDeg ?? 0) / (height * Math.hypot(front, rear, front + rear))).toBeCloseTo(1, 2);
    }));
  });

  it('of the tension alone is the same share of the force', () => {
    fc.assert(fc.property(anyNote(20), (note) => {
      const found = bearingUncertaintyOf(note, { tensionUncertaintyN: newtons(0.02 * note.tensionN) });
      expect(found?.forceUncertaintyN).toBeCloseTo(0.02 * Math.abs(bearingOf(note).forceN), 6);
      expect(found?.totalUncertaintyDeg).toBe(0);
    }));
  });

  it('agrees with a thousand draws', () => {
    const note = { tensionN: newtons(680), strings: 3, speakingLengthMm: millimetres(622), backLengthMm: millimetres(95), frontHeightMm: millimetres(0), bridgeHeightMm: millimetres(1.5), rearHeightMm: millimetres(0.1) };
    const forces = draws.map(([front = 0, bridge = 0, rear = 0, back = 0]) => bearingOf({
      ...note, frontHeightMm: millimetres(0.1 * front), bridgeHeightMm: millimetres(1.5 + 0.1 * bridge), rearHeightMm: millimetres(0.1 + 0.1 * rear), backLengthMm: millimetres(95 + 0.5 * back),
    }).forceN);
    const mean = forces.reduce((sum, force) => sum + force, 0) / forces.length;
    const spread = Math.sqrt(forces.reduce((sum, force) => sum + (force - mean) ** 2, 0) / (forces.length - 1));
    const found = bearingUncertaintyOf(note, { heightUncertaintyMm: millimetres(0.1), backLengthUncertaintyMm: millimetres(0.5) });
    // The spread of 4096 draws is itself known to 1.1 %.
    expect(Math.abs(spread / (found?.forceUncertaintyN ?? 0) - 1)).toBeLessThan(0.04);
  });

  it('claims nothing where nothing is stated', () => {
    expect(bearingUncertaintyOf(fc.sample(anyNote(1), 1)[0] ?? expect.fail(), {})).toBeUndefined();
  });
});

/** Sums of twelve uniform numbers less six, from a fixed congruential generator: close enough to normal for a spread. */
const draws = (() => {
  let state = 1;
  const uniform = (): number => { state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0; return state / 2 ** 32; };
  const normal = (): number => Array.from({ length: 12 }, uniform).reduce((sum, each) => sum + each, -6);
  return Array.from({ length: 4096 }, () => Array.from({ length: 4 }, normal));
})();
