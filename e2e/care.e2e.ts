import { expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

interface File {
  readonly care: readonly { readonly kind: string; readonly humidityPct?: number; readonly hoursPerWeek?: number; readonly readings?: number }[];
}

/** Four days of a logger that writes the day as 01/02/2026 and no unit, and stops in the middle of a row. */
const rows = Array.from({ length: 96 }, (_, hour) => `0${String(1 + Math.floor(hour / 24))}/02/2026 ${String(hour % 24).padStart(2, '0')}:00,20.5,${hour < 48 ? '48' : '31'}`);
const csv = ['Time,Temp,Humidity', ...rows, '05/02/2026 00:00,,'].join('\n');

it('takes air by hand and by a logger’s file, asks what the file does not say, watches it, and plans care, by keyboard', async () => {
  const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Dry piano, invented', kind: 'upright' });
  const care = async () => (await desk.call<File>('GET', `/api/pianos/${id}`)).care;
  const page = await desk.open(`/pianos/${id}/care`, { locale: 'de-DE' });
  await page.getByRole('button', { name: 'Messung notieren' }).press('Enter');
  await page.getByLabel('Luftfeuchte (%)').fill('430');
  await page.getByRole('button', { name: 'Behalten' }).press('Enter');
  await page.getByText('430 liegt außerhalb').waitFor();
  await page.getByLabel('Luftfeuchte (%)').fill('43,5');
  await page.getByRole('button', { name: 'Behalten' }).press('Enter');
  await page.getByText('Woher die Messungen sind').waitFor();
  expect(await care()).toMatchObject([{ kind: 'air', humidityPct: 43.5 }]);

  await page.getByText('Woher die Messungen sind').press('Enter');
  await page.getByRole('button', { name: /43,5.*ändern/u }).press('Enter');
  await page.getByLabel('Luftfeuchte (%)').fill('43,75');
  await page.getByRole('button', { name: 'Behalten' }).press('Enter');
  await page.getByRole('button', { name: /43,75.*ändern/u }).waitFor();
  expect(await care()).toMatchObject([{ kind: 'air', humidityPct: 43.75 }]);
  await page.locator('#care-air').locator('xpath=ancestor::section').getByRole('button', { name: '43,8', exact: true }).first().press('Enter');
  await page.getByRole('dialog').getByText('Kleinste Luftfeuchte').first().waitFor();
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Datei eines Loggers einlesen' }).press('Enter');
  await page.locator('input[type=file]').setInputFiles({ name: 'logger.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await page.getByText('Die Datei sagt es nicht').waitFor();
  await page.getByLabel('Reihenfolge im Datum').selectOption('dmy');
  await page.getByLabel('Einheit der Temperatur').selectOption('C');
  await page.getByText('Eine Zeile ist nicht zu lesen').waitFor();
  await page.getByText('row 98, column C').waitFor();
  await expectAccessible(page);
  await page.getByLabel('Diese Zeilen auslassen; in der Datei bleiben sie').press('Space');
  await page.getByRole('button', { name: '96 Messungen übernehmen' }).press('Enter');
  await page.getByRole('cell', { name: '48', exact: true }).waitFor();
  expect(await care()).toMatchObject([{ kind: 'air' }, { kind: 'logger', readings: 96 }]);

  await page.getByRole('button', { name: 'Einen Plan angeben' }).press('Enter');
  await page.getByLabel('Spielstunden in der Woche').fill('10,5');
  await page.getByRole('button', { name: 'Behalten' }).press('Enter');
  await page.getByRole('button', { name: '1 in den Kalender', exact: false }).or(page.getByRole('button', { name: 'In den Kalender stellen' })).first().waitFor();
  expect((await care()).find(({ kind }) => kind === 'plan')).toMatchObject({ hoursPerWeek: 10.5 });
  await page.keyboard.press('Control+z');
  await page.getByText('Kein Plan ist angegeben').waitFor();
  await expectAccessible(page);
  await page.context().close();
});

it('takes the mover of a move from the people of the shop, by keyboard, and tells who carries it', async () => {
  const person = (role: string, name: string) => desk.call<{ id: string }>('POST', '/api/shop/cards', { kind: 'contact', roles: [role], details: { name } });
  const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Carried piano, invented', kind: 'upright' });
  const [mover] = [await person('mover', 'Carriers, invented'), await person('customer', 'Careful owner, invented')];
  const moves = async () => (await desk.call<{ care: readonly { readonly kind: string; readonly mover?: string | null }[] }>('GET', `/api/pianos/${id}`)).care;
  const page = await desk.open(`/pianos/${id}/care`, { locale: 'en-GB' });
  await page.getByRole('button', { name: 'Note a move' }).press('Enter');
  const picker = page.getByLabel('Mover', { exact: true });
  await picker.getByText('Carriers, invented').waitFor({ state: 'attached' });
  expect(await picker.locator('option').allTextContents()).not.toContain('Careful owner, invented');
  const reached = async (): Promise<boolean> => await picker.evaluate((select) => select === document.activeElement);
  for (let tab = 0; tab < 60 && !(await reached()); tab += 1) await page.keyboard.press('Tab');
  expect(await reached()).toBe(true);
  await page.keyboard.type('Carr');
  expect(await picker.inputValue()).toBe(mover.id);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Keep', exact: true }).press('Enter');
  await page.getByRole('definition').filter({ hasText: 'Carriers, invented' }).waitFor();
  expect(await moves()).toMatchObject([{ kind: 'move', mover: mover.id }]);

  await page.goto(`${desk.bench.url}/people?person=${mover.id}`);
  await page.getByRole('button', { name: 'Forget this person' }).press('Enter');
  await page.getByRole('button', { name: 'Forget Carriers, invented' }).press('Enter');
  await page.getByText(/A move is still planned: \d{4}-\d\d-\d\d, Carried piano, invented\./u).waitFor();
  await page.context().close();
});
