import { compass88 } from '#instrument';
import { createSay } from '#text';
import { describe, expect, it } from 'vitest';
import { isEventFound } from './event-words.ts';
import { type Change, type LogEvent, workItemSchema } from './records.ts';

const event = (...changes: readonly Change[]): LogEvent => ({ seq: 1, at: '', by: 'p1', kind: 'x', undoes: null, undoneBy: null, changes: [...changes], hash: '' });
const reading = event({
  entity: 'reading', place: 'c1/found/downWeightG/key/40/1', before: null,
  after: { id: 'b40e', typed: '49,5', value: 49.5, outcome: null, remark: 'stays down until helped', quantity: 'downWeightG', index: 40, repeat: 1, cycle: 1, state: 'found', sessionId: 's51', by: 'p1', at: '2031-05-05T09:00:00.000Z' },
});
const job = event({ entity: 'work', place: 'w1', before: null, after: { id: 'w1', remedy: 'repinHammer', key: 40, remark: '', status: 'open', cycle: 3 } });
const finds = (one: LogEvent, typed: string, locale: 'en' | 'de' = 'en'): boolean => isEventFound(one, typed, { say: createSay(locale), compass: compass88 });

describe('what an event is found by', () => {
  it.each(['down weight', 'C4', 'c4 Down', '49.5', '49,5', 'helped', 'as found', 'Figures', '40'])('a figure by “%s”', (typed) => {
    expect(finds(reading, typed)).toBe(true);
  });

  it.each(['up weight', 'C5', '9.5', '95', 'b40e', 's51', 'p1', '2031', '3', 'helped never'])('and not by “%s”: what is a reference, part of a figure, or not there', (typed) => {
    expect(finds(reading, typed)).toBe(false);
  });

  it('a job by its name in the language of the reader, and by its key', () => {
    expect([finds(job, 'repin the hammer'), finds(job, 'jobs c4'), finds(job, 'Hammer', 'de'), finds(job, createSay('de')('remedy.repinHammer'), 'de'), finds(job, 'repin', 'de')]).toEqual([true, true, true, true, true]);
    expect(finds(job, 'wippen')).toBe(false);
  });

  it('a change of a job by the name of the job, which the change itself does not hold', () => {
    const done = event({ entity: 'work', place: 'w1', before: { status: 'open' }, after: { status: 'done' } });
    const work = [workItemSchema.parse({ id: 'w1', cycle: 1, key: 40, remedy: 'other', remark: 'Glue the rib', stage: 5, status: 'done', doneAt: null })];
    const wording = { say: createSay('en'), compass: compass88 };
    expect([isEventFound(done, 'glue rib', { ...wording, work }), isEventFound(done, 'glue rib', wording)]).toEqual([true, false]);
  });

  it('everything where nothing is typed', () => {
    expect(finds(job, '  ')).toBe(true);
  });
});
