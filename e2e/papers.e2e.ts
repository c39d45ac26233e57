import { describe, expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

interface File {
  readonly papers: readonly { readonly kind: string; readonly massG?: number | null; readonly species?: string; readonly pieces?: readonly { readonly thicknessesMm: readonly number[] }[] }[];
}

const words = (text: string) => ({ en: text, de: text });
const rule = { id: 'invented', jurisdictions: ['EU'], materials: ['bone'], deeds: ['sell'], outcome: 'papers', papers: [words('Invented paper')], text: words('Invented for a test.'), source: 'Invented', authority: words('Nobody'), effectiveFrom: '2026-01-01', seen: 'own', lastChecked: '2026-01-01', reviewBy: '2034-01-01' };
const rulesFile = (rules: readonly object[]) => ({ name: 'rules.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify({ schema: 'wrestplank-papers/1', issued: '2026-11-27', rules })) });

it('are ticked once in hand, with number and day, and a rule of one’s own holds where two things are so', async () => {
  const page = await desk.open(`/pianos/${desk.demo}/papers`, { locale: 'en-GB' });
  const hand = page.locator('.papers-in-hand').first();
  await hand.getByRole('checkbox').first().press('Space');
  await hand.getByText('in hand; number and day not stated').waitFor();
  await hand.getByRole('button', { name: /^Number, day, photos/u }).press('Enter');
  await page.getByLabel('Number of the paper').fill('INV-7/26');
  await page.getByLabel('Day of the paper').fill('2026-11-20');
  await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
  await hand.getByText('INV-7/26, 20 November 2026').waitFor();
  await expectAccessible(page);
  const { cards } = await desk.call<{ cards: readonly { readonly kind: string; readonly inHand?: readonly object[] }[] }>('GET', '/api/shop');
  expect(cards.flatMap(({ inHand = [] }) => inHand)).toMatchObject([{ number: 'INV-7/26', on: '2026-11-20', photos: [] }]);
  await hand.getByRole('checkbox').first().press('Space');
  await hand.getByText('INV-7/26').waitFor({ state: 'detached' });

  await page.getByRole('button', { name: 'Add a rule of your own' }).press('Enter');
  for (const number of [1, 2]) {
    await page.getByRole('button', { name: 'Add a condition' }).press('Enter');
    await page.getByRole('group', { name: `Condition ${String(number)}` }).getByLabel('Only if').selectOption(number === 1 ? 'ivoryRaw' : 'yearMade');
  }
  const second = page.getByRole('group', { name: 'Condition 2' });
  await second.getByLabel('is', { exact: true }).selectOption('below');
  await second.getByLabel('this number').fill('1947');
  await page.getByText('any of these is so').click();
  await page.getByRole('button', { name: 'And also … (condition 2)' }).press('Enter');
  const part = page.getByRole('group', { name: 'Part 2 of condition 2', exact: true });
  await part.getByLabel('Only if').selectOption('ivoryMassHow');
  await part.getByLabel('weighed').press('Space');
  await part.getByLabel('measured').press('Space');
  await expectAccessible(page);
  for (const [label, typed] of [['What it says, in short', 'House rule, invented'], ['Source', 'Invented'], ['Authority', 'Nobody'], ['In force from', '2026-01-01'], ['Last read', '2026-01-01'], ['To be read anew by', '2034-01-01']] as const) await page.getByLabel(label, { exact: true }).fill(typed);
  for (const label of ['European Union', 'Bone', 'Sale']) await page.getByRole('dialog').getByLabel(label, { exact: true }).press('Space');
  await page.getByLabel('Outcome where it does not hold').selectOption('note');
  await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
  const own = page.getByRole('listitem').filter({ hasText: 'House rule, invented' });
  await own.getByText('How the mass is known: one of weighed, measured').waitFor();
  const kept = (await desk.call<{ cards: readonly { readonly kind: string; readonly rule?: object }[] }>('GET', '/api/shop')).cards.find(({ kind }) => kind === 'ownRule');
  expect(kept?.rule).toMatchObject({ outcome: 'prohibited', otherwise: 'note', when: { any: [{ fact: 'ivoryRaw', is: true }, { all: [{ fact: 'yearMade', below: 1947 }, { any: [{ fact: 'ivoryMassHow', is: 'weighed' }, { fact: 'ivoryMassHow', is: 'measured' }] }] }] } });
  await own.getByRole('button', { name: /^Correct/u }).press('Enter');
  expect(await page.getByRole('group', { name: 'Part 2 of condition 2', exact: true }).getByLabel('measured').isChecked()).toBe(true);
  await page.getByRole('button', { name: 'Cancel', exact: true }).press('Enter');

  await page.getByText(/^Read all \d+ rules issued/u).press('Enter');
  const shipped = page.getByRole('listitem').filter({ hasText: 'Selling between states asks' }).last();
  for (const words of ['Any of these:', 'Mass of ivory: below 200 g', 'How the mass is known: not estimated', 'Ivory by value: below 50.000001 %', 'Age in years: 100 or more']) await shipped.getByText(words, { exact: false }).first().waitFor();
  await expectAccessible(page);
  await page.context().close();
});

describe('the papers of a piano', () => {
  it('are noted, asked for and undone by keyboard, with figures as typed in German', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Piano with ivory, invented', kind: 'upright' });
    const file = () => desk.call<File>('GET', `/api/pianos/${id}`);
    const page = await desk.open(`/pianos/${id}/papers`, { locale: 'de-DE' });
    await page.getByRole('button', { name: 'Material vermerken' }).press('Enter');
    await page.getByLabel('Material', { exact: true }).selectOption('ivory:african-elephant');
    await page.getByLabel('Wo im Instrument').fill('52 weiße Tasten');
    await page.getByLabel('Masse (g)', { exact: true }).fill('-3');
    await page.getByRole('button', { name: 'Zeile gleicher Stücke hinzufügen' }).press('Enter');
    await page.getByLabel('Zeile 1: Fläche').fill('2424');
    await page.getByLabel('Zeile 1: wie viele').fill('52');
    await page.getByLabel('Zeile 1: Standardunsicherheit').fill('0,01');
    const thicknesses = page.getByLabel('Zeile 1: gelesene Dicken');
    await thicknesses.fill('0,86; 0,91; 0,88 0,93 0,84 0,9 0,87 0,92 0,89 0,9');
    await page.getByText('10 gelesen, Mittel 0,890 mm ± 0,010 mm').waitFor();
    await thicknesses.fill('0,86; 0,91; 0,88');
    const save = page.getByRole('button', { name: 'Speichern' });
    await save.press('Enter');
    await page.locator('.field-error').first().waitFor();
    await page.getByLabel('Masse (g)', { exact: true }).fill('');
    await save.press('Enter');
    await page.locator('.field-error').first().waitFor();
    await thicknesses.fill('0,86; 0,91; 0,88 0,93 0,84 0,9 0,87 0,92 0,89 0,9');
    await save.press('Enter');
    await page.getByRole('button', { name: /201,9 g ± 10,2 g/u }).waitFor();
    expect((await file()).papers).toMatchObject([{ massG: null, species: 'doubtful', pieces: [{ thicknessesMm: [0.86, 0.91, 0.88, 0.93, 0.84, 0.9, 0.87, 0.92, 0.89, 0.9] }] }]);

    await page.getByRole('button', { name: 'Sendung oder Verkauf planen' }).press('Enter');
    await page.getByLabel('Von', { exact: true }).selectOption('DE');
    await page.getByLabel('Nach', { exact: true }).selectOption('US');
    await page.getByLabel('Was getan wird').selectOption('ship-sold');
    await page.getByLabel('Tag', { exact: true }).fill('2026-12-01');
    await page.getByRole('button', { name: 'Speichern' }).press('Enter');
    const shipment = page.getByRole('article', { name: /Sendung, verkauft: Deutschland nach Vereinigte Staaten/u });
    await shipment.getByText('Art von: Elfenbein, Art nicht bekannt').waitFor();
    await shipment.getByText('Kann sich noch als verboten erweisen').waitFor();
    await shipment.locator('summary').press('Enter');
    await shipment.getByText('African Elephant Conservation Act').first().waitFor();
    await expectAccessible(page);

    await page.getByRole('button', { name: /^Berichtigen: Elfenbein/u }).press('Enter');
    await page.getByLabel('Art', { exact: true }).selectOption('proven');
    await page.getByRole('button', { name: 'Speichern' }).press('Enter');
    await shipment.getByText('Kann sich noch als verboten erweisen').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
    await shipment.getByText('Kann sich noch als verboten erweisen').waitFor();
    expect((await file()).papers).toMatchObject([{ species: 'doubtful' }]);
    await page.context().close();
  });

  it('take in a newer file of rules, and say cell by cell what is wrong with a broken one', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/papers`, { locale: 'en-GB', viewport: { width: 390, height: 844 } });
    const pick = page.getByLabel('Take in a newer file of rules (JSON)');
    await pick.setInputFiles(rulesFile([{ ...rule, when: { all: [{ fact: 'yearMade', is: true }] } }]));
    await page.getByText('file.rules[0].when.all[0].fact').waitFor();
    await pick.setInputFiles(rulesFile([rule]));
    await page.getByText('Taken in: one rule issued 27 November 2026').waitFor();
    await page.getByText('Issued 26 November 2026: 18 rules').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await expectAccessible(page);
    await page.context().close();
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
