import { describe, expect, it } from 'vitest';
import { type StiffnessPair, stiffnessFindings } from './sound-against-design.ts';

const even = (change: (key: number) => Partial<StiffnessPair> = () => ({})): readonly StiffnessPair[] =>
  Array.from({ length: 20 }, (_, index) => ({ key: 30 + index, heardB: 4e-4, computedB: 4e-4, decayS: 4, ...change(30 + index) }));

describe('inharmonicity heard beside that of the strings', () => {
  it('names nothing where they agree within a quarter', () => {
    expect(stiffnessFindings(even((key) => ({ heardB: 4e-4 * (key % 2 === 0 ? 1.1 : 0.92) })))).toEqual([]);
  });

  it('names the one note that stands off its neighbours, and on which side', () => {
    expect(stiffnessFindings(even((key) => (key === 40 ? { heardB: 5.6e-4 } : {})))).toEqual([{ key: 40, side: 'stiffer', scope: 'note', ratio: expect.closeTo(1.4, 9) as number, isShort: false }]);
    expect(stiffnessFindings(even((key) => (key === 40 ? { heardB: 2.8e-4 } : {})))).toMatchObject([{ key: 40, side: 'softer', scope: 'note' }]);
  });

  it('names neighbours together where all of them stand off: what they share is to be looked at', () => {
    const found = stiffnessFindings(even(() => ({ heardB: 6e-4 })));
    expect(new Set(found.map(({ scope }) => scope))).toEqual(new Set(['neighbours']));
    expect(found).toHaveLength(20);
  });

  it('says where the note dies away in less than half the time of its neighbours', () => {
    expect(stiffnessFindings(even((key) => (key === 40 ? { heardB: 5.6e-4, decayS: 1.5 } : {})))).toMatchObject([{ key: 40, isShort: true }]);
  });

  it('takes a lone note by itself', () => {
    expect(stiffnessFindings([{ key: 1, heardB: 6e-4, computedB: 3e-4 }])).toEqual([{ key: 1, side: 'stiffer', scope: 'note', ratio: 2, isShort: false }]);
  });
});
