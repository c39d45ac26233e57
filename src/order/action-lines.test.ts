import { type Reading, actionTermsSchema } from '#instrument';
import { createSay } from '#text';
import { leadPlanOf } from '#workshop';
import { describe, expect, it } from 'vitest';
import { hammerLinesOf, leadLinesOf } from './index.ts';

const telling = { say: createSay('en'), locale: 'en' };
const reading = (state: Reading['state'], index: number, quantity: Reading['quantity'], value: number, scope: Reading['scope'] = 'key'): Reading => ({
  id: `${state} ${scope} ${String(index)} ${quantity}`, cycle: 1, state, quantity, scope, index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-01-01T00:00:00Z', by: 'p',
});
const instrument = { firstMidi: 21, lastMidi: 108 };
const plan = (...readings: readonly Reading[]) => leadPlanOf({ instrument, readings, cycle: 1, terms: actionTermsSchema.parse({}) });
const lead = (state: Reading['state'], key: number, place: 1 | 2, positionMm: number, diameterMm: number) => [reading(state, key, `lead${String(place) as '1'}PositionMm`, positionMm), reading(state, key, `lead${String(place) as '1'}DiameterMm`, diameterMm)];

describe('leads to buy for a plan', () => {
  it('are those of new holes, counted by drill; one that stays in its hole is left out', () => {
    const lines = leadLinesOf(plan(
      reading('found', 0, 'keyWidthMm', 13, 'colour'),
      ...lead('found', 40, 1, 178, 12.7), ...lead('planned', 40, 1, 178, 12.7), ...lead('planned', 40, 2, 120, 11), ...lead('planned', 42, 1, 150, 12.7), ...lead('planned', 44, 1, 140, 12.7),
    ), telling);
    expect(lines.map(({ sizeMm, amount, unit, what }) => [sizeMm, amount, unit, what])).toEqual([[11, 1, 'piece', 'leads'], [12.7, 2, 'piece', 'leads']]);
    // π/4 · 12.7² mm² · 13 mm · 11.34 mg/mm³ = 18.67 g (mass of a cylinder, density of lead 11.34 g/cm³).
    expect(lines[1]?.name).toContain('18.7 g');
  });

  it('tell no mass where the width of the key is not known', () => {
    const [line] = leadLinesOf(plan(...lead('planned', 40, 1, 178, 12.7)), telling);
    expect(line).toMatchObject({ sizeMm: 12.7, amount: 1 });
    expect(line?.name).not.toContain(' g');
  });
});

describe('hammers to make for a plan', () => {
  it('are the weights kept as planned, bass to treble, and none as found', () => {
    const lines = hammerLinesOf([reading('planned', 52, 'hammerWeightG', 8.25), reading('planned', 1, 'hammerWeightG', 11), reading('found', 3, 'hammerWeightG', 9)], 1, { firstMidi: 21, lastMidi: 108 }, { ...telling, terms: null });
    expect(lines.map(({ name }) => name)).toEqual(['Hammer A0, key 1, 11.00 g', 'Hammer C5, key 52, 8.25 g']);
  });

  it('where none are kept follow the curve stated, through its three anchors', () => {
    const terms = actionTermsSchema.parse({ hammerCurve: 'anchors', hammerAnchors: [{ key: 1, weightG: 11 }, { key: 40, weightG: 8.5 }, { key: 88, weightG: 5.25 }] });
    const lines = hammerLinesOf([], 1, { firstMidi: 21, lastMidi: 108 }, { ...telling, terms });
    expect(lines).toHaveLength(88);
    expect([lines[0]?.name, lines[39]?.name, lines[87]?.name]).toEqual(['Hammer A0, key 1, 11.00 g', 'Hammer C4, key 40, 8.50 g', 'Hammer C8, key 88, 5.25 g']);
    expect(hammerLinesOf([], 1, { firstMidi: 21, lastMidi: 108 }, { ...telling, terms: null })).toEqual([]);
  });
});
