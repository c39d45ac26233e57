import { type ShopCard, shopCardSchema } from '#workshop';
import { describe, expect, it } from 'vitest';
import { type ClockStep, madeBy, runningClockOf, withStart, withStop } from './clock-steps.ts';

const target = { pianoId: 'p', cycle: 1, jobs: ['j'], line: null };
const entry = (id: string, startedAt: string, stoppedAt: string | null = null, who: string | null = null): ShopCard =>
  shopCardSchema.parse({ kind: 'hours', id, workshopId: 'shop', at: '', changedAt: '', sequence: 0, pianoId: 'p', cycle: 1, on: '2031-05-01', startedAt, stoppedAt, who, details: null });
const [eight, nine] = ['2031-05-01T08:00:00.000Z', '2031-05-01T09:00:00.000Z'];

describe('the clock at the bench', () => {
  it('runs from the moment it was started, whether the book has heard of it or not', () => {
    const steps = withStart([], undefined, { ...target, who: null, startedAt: eight });
    expect(runningClockOf(steps, [], null)).toMatchObject({ startedAt: eight, pianoId: 'p' });
    expect(runningClockOf([], [entry('a', eight)], null)).toMatchObject({ card: 'a', startedAt: eight });
    expect(runningClockOf([], [entry('a', eight, nine)], null)).toBeUndefined();
  });

  it('is each person’s own', () => {
    expect(runningClockOf([], [entry('a', eight, null, 'ada')], 'ben')).toBeUndefined();
    expect(runningClockOf([], [entry('a', eight, null, 'ada')], 'ada')).toMatchObject({ card: 'a' });
  });

  it('stopped before it was sent goes as one entry, from start to stop', () => {
    const started = withStart([], undefined, { ...target, who: null, startedAt: eight });
    const running = runningClockOf(started, [], null);
    if (running === undefined) throw new Error('no clock');
    const stopped = withStop(started, running, nine);
    expect(stopped).toEqual([{ kind: 'start', who: null, startedAt: eight, stoppedAt: nine, ...target }]);
    expect(runningClockOf(stopped, [], null)).toBeUndefined();
  });

  it('stopped without a network counts as stopped at that moment', () => {
    const steps = withStop([], { ...target, card: 'a', startedAt: eight }, nine);
    expect(steps).toEqual([{ kind: 'stop', card: 'a', stoppedAt: nine }]);
    expect(runningClockOf(steps, [entry('a', eight)], null)).toBeUndefined();
  });

  it('gives way to another: the one that ran stops at the moment the other starts', () => {
    const steps = withStart([], { ...target, card: 'a', startedAt: eight }, { ...target, jobs: ['k'], who: null, startedAt: nine });
    expect(steps.map((step) => [step.kind, step.stoppedAt])).toEqual([['stop', nine], ['start', null]]);
    expect(runningClockOf(steps, [entry('a', eight)], null)).toMatchObject({ jobs: ['k'] });
  });

  it('that was refused runs no more, and its card still runs in the book', () => {
    const refused: ClockStep = { kind: 'stop', card: 'a', stoppedAt: nine, refused: 'no' };
    expect(runningClockOf([refused], [entry('a', eight)], null)).toMatchObject({ card: 'a' });
  });

  it('is not started twice where the answer to its start was lost', () => {
    const step = { kind: 'start', who: 'ada', startedAt: '2031-05-01T10:00:00+02:00', stoppedAt: null, ...target } as const;
    expect(madeBy(step, [entry('a', eight), entry('b', eight, null, 'ada')])?.id).toBe('b');
    expect(madeBy(step, [entry('c', nine, null, 'ada')])).toBeUndefined();
  });
});
