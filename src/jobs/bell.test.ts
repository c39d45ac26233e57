import { expect, it } from 'vitest';
import { newBell } from './bell.ts';

const HOUR_MS = 3_600_000;
const never = new AbortController().signal;

it('is heard by those who listen, by those who looked before it rang, and not by those who heard it', async () => {
  const bell = newBell();
  const listening = bell.next(bell.rings(), HOUR_MS, never);
  bell.ring();
  await listening;
  await bell.next(0, HOUR_MS, never);
  let hasHeard = false;
  const next = bell.next(bell.rings(), HOUR_MS, never).then(() => { hasHeard = true; });
  await new Promise((resolve) => { setImmediate(resolve); });
  expect(hasHeard).toBe(false);
  bell.ring();
  await next;
});

it('is waited for no longer than said, and not at all once called off', async () => {
  const bell = newBell();
  await bell.next(0, 1, never);
  const called = new AbortController();
  const waiting = bell.next(0, HOUR_MS, called.signal);
  called.abort();
  await waiting;
  await bell.next(0, HOUR_MS, called.signal);
  expect(bell.rings()).toBe(0);
});
