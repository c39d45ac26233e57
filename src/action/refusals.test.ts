import { type AnyOperation, runOperation } from '#operation';
import { createSay, explainIssue, languages } from '#text';
import { describe, expect, it } from 'vitest';
import {
  contactGeometryOperation, hammerBoreOperation, hammerCurveOperation, keyTopChangeOperation, leadEffectOperation, leadTrimOperation, leverShiftOperation, regulationOperation,
} from './index.ts';

const regulated = { letOffMm: 1.5, distanceRatio: 5.3, keyEdgeMm: 238, keyFrontMm: 225, lossMm: 0.3 };
const levers = { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 };
const bored = { stringHeightMm: 190, centreHeightMm: 140, boreMm: 50, hammerMm: 130, rakeDeg: 0 };

/** What cannot be, and the reason that is told. */
const cases: readonly (readonly [AnyOperation, unknown, string])[] = [
  [leadEffectOperation, { bareFrontWeightG: 0, keyFrontMm: 225, keyWidthMm: 13, keyFrontLengthMm: 238, leads: [{ diameterMm: 12.7, positionMm: 240 }] }, 'offKey'],
  [leadTrimOperation, { frontWeightChangeG: 30, positionMm: 180, keyWidthMm: 13, keyFrontMm: 225, diameterMm: 12.7 }, 'drillWiderThanLead'],
  [regulationOperation, { ...regulated, dipMm: 1, aftertouchMm: 1 }, 'dipTooSmall'],
  [regulationOperation, { ...regulated, keyEdgeMm: 220, blowMm: 45, dipMm: 10 }, 'edgeBehindPoint'],
  [regulationOperation, { ...regulated, blowMm: 1, dipMm: 10 }, 'letOffAboveBlow'],
  [hammerBoreOperation, { ...bored, centreHeightMm: 200 }, 'centreAboveString'],
  [hammerBoreOperation, { ...bored, stringHeightMm: 400 }, 'boreTooShort'],
  [keyTopChangeOperation, { oldThicknessMm: 1, oldDensityGPerMm3: 0.00185, newThicknessMm: 2.3, newDensityGPerMm3: 0.00119, areaMm2: 2400, centroidMm: 300, keyEdgeMm: 238, keyFrontMm: 225, planedMm: 0 }, 'topBehindBalance'],
  [hammerCurveOperation, { anchors: [{ key: 1, weightG: 11 }, { key: 1, weightG: 9 }, { key: 88, weightG: 5 }] }, 'anchorKey'],
  [hammerCurveOperation, { anchors: [{ key: 1, weightG: 11 }, { key: 10, weightG: 6 }, { key: 20, weightG: 0.1 }] }, 'curveBelowNought'],
  [contactGeometryOperation, { first: { xMm: 0, yMm: 0 }, second: { xMm: 1, yMm: 0 }, contact: { xMm: 3, yMm: 0 }, normalDeg: 0 }, 'deadCentre'],
  [leverShiftOperation, { levers, rollerOutMm: -20 }, 'pastCentre'],
];

describe('what cannot be is told in words of every language', () => {
  it.each(cases.map(([operation, input, reason]) => [operation.name, reason, operation, input] as const))('%s: %s', (_name, reason, operation, input) => {
    const result = runOperation(operation, input);
    expect(result).toMatchObject({ ok: false, issues: [{ params: { reason } }] });
    if (result.ok) return;
    for (const language of languages) {
      const words = result.issues.map((issue) => explainIssue(createSay(language), issue, language)).join(' ');
      expect(words).not.toMatch(/[{}]|undefined|NaN/u);
      expect(words.length).toBeGreaterThan(30);
    }
  });
});
