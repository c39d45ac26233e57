import { keyStrokeOf, leverRatiosOf } from '#action';
import { type QuantityName, type Reading, actionTermsSchema } from '#instrument';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { strokeInputOf } from './index.ts';
import { readingOf } from './testing/leaded-keys.ts';

const colour = (quantity: QuantityName, value: number): Reading => readingOf(['colour', 0, quantity, value]);
const whole = (quantity: QuantityName, value: number): Reading => readingOf(['instrument', 0, quantity, value]);
const own = (quantity: QuantityName, value: number): Reading => readingOf(['key', 40, quantity, value]);

/** An invented action as it is measured at half stroke. */
const action: readonly Reading[] = [
  colour('keyFrontMm', 225), colour('keyBackMm', 115), colour('wippenHeelMm', 65), colour('wippenJackMm', 96), colour('rollerMm', 18), colour('hammerMm', 130), colour('keyFrontLengthMm', 238),
  colour('balanceHeightMm', 25), colour('capstanHeightMm', 72), whole('wippenCentreHeightMm', 85), whole('jackTopHeightMm', 127), whole('hammerCentreHeightMm', 142), whole('capstanDiameterMm', 12), whole('rollerDiameterMm', 10),
  own('stringHeightMm', 192), own('blowMm', 45), own('letOffMm', 1.5), own('dipMm', 10), own('dropMm', 1.75),
];
const jack = [whole('jackHeightMm', 52), whole('jackToeMm', 25), whole('jackOverlapMm', 2)];
const gather = (readings: readonly Reading[], terms: Parameters<typeof actionTermsSchema.parse>[0] = null) =>
  strokeInputOf({ instrument: { kind: 'grand', firstMidi: 21, lastMidi: 108, sections: [{ name: 'tenor', firstKey: 30, lastKey: 50 }] }, readings, cycle: 1, key: 40, terms: terms === null ? null : actionTermsSchema.parse(terms) });

describe('what the stroke of a key is followed from', () => {
  it('gives at the measured position the ratio of the lever model', () => {
    const { measures, dropMm, assumed } = gather([...action, ...jack], { lossMm: 0.4 });
    const stroke = mustBe(keyStrokeOf(measures ?? expect.fail(), 41));
    expect(stroke.measured.rates?.actionRatio).toBeCloseTo(leverRatiosOf(measures?.levers ?? expect.fail()).actionRatio, 9);
    expect([measures?.capstanRadiusMm, measures?.lossMm, dropMm]).toEqual([6, 0.4, 1.75]);
    expect(assumed).toEqual(['halfStroke', 'facesLevel']);
  });

  it('names everything that is not measured, and draws nothing from usual values', () => {
    const { measures, missing } = gather(action.filter(({ quantity }) => !['capstanHeightMm', 'rollerDiameterMm', 'dipMm'].includes(quantity)));
    expect(measures).toBeUndefined();
    expect(missing).toEqual(['capstanHeightMm', 'rollerDiameterMm', 'dipMm']);
  });

  it('takes what is asked of the register and the string height of the section where the key has none, and says so', () => {
    const { measures, assumed } = gather([...action.filter(({ quantity }) => quantity !== 'dipMm' && quantity !== 'stringHeightMm'), readingOf(['key', 33, 'stringHeightMm', 191]), readingOf(['key', 60, 'stringHeightMm', 180])], { regulation: [{ register: 'middle', dipMm: 9.8 }] });
    expect([measures?.dipMm, measures?.stringHeightMm]).toEqual([9.8, 191]);
    expect(assumed).toEqual(['lossUsual', 'halfStroke', 'facesLevel', 'letsGoAtOnce', 'heightOfSection', 'asAsked']);
  });
});
