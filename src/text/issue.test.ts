import type { Issue } from '#result';
import { describe, expect, it } from 'vitest';
import { createSay, explainIssue } from './index.ts';

const issue = (rest: Partial<Issue>): Issue => ({ code: 'range', path: 'downWeightG', given: 300.5, allowed: '0 to 300 g', ...rest });
const inEnglish = (rest: Partial<Issue>) => explainIssue(createSay('en-GB'), issue(rest), 'en-GB');
const inGerman = (rest: Partial<Issue>) => explainIssue(createSay('de-DE'), issue(rest), 'de-DE');

describe('explaining an issue to a person', () => {
  it('names what was given and the bounds, in the reader’s decimal sign', () => {
    expect(inEnglish({ params: { min: 0.5, max: 300, unit: 'g' } })).toBe('300.5 is outside what is allowed: 0.5 to 300 g.');
    expect(inGerman({ params: { min: 0.5, max: 300, unit: 'g' } })).toBe('300,5 liegt außerhalb des Zulässigen: 0,5 bis 300 g.');
  });

  it.each([
    [{ params: { above: 0 } }, '300.5 is outside what is allowed: more than 0.'],
    [{}, '300.5 is outside what is allowed: 0 to 300 g.'],
    [{ code: 'length', given: [], params: { min: 2, of: 'array' } }, 'This list has the wrong length: 2 or more entries are allowed.'],
    [{ code: 'type', given: '5', params: { kind: 'number' } }, '“5” is not a number.'],
    [{ code: 'required', given: undefined, params: { kind: 'number' } }, 'Nothing is given here. A number is needed.'],
    [{ code: 'choice', given: 'c', params: { choices: 'a, b' } }, '“c” is not one of the choices: a, b.'],
  ] as const)('says %j', (rest, expected) => {
    expect(inEnglish(rest)).toBe(expected);
  });

  it('cuts a long text, and never fails on what JSON cannot carry', () => {
    expect(inEnglish({ code: 'format', given: 'x'.repeat(500) })).toContain('…');
    expect(inEnglish({ code: 'type', given: Number.POSITIVE_INFINITY, params: { kind: 'number' } })).toBe('“Infinity” is not a number.');
  });
});
