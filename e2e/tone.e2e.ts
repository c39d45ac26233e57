import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeWav } from '#recording';
import { type DemoNote, demoSoundOf } from '#workshop';
import { type Page, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { findBrowser } from '../scripts/lib/browser.mjs';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, setUpDesk } from './support/desk.ts';

/** Working a note out takes a second; on a busy machine many. */
const WORKED_OUT = { timeout: 300_000 };
const PATIENCE_MS = 900_000;

let desk: Desk;
let demo = '';
beforeAll(async () => {
  desk = await setUpDesk({ demo: true });
  demo = await desk.demoPiano();
});
afterAll(() => desk.close());

const note = (f0Hz: number, rest: Partial<DemoNote> = {}): Buffer =>
  Buffer.from(writeWav(demoSoundOf({ f0Hz, inharmonicityB: 4e-4, slopeDbPerOctave: 6, decayS: 4, levelDb: 0, seed: 1, ...rest })));
const wav = (name: string, buffer: Buffer) => ({ name, mimeType: 'audio/wav', buffer });
const pick = (page: Page, ...files: readonly ReturnType<typeof wav>[]) => page.locator('input[type=file]').setInputFiles([...files]);
const card = (page: Page, name: string) => page.locator('.recording-row').filter({ has: page.getByRole('heading', { name }) });

async function ownPiano(): Promise<string> {
  return (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Recorded', kind: 'grand' })).id;
}

describe('recordings taken in', () => {
  it('are kept many at once, worked out, and each key heard laid beside the key told', async () => {
    const id = await ownPiano();
    const page = await desk.open(`/pianos/${id}/tone`);
    await page.getByLabel('Microphone stood').fill('over the tail');
    await pick(page, wav('C4.wav', note(261.63)), wav('E4 soft.wav', note(261.63, { seed: 2 })), wav('cut.wav', Buffer.concat([Buffer.from('RIFF0000WAVEfmt '), Buffer.alloc(20)])));
    expect(await page.getByLabel('Key of C4.wav').inputValue()).toBe('C4');
    await page.getByLabel('Key of cut.wav').fill('X9');
    expect(await page.getByRole('button', { name: 'Keep 3 recordings' }).isDisabled()).toBe(true);
    await page.getByLabel('Key of cut.wav').fill('');
    await page.getByRole('button', { name: 'Keep 3 recordings' }).click();
    await card(page, 'C4.wav').getByText('Heard: C4').waitFor(WORKED_OUT);
    await card(page, 'E4 soft.wav').getByText('Told E4, heard C4').waitFor(WORKED_OUT);
    await card(page, 'cut.wav').getByText('could not be read').waitFor(WORKED_OUT);
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Withdraw E4 soft.wav' }).click();
    await card(page, 'E4 soft.wav').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
    await card(page, 'E4 soft.wav').getByText('Told E4, heard C4').waitFor(WORKED_OUT);
    await page.getByRole('button', { name: 'Correct E4 soft.wav' }).click();
    const form = page.getByRole('form', { name: 'Correct E4 soft.wav' });
    await form.getByLabel('Key', { exact: true }).fill('C4');
    await form.getByRole('button', { name: 'Keep' }).click();
    await card(page, 'E4 soft.wav').getByText('key told: C4').waitFor(WORKED_OUT);
    await page.context().close();
  }, PATIENCE_MS);

  it('come live from the microphone key after key, each kept when it has died away', async () => {
    const id = await ownPiano();
    const folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-sound-'));
    const file = path.join(folder, 'note.wav');
    await writeFile(file, note(261.63, { decayS: 0.9 }));
    const executablePath = await findBrowser();
    const browser = await chromium.launch({
      ...(executablePath === undefined ? {} : { executablePath }),
      args: ['--no-sandbox', '--disable-background-networking', '--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream', `--use-file-for-fake-audio-capture=${file}`],
    });
    try {
      const page = await (await browser.newContext({ locale: 'en-GB' })).newPage();
      await page.goto(`${desk.bench.url}/pianos/${id}/tone`);
      await page.getByRole('button', { name: 'Record with the microphone' }).click();
      await page.getByRole('meter', { name: /Level/u }).waitFor();
      await page.getByRole('button', { name: 'Record A0' }).click();
      await page.getByText('A0.wav is kept').waitFor(WORKED_OUT);
      await page.getByRole('button', { name: 'Record A♯0' }).waitFor();
      await card(page, 'A0.wav').getByText(/key told: A0/u).waitFor();
      await expectAccessible(page);
    } finally {
      await browser.close();
      await rm(folder, { recursive: true, force: true });
    }
  }, PATIENCE_MS);
});

describe('the compass as it sounds', () => {
  it.each([
    ['light', { viewport: { width: 1024, height: 768 } }],
    ['dark', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ] as const)('shows the states over the keys, and one note with its pictures and sound (%s)', async (colorScheme, look) => {
    const page = await desk.open(`/pianos/${demo}/tone`, { colorScheme, ...look });
    await page.getByText('Compass', { exact: true }).click();
    await page.getByText('still being worked out').waitFor({ state: 'detached', ...WORKED_OUT });
    for (const name of ['Brightness', 'Balance', 'Level', 'Decay', 'Inharmonicity B', 'Pitch']) await page.getByRole('img', { name: new RegExp(`^${name}\\. .*As found, As finished`, 'u') }).waitFor();
    await page.locator('label').filter({ hasText: 'As found' }).click();
    await page.getByText('1.6').first().waitFor();
    await page.locator('.design-list button').filter({ hasText: 'D♯4' }).first().click();
    await page.getByRole('img', { name: /^Spectrum/u }).waitFor(WORKED_OUT);
    await page.getByRole('button', { name: 'One after the other' }).click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  }, PATIENCE_MS);

  it('hands a plot out as a table with every figure in full', async () => {
    const page = await desk.open(`/pianos/${demo}/tone`);
    await page.getByText('Compass', { exact: true }).click();
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Pitch as CSV' }).click(WORKED_OUT)]);
    const rows = (await download.createReadStream().then((stream) => stream.toArray())).join('').split('\r\n');
    expect(rows[0]).toBe('key,note,state,pitchCt,pitchUncertaintyCt');
    expect(rows[1]).toMatch(/^10,F♯1,found,-1\d\.\d{6,},/u);
    await page.context().close();
  }, PATIENCE_MS);

  it('takes pitch and inharmonicity over as readings in one step, and undoes it as one', async () => {
    const page = await desk.open(`/pianos/${demo}/tone`);
    await page.getByText('Compass', { exact: true }).click();
    const taken = async () => (await desk.call<{ readings: { quantity: string; remark: string }[] }>('GET', `/api/pianos/${demo}/readings`)).readings.filter(({ quantity, remark }) => (quantity === 'pitchHz' || quantity === 'inharmonicityB') && remark.endsWith('.wav')).length;
    await page.getByRole('button', { name: 'Take 16 keys over' }).click(WORKED_OUT);
    await page.getByText('32 figures taken over').waitFor();
    await vi.waitFor(async () => { expect(await taken()).toBe(32); }, { timeout: 60_000, interval: 200 });
    await page.keyboard.press('Control+z');
    await vi.waitFor(async () => { expect(await taken()).toBe(0); }, { timeout: 60_000, interval: 200 });
    await page.context().close();
  }, PATIENCE_MS);
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
