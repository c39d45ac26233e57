import { describe, expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

interface File {
  readonly estimates: Readonly<Record<string, { readonly rateMinor: number; readonly lines: readonly { readonly words: string; readonly likely: number; readonly priceMinor: number }[] }>>;
  readonly quotes: readonly { readonly state: string; readonly acceptedLines: readonly string[] | null; readonly customer: string | null }[];
}

describe('the worth of a piano', () => {
  it('is drawn up, priced, quoted, sent and taken by line, with money as typed in German', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Reckoned piano, invented', kind: 'upright' });
    const file = () => desk.call<File>('GET', `/api/pianos/${id}`);
    const page = await desk.open(`/pianos/${id}/worth`, { locale: 'de-DE' });
    await page.getByRole('button', { name: 'Schätzung anlegen' }).press('Enter');
    await page.getByLabel('Währung').fill('EUR');
    const rate = page.getByLabel('Preis einer Werkbankstunde (EUR)');
    await rate.fill('65,505');
    await page.getByLabel('Steuersatz (%)').fill('19');
    await page.getByRole('button', { name: 'Festhalten', exact: true }).press('Enter');
    await page.getByText('„65,505“ hat mehr Nachkommastellen als EUR').waitFor();
    await expectAccessible(page);
    await rate.fill('1.065,50');
    await page.getByText('gelesen als 1.065,50').waitFor();
    await rate.fill('65,50');
    await page.getByRole('button', { name: 'Festhalten', exact: true }).press('Enter');
    await page.getByRole('button', { name: 'Arbeit hinzufügen', exact: true }).press('Enter');
    await page.getByLabel('Was zu tun ist oder gebraucht wird').fill('Beziehen');
    await page.getByLabel('Stunden, wenn alles gut geht').fill('8');
    await page.getByLabel('Stunden am wahrscheinlichsten').fill('7,5');
    await page.getByLabel('Stunden, wenn es schlecht geht').fill('12');
    await page.getByRole('button', { name: 'Position festhalten' }).press('Enter');
    await page.getByText('Die Stunden stehen in falscher Reihenfolge').waitFor();
    await page.getByLabel('Stunden am wahrscheinlichsten').fill('9,5');
    await page.getByRole('button', { name: 'Position festhalten' }).press('Enter');
    await page.getByRole('button', { name: 'Ändern: Beziehen' }).waitFor();
    await page.getByRole('button', { name: 'Teil hinzufügen' }).press('Enter');
    await page.getByLabel('Was zu tun ist oder gebraucht wird').fill('Draht');
    await page.getByLabel('Preis (EUR)').fill('1.234,50');
    await page.getByRole('button', { name: 'Position festhalten' }).press('Enter');
    await page.getByRole('button', { name: 'Ändern: Draht' }).waitFor();
    expect((await file()).estimates['1']).toMatchObject({ rateMinor: 6550, lines: [{ words: 'Beziehen', likely: 9.5 }, { words: 'Draht', priceMinor: 123_450 }] });

    await page.getByRole('button', { name: 'Angebot anlegen' }).press('Enter');
    await page.getByLabel('Für', { exact: true }).selectOption('typed');
    await page.getByLabel('Kunde (Kennung)').fill('Kundin, erfunden');
    await page.getByRole('button', { name: 'Aus „Kundin, erfunden“ eine Person machen' }).press('Enter');
    const person = page.getByRole('dialog');
    expect(await person.getByLabel('Name').inputValue()).toBe('Kundin, erfunden');
    await expectAccessible(page);
    await person.getByRole('button', { name: 'Speichern' }).press('Enter');
    await person.waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Für', { exact: true }).locator('option:checked').textContent()).toBe('Kundin, erfunden');
    expect((await file()).quotes).toEqual([]);
    await page.getByRole('button', { name: 'Als Entwurf festhalten' }).press('Enter');
    await page.getByRole('button', { name: 'Als gesendet vermerken' }).press('Enter');
    await page.getByText('Das lässt sich nicht zurücknehmen').waitFor();
    await page.getByRole('button', { name: 'Als gesendet vermerken' }).last().press('Enter');
    await page.getByRole('button', { name: 'Antwort vermerken' }).press('Enter');
    await page.getByRole('checkbox', { name: /Draht/u }).press('Space');
    await page.getByRole('button', { name: 'Antwort vermerken' }).last().press('Enter');
    await page.getByText('teilweise angenommen').waitFor();
    const [quote] = (await file()).quotes;
    expect(quote).toMatchObject({ state: 'accepted', acceptedLines: ['line-1'] });
    const { cards } = await desk.call<{ cards: readonly { readonly id: string; readonly details: { readonly name?: string } | null }[] }>('GET', '/api/shop?kinds=contact');
    expect(cards.find(({ id: one }) => one === quote?.customer)?.details?.name).toBe('Kundin, erfunden');
    await expectAccessible(page);
    await page.context().close();
  });

  it('opens hours, present value and break-even sale to how they were worked out', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/worth`);
    for (const [row, formula] of [['80 % stay within (P80)', 'μ = (a + 4m + b)/6'], ['Present value', 'NPV = Σ CFₜ'], ['Rate of return a year', 'NPV = 0']] as const) {
      await page.getByRole('row', { name: row }).getByTitle('How this figure was made').first().press('Enter');
      const panel = page.getByRole('dialog');
      await panel.getByText(formula, { exact: false }).first().waitFor();
      await panel.getByText('wrestplank calc').waitFor();
      await page.keyboard.press('Escape');
      await panel.waitFor({ state: 'detached' });
    }
    await page.context().close();
  });

  it('opens every sum of a way to its lines or steps, to the last unit', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/worth`);
    const digits = (text: string): string => text.replaceAll(/\D/gu, '');
    for (const [row, formula] of [['Work', 'h = p·(a + 4m + b)/6'], ['Parts', 'amount = quantity·price'], ['Work of others', 'amount = quantity·price'], ['For doubt', 'doubt = direct·c/100'], ['Tax', 'tax: ordinary'], ['Total', 'total = instrument']] as const) {
      const figure = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: row, exact: true }) }).getByTitle('How this figure was made').first();
      // Hours added for doubt stand behind the amount.
      const shown = digits((await figure.innerText()).replace(/\(.*\)/u, ''));
      await figure.press('Enter');
      const panel = page.getByRole('dialog');
      await panel.getByText(formula, { exact: false }).first().waitFor();
      expect([row, digits(await panel.locator('tr.field-rows-strong > td').innerText())]).toEqual([row, shown]);
      await page.keyboard.press('Escape');
      await panel.waitFor({ state: 'detached' });
    }
    await expectAccessible(page);
    await page.context().close();
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
