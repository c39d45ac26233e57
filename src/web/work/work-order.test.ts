import type { WorkItem } from '#workshop';
import { describe, expect, it } from 'vitest';
import { chooseWork, missingFrom, stagesOf } from './work-order.ts';

const item = (id: string, stage: number, remedy: string, key: number, status: WorkItem['status'] = 'open'): WorkItem =>
  ({ id, cycle: 1, key, remedy, cause: null, observation: null, remark: '', remeasure: [], stage, status, doneAt: null, inHand: false, waits: null });

describe('the order of the bench', () => {
  it('puts friction before lead, like jobs together, bass to treble', () => {
    const work = [item('a', 4, 'addLead', 3), item('b', 1, 'repinCentres', 40), item('c', 1, 'easeKeyBushing', 12), item('d', 1, 'repinCentres', 7)];
    expect(stagesOf(work).map(({ stage, groups }) => [stage, groups.map(({ remedy, items }) => `${remedy} ${items.map(({ id }) => id).join('')}`)])).toEqual([
      [1, ['repinCentres db', 'easeKeyBushing c']],
      [4, ['addLead a']],
    ]);
  });

  it('shows the jobs of a filter, and keeps in view what was just ticked', () => {
    const work = [item('a', 1, 'repinCentres', 3), item('b', 1, 'repinCentres', 4, 'done'), item('c', 2, 'checkLevers', 5, 'dropped')];
    const ids = (...asked: Parameters<typeof chooseWork>) => chooseWork(...asked).map(({ id }) => id).join('');
    expect([ids(work, 'open', new Set()), ids(work, 'done', new Set()), ids(work, 'all', new Set()), ids(work, 'dropped', new Set())]).toEqual(['a', 'b', 'ab', 'c']);
    expect(ids(work, 'open', new Set(['b', 'c']))).toBe('abc');
  });

  it('asks for a job once, and not again for one that was dropped', () => {
    const planned = [{ ...item('', 1, 'repinCentres', 7) }, { ...item('', 1, 'repinCentres', 8) }, { ...item('', 1, 'freeKey', 8) }];
    expect(missingFrom([item('a', 1, 'repinCentres', 7, 'done'), item('b', 1, 'freeKey', 8, 'dropped')], planned).map(({ key }) => key)).toEqual([8]);
  });
});
