import { type QuantityName, type Reading, compass88, equalTemperedHzOf } from '#instrument';
import { millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { entriesOf, misread, standingSizes, tried, triedReadings, untried } from './trial.ts';

const planned = (quantity: QuantityName, value: number, more: Partial<Reading> = {}): Reading => ({
  id: `${quantity} ${String(more.repeat ?? 1)}`, cycle: 1, state: 'planned', quantity, scope: 'key', index: 20, repeat: 1, typed: String(value), value,
  outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: 'x', ...more,
});
const standing = { speakingLengthMm: '1000', wireDiameterMm: '1', overallDiameterMm: '2', bareFrontMm: '18' };

describe('sizes tried on a note', () => {
  it('takes the whole wire along with its first changed size, and nothing with a length', () => {
    expect(tried({}, { key: 20, quantity: 'speakingLengthMm', text: '990', standing })).toEqual({ 20: { speakingLengthMm: '990' } });
    const trial = tried({}, { key: 20, quantity: 'wireDiameterMm', text: '1.05', standing });
    expect(trial[20]).toMatchObject({ wireDiameterMm: '1.05', overallDiameterMm: '2', bareFrontMm: '18', outerWrapMm: '', hexCoreMm: '' });
    expect(trial[20]).not.toHaveProperty('speakingLengthMm');
  });

  it('puts a wrap by its wire in the place of one measured over all, and a hexagonal core in that of a round one', () => {
    const wrapped = tried({}, { key: 20, quantity: 'outerWrapMm', text: '0.5', standing });
    expect(wrapped[20]).toMatchObject({ outerWrapMm: '0.5', overallDiameterMm: '' });
    expect(tried(wrapped, { key: 20, quantity: 'hexCoreMm', text: '0.95', standing })[20]).toMatchObject({ hexCoreMm: '0.95', wireDiameterMm: '', outerWrapMm: '0.5' });
  });

  it('is read as typed, in the reader’s decimals; what cannot be read is left out and told', () => {
    const trial = { 20: { wireDiameterMm: '1,05', speakingLengthMm: 'long' } };
    expect(triedReadings([planned('wireDiameterMm', 1), planned('stringCount', 2)], trial, { cycle: 1, locale: 'de-DE' }).map(({ quantity, value }) => [quantity, value])).toEqual([['stringCount', 2], ['wireDiameterMm', 1.05]]);
    expect(misread(trial, 'de-DE')).toMatchObject([{ key: 20, quantity: 'speakingLengthMm', text: 'long' }]);
  });

  it('is kept as one step that writes what was typed, clears what was taken away and leaves no repeat behind', () => {
    const trial = { 20: { wireDiameterMm: '1.05', overallDiameterMm: '', bareFrontMm: '' } };
    expect(entriesOf(trial, [planned('wireDiameterMm', 1), planned('wireDiameterMm', 1.01, { repeat: 2 }), planned('overallDiameterMm', 2)])).toEqual([
      { quantity: 'wireDiameterMm', scope: 'key', index: 20, typed: '1.05', basis: 'derived' },
      { quantity: 'wireDiameterMm', scope: 'key', index: 20, repeat: 2, clear: true },
      { quantity: 'overallDiameterMm', scope: 'key', index: 20, repeat: 1, clear: true },
    ]);
    expect(untried(trial, 20)).toEqual({});
  });

  it('starts from the sizes a note stands with', () => {
    const note = { key: 20, frequencyHz: equalTemperedHzOf(compass88, 20), isLengthEstimated: false, strings: 2, speakingLengthMm: millimetres(1000) };
    expect(standingSizes({ ...note, wire: { kind: 'plain', diameterMm: millimetres(1) } })).toEqual({ speakingLengthMm: 1000, stringCount: 2, wireDiameterMm: 1 });
    expect(standingSizes({ ...note, wire: { kind: 'wound', coreDiameterMm: millimetres(1), coreShape: 'hex', wraps: [{ wireDiameterMm: millimetres(0.4) }, { wireDiameterMm: millimetres(0.9) }], bareRearMm: millimetres(14) } }))
      .toEqual({ speakingLengthMm: 1000, stringCount: 2, hexCoreMm: 1, innerWrapMm: 0.4, outerWrapMm: 0.9, bareRearMm: 14 });
  });
});
