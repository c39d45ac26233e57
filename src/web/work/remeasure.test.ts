import type { Reading } from '#instrument';
import type { WorkItem } from '#workshop';
import { describe, expect, it } from 'vitest';
import { stillToWeigh } from './remeasure.ts';

const done: WorkItem = { id: 'a', cycle: 1, key: 40, remedy: 'repinCentres', cause: 'frictionHigh', remark: '', remeasure: ['downWeightG', 'upWeightG'], stage: 1, status: 'done', doneAt: '2026-03-02T10:00:00Z' };
const weighed = (quantity: 'downWeightG' | 'upWeightG', at: string, index = 40): Reading => ({
  id: `${quantity} ${at}`, cycle: 1, state: 'finished', quantity, scope: 'key', index, repeat: 1, typed: '49', value: 49, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at, by: 'bench',
});

describe('what a done job asks to be weighed again', () => {
  it('is all it names until it was weighed after it was done', () => {
    expect(stillToWeigh(done, [])).toEqual(['downWeightG', 'upWeightG']);
    expect(stillToWeigh(done, [weighed('downWeightG', '2026-03-02T09:59:59Z'), weighed('upWeightG', '2026-03-02T11:00:00Z')])).toEqual(['downWeightG']);
    expect(stillToWeigh(done, [weighed('downWeightG', '2026-03-02T11:00:00Z'), weighed('upWeightG', '2026-03-02T11:00:00Z')])).toEqual([]);
  });

  it('is asked of its own key only, and of no job that is open', () => {
    expect(stillToWeigh(done, [weighed('downWeightG', '2026-03-02T11:00:00Z', 41), weighed('upWeightG', '2026-03-02T11:00:00Z', 41)])).toHaveLength(2);
    expect(stillToWeigh({ ...done, status: 'open', doneAt: null }, [])).toEqual([]);
  });
});
