import type { Reading } from '#instrument';
import { type WorkItem, demoShop, standingOf, workItemDraftSchema } from '#workshop';
import { describe, expect, it } from 'vitest';
import { stateToWeigh, stillToWeigh } from './remeasure.ts';

const done: WorkItem = { id: 'a', cycle: 1, key: 40, remedy: 'repinCentres', cause: 'frictionHigh', observation: null, remark: '', remeasure: ['downWeightG', 'upWeightG'], stage: 1, status: 'done', doneAt: '2026-03-02T10:00:00Z', inHand: false, waits: null };
const weighed = (quantity: 'downWeightG' | 'upWeightG', at: string, index = 40): Reading => ({
  id: `${quantity} ${at}`, cycle: 1, state: 'finished', quantity, scope: 'key', index, repeat: 1, typed: '49', value: 49, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at, by: 'bench',
});

const states = (state: 'found' | 'finished', ...readings: readonly Reading[]) =>
  ({ found: new Map<string, Reading>(), finished: new Map<string, Reading>(), [state]: new Map(readings.map((reading) => [reading.id, reading])) });

describe('what a done job asks to be weighed again', () => {
  it('is all it names until it was weighed after it was done', () => {
    expect(stillToWeigh(done, states('finished'))).toEqual(['downWeightG', 'upWeightG']);
    expect(stillToWeigh(done, states('finished', weighed('downWeightG', '2026-03-02T09:59:59Z'), weighed('upWeightG', '2026-03-02T11:00:00Z')))).toEqual(['downWeightG']);
    expect(stillToWeigh(done, states('finished', weighed('downWeightG', '2026-03-02T11:00:00Z'), weighed('upWeightG', '2026-03-02T11:00:00Z')))).toEqual([]);
  });

  it('counts a figure by when it was typed: one held on the device since before the job was done does not answer it', () => {
    const held = (typedAt: string): Reading => ({ ...weighed('downWeightG', '2026-03-02T11:00:00Z'), typedAt });
    expect(stillToWeigh(done, states('finished', held('2026-03-02T09:30:00Z')))).toEqual(['downWeightG', 'upWeightG']);
    expect(stillToWeigh(done, states('finished', held('2026-03-02T10:30:00Z')))).toEqual(['upWeightG']);
    const ahead: Reading = { ...weighed('downWeightG', '2026-03-02T09:59:00Z'), typedAt: '2026-03-02T12:00:00Z' };
    expect(stillToWeigh(done, states('finished', ahead))).toEqual(['downWeightG', 'upWeightG']);
  });

  it('is asked of its own key and state only, and of no job that is open', () => {
    const both = (index: number) => [weighed('downWeightG', '2026-03-02T11:00:00Z', index), weighed('upWeightG', '2026-03-02T11:00:00Z', index)] as const;
    expect(stillToWeigh(done, states('finished', ...both(41)))).toHaveLength(2);
    expect(stillToWeigh(done, states('found', ...both(40)))).toHaveLength(2);
    expect(stillToWeigh({ ...done, status: 'open', doneAt: null }, states('finished'))).toEqual([]);
  });

  it('is nothing in the demo, whose jobs are all done and weighed again', () => {
    const steps = demoShop().flatMap((piano) => piano.steps);
    const { readings } = standingOf(steps);
    const of = (state: Reading['state']) => new Map(readings.filter((reading) => reading.state === state).map((reading) => [reading.id, reading]));
    const doneAt = readings[0]?.at ?? '';
    const items = steps.flatMap((step) => (step.kind === 'work' ? step.items : [])).map((item, index): WorkItem => ({ ...workItemDraftSchema.parse(item), id: String(index), status: 'done', doneAt, inHand: false, waits: null }));
    expect(items.length).toBeGreaterThan(20);
    expect(items.filter((item) => stillToWeigh(item, { found: of('found'), finished: of('finished') }).length > 0)).toEqual([]);
  });

  it('belongs to the piano as found where the job only measures, whenever that was read', () => {
    const measuring: WorkItem = { ...done, remedy: 'weighParts' };
    expect(stateToWeigh(measuring)).toBe('found');
    expect(stillToWeigh(measuring, states('found', weighed('downWeightG', '2026-03-01T08:00:00Z')))).toEqual(['upWeightG']);
    expect(stillToWeigh({ ...measuring, remedy: 'weighAgain' }, states('found', weighed('downWeightG', '2026-03-01T08:00:00Z')))).toHaveLength(2);
  });
});
