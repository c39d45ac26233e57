import { type Observation, type Reading, observationSchema, observedParts } from '#instrument';
import { createSay, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { figuresOfPart, surveyedOf, templateInUse, usualSurvey } from './survey.ts';
import { type ShopCard, shopCardSchema } from './shop/records.ts';

const seen = (part: Observation['part'], state: Observation['state'] = 'found'): Observation => observationSchema.parse({ cycle: 1, state, part, fault: 'worn', id: `${part} ${state}`, at: '2031-01-01T00:00:00Z' });
const torque = (index: number, value: number | null, state: Reading['state'] = 'found'): Reading => ({
  id: String(index), cycle: 1, state, quantity: 'pinTorqueNm', scope: 'key', index, repeat: 1, typed: null, value, outcome: value === null ? 'missing' : null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: '',
});
const template = (instrument: 'grand' | 'upright', id: string, workshopId = 'shop'): ShopCard => shopCardSchema.parse({
  kind: 'template', instrument, points: [{ part: 'plate', ask: id }], details: null, id, workshopId, at: '', changedAt: '', sequence: 0,
});

describe('a survey', () => {
  it('asks of every part by habit, in words of each language, other words of a grand than of an upright', () => {
    for (const language of languages) {
      const [grand, upright] = (['grand', 'upright'] as const).map((kind) => usualSurvey(kind, createSay(language)));
      expect(grand?.map(({ part }) => part)).toEqual(observedParts);
      expect(grand?.every(({ ask }) => ask.length > 10)).toBe(true);
      expect(grand?.filter(({ ask }, index) => ask !== upright?.[index]?.ask).map(({ part }) => part)).toEqual(['case', 'dampers', 'actionParts', 'pedals', 'castors']);
    }
  });

  it('loses nothing that was seen: a part no point asks for stands at the end, one asked twice is told once', () => {
    const points = [{ part: 'plate', ask: 'struts' }, { part: 'plate', ask: 'screws' }, { part: 'keys', ask: 'level' }] as const;
    const all = [seen('plate'), seen('bench'), seen('plate', 'finished')];
    const surveyed = surveyedOf(points, all);
    expect(surveyed.map(({ part, seen: here }) => `${part} ${String(here.length)}`)).toEqual(['plate 1', 'plate 0', 'keys 0', 'bench 1']);
  });

  it('takes the newest template of the same shop and the same kind of instrument', () => {
    const cards = [template('grand', 'old'), template('grand', 'new'), template('upright', 'other'), template('grand', 'demo', 'demo')];
    expect(templateInUse({ kind: 'grand', workshopId: 'shop' }, cards)?.id).toBe('new');
    expect(templateInUse({ kind: 'upright', workshopId: 'demo' }, cards)).toBeUndefined();
  });

  it('tells figures as found by least and most, and none where none gave a number', () => {
    expect(figuresOfPart('tuningPins', [torque(1, 9), torque(2, 6.5), torque(3, null), torque(4, 2, 'finished')])).toEqual([{ quantity: 'pinTorqueNm', count: 2, least: 6.5, most: 9 }]);
    expect(figuresOfPart('tuningPins', [torque(3, null)])).toEqual([]);
    expect(figuresOfPart('castors', [torque(1, 9)])).toEqual([]);
  });
});
