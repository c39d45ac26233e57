import { describe, expect, it } from 'vitest';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk();

interface Pianos {
  readonly pianos: readonly { readonly instrument: { readonly id: string; readonly name: string; readonly demo: boolean; readonly lengthMm: number | null; readonly lastMidi: number; readonly cycle: number; readonly serial: string | null } }[];
}

async function instruments() {
  return (await desk.call<Pianos>('GET', '/api/pianos')).pianos.map(({ instrument }) => instrument);
}

describe('pianos', () => {
  it('takes a piano in by keyboard alone, a length in inches and with a decimal comma understood and echoed', async () => {
    const page = await desk.open('/pianos');
    await page.keyboard.press('n');
    const dialog = page.getByRole('dialog', { name: 'Take a piano in' });
    await dialog.waitFor();
    await page.keyboard.press('Tab');
    for (let tabs = 0; tabs < 4 && (await page.evaluate(() => document.activeElement?.tagName)) !== 'INPUT'; tabs += 1) await page.keyboard.press('Tab');
    await page.keyboard.type('Workshop grand');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    for (const typed of ['', '4711', '1885', '82,5"']) {
      await page.keyboard.press('Tab');
      await page.keyboard.type(typed);
    }
    await dialog.getByText('Understood: 2095.5 mm').waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Workshop grand', level: 1 }).waitFor();
    const [made] = await instruments();
    expect(made).toMatchObject({ name: 'Workshop grand', serial: '4711', lengthMm: 2095.5, lastMidi: 105 });
    await page.getByText('Nothing is measured yet').waitFor();
    await page.context().close();
  });

  it('names the field that is wrong, keeps what was typed, and puts the focus there', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('button', { name: 'Take a piano in' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Name').fill('Half written');
    await dialog.getByLabel('Length').fill('long');
    await dialog.getByRole('button', { name: 'Take it in' }).click();
    await dialog.getByText('“long” cannot be read as a figure').waitFor();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('long');
    expect(await dialog.getByLabel('Name').inputValue()).toBe('Half written');
    expect(await instruments()).toHaveLength(1);
    await page.context().close();
  });

  it('changes the card, undoes it with Ctrl+Z, says what was undone, and brings it back', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('link', { name: 'Workshop grand' }).click();
    await page.getByRole('button', { name: 'Change the card' }).click();
    await page.getByRole('dialog').getByLabel('Serial number').fill('4712');
    await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(async () => (await instruments())[0]?.serial).toBe('4712');
    await page.getByText('Serial number 4711 → 4712').waitFor();
    await page.keyboard.press('Control+z');
    await page.getByText(/Undone: .*Serial number 4712 → 4711/u).waitFor();
    expect((await instruments())[0]?.serial).toBe('4711');
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await expect.poll(async () => (await instruments())[0]?.serial).toBe('4712');
    await page.context().close();
  });

  it('undoes an event from the story after a reload, and says what stands in the way of another', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('link', { name: 'Workshop grand' }).click();
    await page.reload();
    await page.getByRole('button', { name: 'Undo event 1', exact: true }).click();
    await page.getByText(/^Not undone\./u).waitFor();
    await page.getByRole('button', { name: 'Check the chain' }).click();
    await page.getByText(/^Whole: \d+ events, nothing altered/u).waitFor();
    await page.context().close();
  });

  it('opens a second stay, and still shows the first', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('link', { name: 'Workshop grand' }).click();
    await page.getByRole('button', { name: 'Back in the shop' }).click();
    await page.getByRole('button', { name: 'Open stay 2' }).click();
    await expect.poll(async () => (await instruments())[0]?.cycle).toBe(2);
    await page.getByLabel('Stay').selectOption('1');
    await expect.poll(() => new URL(page.url()).searchParams.get('cycle')).toBe('1');
    await page.getByText('An earlier stay').waitFor();
    await page.context().close();
  });

  it('brings the demo in and takes it away whole, in one press each', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('button', { name: 'Add the demo' }).click();
    await page.getByText('Invented demo').first().waitFor();
    expect((await instruments()).some(({ demo }) => demo)).toBe(true);
    await page.getByRole('button', { name: 'Remove the demo' }).click();
    await page.getByText(/demo piano is gone|demo pianos are gone/u).waitFor();
    expect((await instruments()).map(({ name }) => name)).toEqual(['Workshop grand']);
    await page.context().close();
  });

  it('complains of nothing on the console', () => {
    expect(desk.complaints.filter((text) => !text.includes('409'))).toEqual([]);
  });
});
