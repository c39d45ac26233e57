import { describe, expect, it } from 'vitest';
import { type WorkItem, workItemSchema } from './records.ts';
import { benchTasksOf, columnOf } from './bench-board.ts';
import type { BenchPiano } from './routes.ts';
import { hoursOfEntry, isRunning, mayBeForgotten } from './shop/bench-hours.ts';

const NOW = new Date('2031-05-02T12:00:00Z');
const job = (more: Partial<WorkItem> = {}): WorkItem => ({ ...workItemSchema.parse({ cycle: 1, key: 40, remedy: 'addLead', stage: 4, id: 'j', status: 'open', doneAt: null }), ...more });
const noOrders = new Map<string, { status: 'ordered' | 'received' }>();
const waits = (until: string | null, purchase: string | null = null) => ({ for: 'glue' as const, until, purchase });

describe('where a job stands at the bench', () => {
  it('is to do, in hand, waiting or done', () => {
    expect(columnOf(job(), NOW, noOrders)).toBe('toDo');
    expect(columnOf(job({ inHand: true }), NOW, noOrders)).toBe('inHand');
    expect(columnOf(job({ waits: waits(null) }), NOW, noOrders)).toBe('waits');
    expect(columnOf(job({ status: 'done', waits: waits(null) }), NOW, noOrders)).toBe('done');
  });

  it('leaves waiting at the very moment the glue is dry, for where it was before', () => {
    expect(columnOf(job({ waits: waits('2031-05-02T12:00:00.001Z') }), NOW, noOrders)).toBe('waits');
    expect(columnOf(job({ waits: waits('2031-05-02T12:00:00Z') }), NOW, noOrders)).toBe('toDo');
    expect(columnOf(job({ inHand: true, waits: waits('2031-05-02T14:00:00+02:00') }), NOW, noOrders)).toBe('inHand');
  });

  it('waits for an order until it was received, and for the later of order and moment', () => {
    const on = (status: 'ordered' | 'received') => new Map([['p', { status }]]);
    expect(columnOf(job({ waits: waits(null, 'p') }), NOW, on('ordered'))).toBe('waits');
    expect(columnOf(job({ waits: waits(null, 'p') }), NOW, on('received'))).toBe('toDo');
    expect(columnOf(job({ waits: waits(null, 'p') }), NOW, noOrders)).toBe('waits');
    expect(columnOf(job({ waits: waits('2032-01-01T00:00:00Z', 'p') }), NOW, on('received'))).toBe('waits');
  });
});

describe('the board', () => {
  const piano = (work: readonly WorkItem[]): BenchPiano => ({ instrument: { id: 'p', name: 'P' } as BenchPiano['instrument'], work: [...work], estimate: null });

  it('puts like jobs of a piano together, keeps jobs of one’s own apart, and leaves out what was dropped', () => {
    const tasks = benchTasksOf([piano([job({ id: 'a' }), job({ id: 'b', key: 41 }), job({ id: 'c', status: 'done' }), job({ id: 'd', status: 'dropped' }), job({ id: 'e', remedy: 'other', stage: 5 }), job({ id: 'f', remedy: 'other', stage: 5 })])], NOW, noOrders);
    expect(tasks.map(({ column, items }) => [column, items.map(({ id }) => id).join('')])).toEqual([['toDo', 'ab'], ['done', 'c'], ['toDo', 'e'], ['toDo', 'f']]);
    expect(new Set(tasks.map(({ id }) => id)).size).toBe(4);
  });

  it('parts what waits for different things', () => {
    const tasks = benchTasksOf([piano([job({ id: 'a', waits: waits(null) }), job({ id: 'b', waits: waits('2031-06-01T00:00:00Z') })])], NOW, noOrders);
    expect(tasks).toHaveLength(2);
  });
});

describe('time at the bench', () => {
  const clock = { hours: null, startedAt: '2031-05-02T08:00:00Z', stoppedAt: null };

  it('is from start to stop, and what was typed where something was', () => {
    expect(hoursOfEntry({ ...clock, stoppedAt: '2031-05-02T12:30:00+02:00' })).toBe(2.5);
    expect(hoursOfEntry({ ...clock, stoppedAt: '2031-05-03T08:00:00Z', hours: 3 })).toBe(3);
    expect(hoursOfEntry(clock)).toBeUndefined();
    expect([clock, { ...clock, hours: 3 }, { hours: 2, startedAt: null, stoppedAt: null }].map(isRunning)).toEqual([true, false, false]);
  });

  it('asks about a clock that ran more than ten hours, and goes on counting', () => {
    expect(mayBeForgotten(clock, new Date('2031-05-02T18:00:00Z'))).toBe(false);
    expect(mayBeForgotten(clock, new Date('2031-05-02T18:00:00.001Z'))).toBe(true);
    expect(hoursOfEntry({ ...clock, stoppedAt: '2031-05-04T08:00:00Z' })).toBe(48);
  });
});
