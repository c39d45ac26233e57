import { type AnyOperation, runOperation } from '#operation';
import { describe, expect, it } from 'vitest';
import { pinTurnOperation, plainStringOperation, steppedStringOperation, stringDriftOperation, windingDensityOperation, wireStrengthOperation, woundStringOperation } from './index.ts';

/** The operation's own example with fields replaced, and what is then refused. */
const refused = (operation: AnyOperation, more: object, without = ''): readonly string[] => {
  const { [without]: _, ...example } = operation.example as Readonly<Record<string, unknown>>;
  const result = runOperation(operation, { ...example, ...more });
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};

const LENGTHS = ['speakingLengthMm', 'diameterMm', 'frequencyHz'] as const;

describe('operations on strings', () => {
  it.each([wireStrengthOperation, plainStringOperation, stringDriftOperation, pinTurnOperation] as readonly AnyOperation[])('refuse zero and negative sizes by field: $name', (operation) => {
    for (const field of LENGTHS.filter((name) => name in (operation.example as object))) {
      for (const wrong of [0, -1]) expect(refused(operation, { [field]: wrong })).toEqual([`range ${field}`]);
    }
  });

  it('refuse a winding that cannot be, where it was given', () => {
    for (const operation of [windingDensityOperation, woundStringOperation] as readonly AnyOperation[]) {
      expect(refused(operation, { wraps: { overallDiameterMm: 1 } })).toEqual(['order wraps.overallDiameterMm']);
      expect(refused(operation, { wraps: { overallDiameterMm: 1.15 } })).toEqual(['range wraps.overallDiameterMm']);
      expect(refused(operation, { overallDiameterMm: 1 }, 'wraps')).toEqual(['order overallDiameterMm']);
      expect(refused(operation, { wraps: [{ wireDiameterMm: 0.04 }] })).toEqual(['range wraps[0].wireDiameterMm']);
      expect(refused(operation, { coreDiameterMm: 0 })).toEqual(['range coreDiameterMm']);
    }
  });

  it('refuse ends without a winding between them, and steps without a second wrap', () => {
    expect(refused(woundStringOperation, { bareFrontMm: 1200 })).toEqual(['range bareFrontMm', 'range bareRearMm']);
    expect(refused(woundStringOperation, { stepRearMm: 3 })).toEqual(['range stepRearMm']);
    expect(refused(woundStringOperation, { bareRearMm: -3 })).toEqual(['range bareRearMm']);
  });

  it('refuse a piece without length or mass', () => {
    const piece = { lengthMm: 600, linearDensityGPerM: 6, bendingStiffnessNm2: 0.01 };
    for (const [field, wrong] of [['lengthMm', 0], ['linearDensityGPerM', 0], ['bendingStiffnessNm2', -1]] as const) {
      expect(refused(steppedStringOperation, { segments: [piece, { ...piece, [field]: wrong }] })).toEqual([`range segments[1].${field}`]);
    }
  });

  it('refuse a whole shorter than its speaking part, a string gone slack, and one too stiff to sound so low', () => {
    for (const operation of [stringDriftOperation, pinTurnOperation] as readonly AnyOperation[]) expect(refused(operation, { totalLengthMm: 600 })).toEqual(['order totalLengthMm']);
    expect(refused(pinTurnOperation, { turnDeg: -360 })).toEqual(['range turnDeg']);
    expect(refused(stringDriftOperation, { stringWarmingK: 480, frameWarmingK: 0 })).toEqual(['range stringWarmingK']);
    expect(refused(plainStringOperation, { diameterMm: 6, speakingLengthMm: 50, frequencyHz: 30 })).toEqual(['unsolvable frequencyHz']);
    expect(refused(woundStringOperation, { coreDiameterMm: 6, speakingLengthMm: 100, frequencyHz: 30 })).toEqual(['unsolvable frequencyHz']);
  });
});
