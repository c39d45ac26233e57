import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerOfTwoFrom, realSpectrumOf, signalOf, spectrumOf } from '#numerics';

const lists = fc.integer({ min: 1, max: 6 }).chain((power) => fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2 ** power, maxLength: 2 ** power }));

describe('the Fourier transform', () => {
  it('is the sum of its definition', () => {
    fc.assert(fc.property(lists, (list) => {
      const size = list.length;
      const { re, im } = realSpectrumOf(list);
      for (let k = 0; k <= size / 2; k++) {
        const angle = (t: number): number => (-2 * Math.PI * k * t) / size;
        expect(re[k]).toBeCloseTo(list.reduce((sum, x, t) => sum + x * Math.cos(angle(t)), 0), 10);
        expect(im[k]).toBeCloseTo(list.reduce((sum, x, t) => sum + x * Math.sin(angle(t)), 0), 10);
      }
    }));
  });

  it('comes back by its inverse', () => {
    fc.assert(fc.property(lists, lists, (a, b) => {
      const size = Math.min(a.length, b.length);
      const given = { re: Float64Array.from(a.slice(0, size)), im: Float64Array.from(b.slice(0, size)) };
      const back = signalOf(spectrumOf(given));
      for (let at = 0; at < size; at++) {
        expect(back.re[at]).toBeCloseTo(given.re[at] ?? Number.NaN, 12);
        expect(back.im[at]).toBeCloseTo(given.im[at] ?? Number.NaN, 12);
      }
    }));
  });

  it('pads to a power of two that is not below the count', () => {
    expect([1, 2, 3, 4, 5, 65536, 65537].map(powerOfTwoFrom)).toEqual([2, 2, 4, 4, 8, 65536, 131072]);
  });
});
