import { describe, expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

interface File {
  readonly rooms: readonly { readonly id: string; readonly name: string; readonly use: string | null; readonly heightMm: number; readonly standard?: { readonly name: string } | null; readonly things: readonly { readonly areaM2: number }[] }[];
}

describe('the room of a piano', () => {
  it('is described by keyboard, tried before it is kept, ranked for places, and undone', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Roomed piano, invented', kind: 'grand', lengthMm: 1700 });
    const rooms = async () => (await desk.call<File>('GET', `/api/pianos/${id}`)).rooms;
    const page = await desk.open(`/pianos/${id}/room`, { locale: 'de-DE' });
    await page.getByRole('button', { name: 'Raum anlegen' }).press('Enter');
    await page.getByLabel('Name des Raums').fill('Salon, erfunden');
    await page.getByLabel('Länge (mm)').fill('6,2 m');
    await page.getByLabel('Breite (mm)').fill('4800');
    await page.getByLabel('Höhe (mm)').fill('2,9 m');
    await page.getByLabel('Soll taugen für').selectOption('music');
    await page.getByRole('cell', { name: /lang|innerhalb|kurz/u }).first().waitFor();
    await page.getByRole('button', { name: 'Ding hinzufügen' }).press('Enter');
    await page.getByLabel('Fläche (m²)').fill('99');
    await page.getByRole('button', { name: 'Raum festhalten' }).press('Enter');
    await page.getByText('99 m² sollen diese Seite bedecken, die 29,76 m² hat.').waitFor();
    await page.getByLabel('Fläche (m²)').fill('6,5');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Raum festhalten' }).press('Enter');
    await page.getByRole('button', { name: 'Ändern oder probieren' }).waitFor();
    expect(await rooms()).toMatchObject([{ name: 'Salon, erfunden', use: 'music', heightMm: 2900, things: [{ areaM2: 6.5 }] }]);

    await page.getByRole('button', { name: 'Vorgabe aufschreiben' }).press('Enter');
    await page.getByLabel('Name der Vorgabe').fill('Haus, erfunden');
    await page.getByLabel('Kleinster zulässiger Anteil').fill('0,7 0,8 0,8 0,8 0,8 0,7');
    await page.getByLabel('Größter zulässiger Anteil').fill('1,4 1,2 1,2 1,2 1,2');
    await page.getByRole('button', { name: 'Speichern', exact: true }).press('Enter');
    await page.getByText('Sechs Anteile').waitFor();
    await page.getByLabel('Größter zulässiger Anteil').fill('1,4 1,2 1,2 1,2 1,2 1,2');
    await page.getByLabel('Oder eine Zeit für jedes Volumen (s)').fill('0,85');
    await page.getByRole('button', { name: 'Speichern', exact: true }).press('Enter');
    await page.getByText('0,85 s für jedes Volumen.').waitFor();
    await page.getByRole('button', { name: 'Ändern oder probieren' }).press('Enter');
    await page.getByLabel('Soll taugen für').selectOption({ label: 'Haus, erfunden (Vorgabe der Werkstatt)' });
    await page.getByRole('button', { name: 'Raum festhalten' }).press('Enter');
    await page.getByRole('button', { name: 'Ändern oder probieren' }).waitFor();
    expect(await rooms()).toMatchObject([{ use: null, standard: { name: 'Haus, erfunden', time: { fixedS: 0.85 } } }]);
    await page.locator('#room-times ~ dl').getByRole('button', { name: '0,85' }).press('Enter');
    await page.getByRole('dialog').getByText('own: T = slope').waitFor();
    await page.keyboard.press('Escape');

    await page.getByRole('button', { name: 'Plätze ordnen' }).press('Enter');
    await page.getByText(/Plätze geordnet/u).waitFor();
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Zurückziehen', exact: true }).press('Enter');
    await page.getByText('Noch kein Raum').waitFor();
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Ändern oder probieren' }).waitFor();
    expect(await rooms()).toHaveLength(1);

    await page.setViewportSize({ width: 390, height: 844 });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await page.context().close();
  });
});
