import { type QuantityName, type Reading, type ScaleTermsDraft, type State, scaleTermsSchema } from '#instrument';
import { analyseScale } from '#strings';
import { describe, expect, it } from 'vitest';
import { demoStrings } from './demo-strings.ts';
import { standingOf } from './demo-work.ts';
import { DEMO_TERMS } from './demo-strings.ts';
import { type ScaleMaterial, scaleInputOf } from './scale-input.ts';

const SECTIONS = [{ name: 'Bass', firstKey: 1, lastKey: 26 }, { name: 'Tenor', firstKey: 27, lastKey: 50 }, { name: 'Treble', firstKey: 51, lastKey: 88 }];
const instrument = { firstMidi: 21, lastMidi: 108, a4Hz: 440, sections: SECTIONS };

const reading = (index: number, quantity: QuantityName, value: number, more: Partial<Reading> = {}): Reading => ({
  id: `${String(index)} ${quantity} ${String(more.repeat ?? 1)}`, cycle: 1, state: 'found', quantity, scope: 'key', index, repeat: 1, typed: String(value), value,
  outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: 'x', ...more,
});
const gather = (readings: readonly Reading[], more: Partial<ScaleMaterial> = {}) => scaleInputOf({ instrument, readings, cycle: 1, state: 'found', terms: null, ...more });
const terms = (draft: ScaleTermsDraft) => scaleTermsSchema.parse(draft);
const planned = { state: 'planned' as State };

describe('what a scale is read from', () => {
  it('lays missing lengths on a line in ln L between measured neighbours, and says so', () => {
    const { input, assumed } = gather([reading(30, 'speakingLengthMm', 1000), reading(34, 'speakingLengthMm', 810)]);
    expect(input.notes[31]).toMatchObject({ isLengthEstimated: true });
    expect(input.notes[31]?.speakingLengthMm).toBeCloseTo(900, 9);
    expect(input.notes[29]).toMatchObject({ speakingLengthMm: 1000, isLengthEstimated: false });
    expect(assumed).toContainEqual({ what: 'lengthEstimated', notes: [31, 32, 33] });
  });

  it('never lays one beyond the outermost measured note, nor across a break, nor without sections', () => {
    const readings = [reading(24, 'speakingLengthMm', 1000), reading(30, 'speakingLengthMm', 1000), reading(34, 'speakingLengthMm', 800)];
    const { input } = gather(readings);
    const known = input.notes.filter(({ speakingLengthMm }) => speakingLengthMm !== undefined).map(({ key }) => key);
    expect(known).toEqual([24, 30, 31, 32, 33, 34]);
    expect(gather(readings, { instrument: { ...instrument, sections: [] } }).input.notes.filter(({ isLengthEstimated }) => isLengthEstimated)).toEqual([]);
  });

  it('takes the pitch from compass, standard pitch and offset', () => {
    const { input } = gather([reading(49, 'pitchOffsetCt', -100)], { instrument: { ...instrument, a4Hz: 435 } });
    expect(input.notes[48]?.frequencyHz).toBeCloseTo(435 / 2 ** (1 / 12), 9);
    expect(input.notes[60]?.frequencyHz).toBeCloseTo(870, 9);
  });

  it.each([
    [{ wireDiameterMm: 1 }, { wire: { kind: 'plain', diameterMm: 1 } }],
    [{ wireDiameterMm: 1, overallDiameterMm: 2 }, { wire: { kind: 'wound', coreShape: 'round', overallDiameterMm: 2 } }],
    [{ hexCoreMm: 1, innerWrapMm: 0.4, outerWrapMm: 0.9 }, { wire: { kind: 'wound', coreShape: 'hex', wraps: [{ wireDiameterMm: 0.4 }, { wireDiameterMm: 0.9 }] } }],
    [{ outerWrapMm: 1 }, { fault: 'wrapWithoutCore' }],
    [{ hexCoreMm: 1 }, { fault: 'coreWithoutWrap' }],
    [{ hexCoreMm: 1, wireDiameterMm: 1, outerWrapMm: 1 }, { fault: 'twoCores' }],
    [{ wireDiameterMm: 1, innerWrapMm: 0.5 }, { fault: 'innerWithoutOuter' }],
  ] as const)('makes of %o the wire %o', (sizes, wanted) => {
    const { input } = gather(Object.entries(sizes).map(([quantity, value]) => reading(12, quantity as QuantityName, value)));
    expect(input.notes[11]).toMatchObject(wanted);
  });

  it('takes a mean of repeats, with their own uncertainty before that of the terms, and none where it is not stated', () => {
    const wires = [reading(60, 'wireDiameterMm', 0.9, { uncertainty: 0.01 }), reading(60, 'wireDiameterMm', 0.92, { repeat: 2, uncertainty: 0.01 }), reading(60, 'speakingLengthMm', 300)];
    const { input } = gather(wires, { terms: terms({ lengthUncertaintyMm: 0.5, diameterUncertaintyMm: 0.004 }) });
    expect(input.notes[59]?.wire).toMatchObject({ diameterMm: 0.91 });
    expect(input.notes[59]?.doubt?.diameterUncertaintyMm).toBeCloseTo(0.01 / Math.SQRT2, 9);
    expect(gather(wires).input.notes[59]?.doubt).toBeUndefined();
  });

  it('lets a plan say only what it changes: the rest stays as found, a wire as a whole', () => {
    const found = [reading(20, 'speakingLengthMm', 1000), reading(20, 'stringCount', 2), reading(20, 'wireDiameterMm', 1), reading(20, 'overallDiameterMm', 2), reading(20, 'bareFrontMm', 18)];
    const { input, assumed } = gather([...found, reading(20, 'wireDiameterMm', 1.05, planned), reading(20, 'outerWrapMm', 0.5, planned)], planned);
    expect(input.notes[19]).toMatchObject({ speakingLengthMm: 1000, strings: 2, wire: { kind: 'wound', coreDiameterMm: 1.05, wraps: [{ wireDiameterMm: 0.5 }] } });
    expect(input.notes[19]?.wire).not.toHaveProperty('bareFrontMm');
    expect(assumed).toContainEqual({ what: 'noBareEnds', notes: [20] });
    expect(gather(found, planned).assumed).toContainEqual({ what: 'fromFound', notes: [20] });
  });

  it('counts certificate and test break of the shop, the lower of them, for new wire only', () => {
    const stated = terms({ wires: [{ name: 'coil', use: 'plain', metal: 'steel', diameterMm: 1, certificateMPa: 2400, testBreakN: 1800 }] });
    const readings = [reading(40, 'speakingLengthMm', 622), reading(40, 'wireDiameterMm', 1)];
    expect(gather(readings, { terms: stated, ...planned }).input.notes[39]?.certificateMPa).toBeCloseTo(1800 / (Math.PI / 4), 6);
    expect(gather(readings, { terms: stated }).input.notes[39]?.certificateMPa).toBeUndefined();
  });
});

