import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

let piano = '';
const desk = fileDesk({}, async () => {
  piano = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Workshop grand', kind: 'grand' })).id;
});

interface Readings {
  readonly readings: readonly { readonly id: string; readonly index: number; readonly typed: string }[];
}

async function typedAt(key: number): Promise<string | undefined> {
  return (await desk.call<Readings>('GET', `/api/pianos/${piano}/readings`)).readings.find(({ index }) => index === key)?.typed;
}

/** Leaves a parcel in the browser as a page does that died before it could send. */
async function leaveParcel(page: Page, sendId: string, key: number, typed: string, basedOn: string | null): Promise<void> {
  const parcel = {
    sendId: `gone.${sendId}`, pianoId: piano, cycle: 1, state: 'found', sessionId: null, status: 'sending', typedAt: 1_790_000_000_000, order: 1,
    entries: [{ quantity: 'downWeightG', scope: 'key', index: key, typed, basedOn }],
  };
  await page.evaluate(([name, text]) => { localStorage.setItem(name ?? '', text ?? ''); }, [`wrestplank.outbox.${parcel.sendId}`, JSON.stringify(parcel)]);
}

describe('figures on their way', () => {
  it('are sent by the next page when the one they were typed in died', async () => {
    const page = await desk.open('/pianos');
    await leaveParcel(page, 'send-0001', 40, '49,5', null);
    await page.reload();
    await expect.poll(() => typedAt(40)).toBe('49,5');
    await page.getByRole('button', { name: /^Saved/u }).waitFor();
    expect(await page.evaluate(() => Object.keys(localStorage).filter((name) => name.includes('outbox')))).toEqual([]);
    await page.context().close();
  });

  it('wait in view while the server is away, outlive a reload, and go out when it is back', async () => {
    const page = await desk.open('/pianos');
    await page.context().route('**/api/pianos/*/readings', (route) => (route.request().method() === 'POST' ? route.abort() : route.fallback()));
    await leaveParcel(page, 'send-0002', 41, '48', null);
    await page.reload();
    await page.getByRole('button', { name: /^1 figure waits/u }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: /^1 figure waits/u }).click();
    const dialog = page.getByRole('dialog', { name: 'What is on its way' });
    await dialog.getByText('Down weight').waitFor();
    await expectAccessible(page);
    await page.context().unroute('**/api/pianos/*/readings');
    await dialog.getByRole('button', { name: 'Try now' }).click();
    await expect.poll(() => typedAt(41)).toBe('48');
    await dialog.getByText('Everything typed here has been acknowledged').waitFor();
    await page.context().close();
  });

  it('never write over what another window wrote meanwhile: both are shown, and the person chooses', async () => {
    const page = await desk.open('/pianos');
    await leaveParcel(page, 'send-0003', 40, '51', null);
    await page.reload();
    await page.getByRole('button', { name: /^1 entry needs you/u }).click();
    const dialog = page.getByRole('dialog', { name: 'What is on its way' });
    await dialog.getByText(/There now: Down weight C4 .*49\.5.g/u).waitFor();
    await expectAccessible(page);
    expect(await typedAt(40)).toBe('49,5');
    await page.reload();
    await page.getByRole('button', { name: /^1 entry needs you/u }).click();
    await dialog.getByRole('button', { name: 'Keep mine' }).click();
    await expect.poll(() => typedAt(40)).toBe('51');
    await page.context().close();
  });

  it('survive the end of the program itself', async () => {
    const page = await desk.open('/pianos');
    await desk.bench.restart();
    expect(await typedAt(40)).toBe('51');
    await page.reload();
    await page.getByRole('link', { name: 'Workshop grand' }).waitFor();
    await page.context().close();
  });
});
