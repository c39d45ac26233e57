import type { KeyTouch } from '#action';
import { describe, expect, it } from 'vitest';
import { signOf, signsOf } from './index.ts';

const key = (change: Partial<KeyTouch>): KeyTouch =>
  ({ key: 1, colour: 'natural', figures: { key: 1 }, verdict: 'inside', doubtful: false, upWeightLow: false, upAboveDown: false, findings: [], next: [], ...change });
const finding = (withinUncertainty: boolean): KeyTouch['findings'][number] =>
  ({ cause: 'frictionHigh', evidence: 'register', supportedBy: [], withinUncertainty, remedies: ['repinCentres'], stage: 1 });

describe('the sign of a key', () => {
  it('says heavy or light of every key outside, near the limit or not', () => {
    expect(signOf(key({ verdict: 'outside', deviationG: 3 }))).toBe('heavy');
    expect(signOf(key({ verdict: 'outside', deviationG: -2.1, doubtful: true }))).toBe('light');
  });

  it('puts a slow return before a doubt, and what stops the key before all', () => {
    expect(signOf(key({ doubtful: true }))).toBe('doubtful');
    expect(signOf(key({ doubtful: true, upWeightLow: true }))).toBe('slow');
    expect(signOf(key({ verdict: 'outcome', upWeightLow: true }))).toBe('outcome');
    expect(signOf(key({}))).toBe('inside');
  });

  it('marks for work where nothing is asked for, but only what is to be acted on', () => {
    expect(signOf(key({ verdict: 'noTarget', findings: [finding(false)] }))).toBe('work');
    expect(signOf(key({ verdict: 'noTarget', findings: [finding(true)] }))).toBeUndefined();
    expect(signOf(key({ verdict: 'noTarget', findings: [{ ...finding(false), cause: 'upWeightSlow' }] }))).toBeUndefined();
    expect([...signsOf([key({ verdict: 'noTarget' }), key({ key: 2 })])]).toEqual([[2, 'inside']]);
  });
});