describe('strings of the demo grand', () => {
  const { readings } = standingOf(demoStrings());
  const scaleOf = (state: State) => analyseScale(scaleInputOf({ instrument, readings, cycle: 1, state, terms: terms(DEMO_TERMS) }).input);
  const [found, plan] = [scaleOf('found'), scaleOf('planned')];

  it('make a string of every note, in both states, and load the plate as a grand of its size', () => {
    for (const { notes, plate } of [found, plan]) {
      expect(notes.filter(({ figures }) => figures === undefined)).toEqual([]);
      expect(plate).toMatchObject({ counted: 88 });
      // 16 to 18 short tons, trade page: 142 to 160 kN; a smaller grand may lie below.
      expect(plate.tensionN).toBeGreaterThan(120_000);
      expect(plate.tensionN).toBeLessThan(175_000);
    }
  });

  it('hang slack at the foot of the tenor as found; the plan winds those notes', () => {
    expect(found.notes.filter(({ verdict }) => verdict?.side === 'under').map(({ key }) => key)).toEqual(expect.arrayContaining([27, 28]));
    expect(plan.notes.slice(26, 29).map(({ verdict, wire }) => [wire?.kind, verdict?.side])).toEqual([['wound', 'within'], ['wound', 'within'], ['wound', 'within']]);
  });

  it('show the wrong wires of a former hand in their tension, not in their share of breaking', () => {
    const [before, wrong] = [found.notes[43], found.notes[44]];
    expect((wrong?.figures?.tensionN ?? 0) / (before?.figures?.tensionN ?? 1)).toBeGreaterThan(1.15);
    expect(Math.abs((wrong?.figures?.breakingPct ?? 0) - (before?.figures?.breakingPct ?? 0))).toBeLessThan(1.5);
  });
});
