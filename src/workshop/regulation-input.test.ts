import { analyseHammers } from '#action';
import { type ActionTermsDraft, type QuantityName, type Reading, type State, actionTermsSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { type HammerMaterial, hammerInputOf, hammerLifeOfTerms } from './hammer-input.ts';
import { type RegulationMaterial, regulationInputOf } from './regulation-input.ts';

const reading = (quantity: QuantityName, index: number, value: number, rest: Partial<Reading> = {}): Reading => ({
  id: `${quantity} ${String(index)} ${rest.state ?? ''}`, cycle: 1, state: 'found', quantity, scope: 'key', index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-11-25T10:00:00Z', by: '', ...rest,
});
const arms = { keyFrontMm: 225, keyBackMm: 112.5, wippenHeelMm: 65, wippenJackMm: 91, rollerMm: 17, hammerMm: 130 } as const;
const armReadings = (state: State = 'found', change: Partial<Record<keyof typeof arms, number>> = {}): readonly Reading[] =>
  ([0, 1] as const).flatMap((colour) => (Object.entries({ ...arms, ...change }) as [keyof typeof arms, number][]).map(([name, value]) => reading(name, colour, value, { scope: 'colour', state })));
const terms = (draft: ActionTermsDraft) => actionTermsSchema.parse(draft);
const instrument: HammerMaterial['instrument'] = { kind: 'grand', firstMidi: 21, lastMidi: 108, sections: [{ name: 'bass', firstKey: 1, lastKey: 28 }, { name: 'treble', firstKey: 29, lastKey: 88 }] };
const regulation = (readings: readonly Reading[], rest: Partial<RegulationMaterial> = {}) => regulationInputOf({ instrument, readings, cycle: 1, state: 'found', terms: null, ...rest });
const hammers = (readings: readonly Reading[], rest: Partial<HammerMaterial> = {}) => hammerInputOf({ instrument, readings, cycle: 1, state: 'found', terms: null, strings: [], ...rest });

describe('regulation gathered', () => {
  it('takes the mean of repeats, and nothing of another state or stay', () => {
    const { input } = regulation([reading('dipMm', 40, 10), reading('dipMm', 40, 10.2, { repeat: 2 }), reading('dipMm', 40, 8, { state: 'planned' }), reading('dipMm', 40, 8, { cycle: 2 })]);
    expect(input.keys[39]?.read.dipMm).toBeCloseTo(10.1, 12);
  });

  it('has the ratio by distance from the arms, or as stated; the ratio by weights never stands in', () => {
    const product = (112.5 / 225) * (91 / 65) * (130 / 17);
    expect(regulation(armReadings()).input.levers.natural?.distanceRatio).toBeCloseTo(product, 12);
    expect(regulation(armReadings(), { terms: terms({ distanceRatioNatural: 5.3, weightRatioSharp: 5.8 }) }).input.levers).toMatchObject({ natural: { distanceRatio: 5.3 }, sharp: { distanceRatio: expect.closeTo(product, 12) as number } });
    const open = regulation([reading('keyFrontMm', 0, 225, { scope: 'colour' }), reading('blowMm', 40, 45)], { terms: terms({ weightRatioNatural: 5.8 }) });
    expect([open.input.levers, open.assumed]).toEqual([{}, expect.arrayContaining(['noRatio'])]);
  });

  it('takes a tolerance stated for a figure, and the usual one of each other', () => {
    const { input, assumed } = regulation([reading('blowMm', 40, 45)], { terms: terms({ keyLevelMm: 0, regulation: [{ register: 'middle', blowMm: 45 }], regulationToleranceMm: 0.3, blowToleranceMm: 1.5, checkToleranceMm: 3 }) });
    expect(input.tolerances).toMatchObject({ blowMm: 1.5, checkMm: 3, letOffMm: 0.5, dropMm: 0.5, dipMm: 0.3, keyLevelMm: 0.3 });
    expect(assumed).not.toContain('usualTolerance');
    expect(regulation([], { terms: terms({ regulation: [{ register: 'middle', dropMm: 1.5 }], regulationToleranceMm: 0.3 }) }).assumed).toContain('usualTolerance');
  });

  it.each([[112.9, undefined, true], [113.1, undefined, false], [113.1, 0.6, true], [111.9, undefined, false]])('judges a spread of %d mm against 112.5, tolerance %s', (read, tolerance, isInside) => {
    const { spread } = regulation([reading('spreadMm', 0, read, { scope: 'instrument' })], { terms: terms({ spreadMm: 112.5, ...(tolerance === undefined ? {} : { spreadToleranceMm: tolerance }) }) });
    expect(spread).toMatchObject({ readMm: read, askedMm: 112.5, toleranceMm: tolerance ?? 0.5, isInside });
  });

  it('judges no spread that was not read or not asked, and none of an upright', () => {
    const read = [reading('spreadMm', 0, 113, { scope: 'instrument' })];
    expect(regulation(read).spread).toEqual({ readMm: 113, toleranceMm: 0.5 });
    expect(regulation([], { terms: terms({ spreadMm: 112.5 }) }).spread).toEqual({ askedMm: 112.5, toleranceMm: 0.5 });
    expect(regulation(read, { instrument: { ...instrument, kind: 'upright' } }).spread).toBeUndefined();
  });

  it('has the ratio of an upright from the butt, never from a roller', () => {
    const upright = { instrument: { ...instrument, kind: 'upright' } as const };
    expect(regulation(armReadings(), upright).input.levers).toEqual({});
    expect(regulation(armReadings(), { ...upright, terms: terms({ buttMm: 20 }) }).input.levers.natural?.distanceRatio).toBeCloseTo((112.5 / 225) * (91 / 65) * (130 / 20), 12);
  });

  it('lets arms stand as found where they were not measured again, and says so', () => {
    const { input, assumed } = regulation([...armReadings(), reading('rollerMm', 0, 18, { scope: 'colour', state: 'finished' })], { state: 'finished' });
    expect(input.levers.natural?.distanceRatio).toBeCloseTo((112.5 / 225) * (91 / 65) * (130 / 18), 12);
    expect(assumed).toContain('armsAsFound');
  });

  it('gives a tolerance of the shop’s own to what is judged at the key front, and the usual one to the hammer', () => {
    expect(regulation([], { terms: terms({ regulationToleranceMm: 0.1 }) }).input.tolerances).toMatchObject({ dipMm: 0.1, aftertouchMm: 0.1, keyLevelMm: 0.1, sharpHeightMm: 0.1, blowMm: 1, letOffMm: 0.5, dropMm: 0.5, checkMm: 2 });
  });

  it('leaves out what is not stated: null is never nought', () => {
    const { input } = regulation([], { terms: terms({ sharpHeightMm: 12, regulation: [{ register: 'bass', blowMm: 45 }] }) });
    expect(input.stated).toEqual({ bass: { sharpHeightMm: 12, blowMm: 45 }, middle: { sharpHeightMm: 12 }, treble: { sharpHeightMm: 12 } });
  });
});

describe('hammers gathered', () => {
  const bored = [reading('boreMm', 40, 50), reading('rakeDeg', 40, 0), reading('stringHeightMm', 45, 190), reading('hammerCentreHeightMm', 0, 140, { scope: 'instrument' }), ...armReadings()];

  it('carries a height of strings within its section only, and says so', () => {
    const { input, assumed } = hammers([...bored, reading('boreMm', 20, 50), reading('rakeDeg', 20, 0)]);
    expect([input.keys[39]?.stringHeightMm, input.keys[19]?.stringHeightMm]).toEqual([190, undefined]);
    expect(assumed.find(({ what }) => what === 'heightOfSection')?.notes).toEqual([40]);
    expect(analyseHammers(input).keys[39]?.strike?.shankDeg).toBeCloseTo(0, 9);
  });

  it('names the keys whose speaking length stands as found', () => {
    const strings = [{ key: 40, speakingLengthMm: 620, isFromFound: true }, { key: 41, speakingLengthMm: 585 }];
    const { assumed } = hammers([reading('strikeDistanceMm', 40, 74.4), reading('strikeDistanceMm', 41, 70)], { strings });
    expect(assumed).toEqual([{ what: 'lengthAsFound', notes: [40] }]);
  });

  it('works no bore out for an upright, whose strings stand', () => {
    const { input, assumed } = hammers(bored, { instrument: { ...instrument, kind: 'upright' } });
    expect([input.hammerMm, assumed.map(({ what }) => what)]).toEqual([undefined, ['uprightBore']]);
  });

  it('joins strike distance with the speaking length of the same note', () => {
    const { input, assumed } = hammers([reading('strikeDistanceMm', 40, 74.4), reading('strikeDistanceMm', 41, 70)], { strings: [{ key: 40, speakingLengthMm: 620 }] });
    expect(analyseHammers(input).keys[39]?.strikeRatio).toBeCloseTo(0.12, 12);
    expect(assumed).toEqual([{ what: 'noLength', notes: [41] }]);
  });

  it('reckons what is left as a range while the shop has no figures of its own, and not at all without age and hours', () => {
    expect(hammerLifeOfTerms(terms({ hoursPerWeek: 10 }))).toBeUndefined();
    const use = { hoursPerWeek: 10, hammerAgeYears: 2, reshapeCount: 0 };
    const played = 10 * (365.25 / 7) * 2;
    expect(hammerLifeOfTerms(terms(use))).toMatchObject({ usual: ['reshapeHours', 'mostReshapes'], least: { leftHours: 3 * 1500 - played }, most: { leftHours: 4 * 2500 - played } });
    const own = hammerLifeOfTerms(terms({ ...use, reshapeHours: 2000, mostReshapes: 2 }));
    expect([own?.usual, own?.least]).toEqual([[], own?.most]);
  });
});
