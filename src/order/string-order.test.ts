import { compass88 } from '#instrument';
import { textOf } from '#report';
import { createSay, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { chartTable, checkOrderTerms, hasStrings, orderDocument, stringOrderOf, stringingChart, wireTable } from './index.ts';
import { demoMaterial, demoOrder } from './testing/demo-order.ts';

const STATED = { frontLengthMm: 120, backLengthMm: 150, pinTurns: 3, pinDiameterMm: 7, hitchMm: 60, spareMm: 100 };
const withoutBacks = demoMaterial().readings.filter(({ quantity }) => quantity !== 'backLengthMm');
const orderOf = (change: Parameters<typeof demoMaterial>[0] = {}) => stringOrderOf(demoMaterial({ readings: withoutBacks, ...change }));
const gap = (order: ReturnType<typeof orderOf>, what: string) => order.gaps.find((one) => one.what === what)?.keys;

describe('stringOrderOf', () => {
  it('adds up one string by hand: A0 of the plan, core 1.5 mm, speaking 1340.5 mm', () => {
    const [first] = orderOf({ orderTerms: STATED }).notes;
    // 120 + 1340.5 + 150 + 3·π·(7 + 1.5) + 60 + 100 = 1770.5 + 80.110613 mm
    expect(first?.totalLengthMm).toBeCloseTo(1850.610613, 6);
    // First wrap: 1340.5 − 22 − 20; second leaves the steps of 12 mm at either end too.
    expect(first?.coveredMm).toEqual([1298.5, 1274.5]);
  });

  it('weighs wire as density · π/4 · d² · length, by hand [EN-10270-1 density of steel]', () => {
    const { wire, notes } = orderOf({ orderTerms: { ...STATED, wastePct: 10 } });
    const line = wire.find(({ use, diameterMm }) => use === 'plain' && diameterMm === 0.762);
    const lengths = notes.flatMap((note) => (note.wire?.kind === 'plain' && note.wire.diameterMm === 0.762 ? Array.from({ length: note.strings ?? 0 }, () => note.speakingLengthMm ?? 0) : []));
    expect(lengths).toHaveLength(9);
    const speaking = lengths.reduce<number>((sum, length) => sum + length, 0);
    const total = (speaking + 9 * (120 + 150 + 60 + 100 + 3 * Math.PI * 7.762)) * 1.1;
    expect(line?.strings).toBe(9);
    expect(line?.gauge).toBe(12.5);
    expect(line?.speakingMm).toBeCloseTo(speaking, 9);
    expect(line?.beyondMm).toBeCloseTo(9 * 270, 9);
    expect(line?.totalMm).toBeCloseTo(total, 9);
    // 7850 kg/m³ · π/4 · (0.762 mm)² = 3.57989 g/m
    expect(line?.massG).toBeCloseTo((3.579891 * total) / 1000, 4);
    expect(line?.isAtLeast).toBe(false);
  });

  it('makes each total of its parts', () => {
    for (const line of orderOf({ orderTerms: { ...STATED, wastePct: 7.5 } }).wire) {
      expect(line.totalMm).toBeCloseTo(line.speakingMm + line.beyondMm + line.endsMm + line.wasteMm, 6);
      expect(line.wasteMm).toBeCloseTo(0.075 * (line.totalMm - line.wasteMm), 6);
    }
  });

  it('names what is missing and fills nothing in', () => {
    const order = orderOf();
    expect(gap(order, 'frontLength')).toHaveLength(88);
    expect(gap(order, 'backLength')).toHaveLength(88);
    expect(order.notes.every(({ totalLengthMm }) => totalLengthMm === undefined)).toBe(true);
    expect(order.wire.filter(({ use }) => use !== 'wrap').every(({ isAtLeast, beyondMm }) => isAtLeast && beyondMm === 0)).toBe(true);
    expect(gap(order, 'lengthEstimated')).toContain(29);
    const partial = orderOf({ readings: withoutBacks.filter(({ index, quantity }) => !(index === 1 && quantity === 'stringCount') && !(index === 2 && quantity === 'bareFrontMm') && !(index === 88 && quantity === 'speakingLengthMm') && !(index === 3 && quantity === 'stepRearMm')) });
    expect([gap(partial, 'noCount'), gap(partial, 'bareEnds'), gap(partial, 'noLength')]).toEqual([[1], [2], expect.arrayContaining([88])]);
    expect(gap(partial, 'steps')).toEqual([3]);
    expect(partial.notes[1]?.coveredMm).toBeUndefined();
    expect(partial.notes[2]?.coveredMm).toBeUndefined();
  });

  it('takes a measured back length before the one stated', () => {
    const [one] = demoMaterial().readings.filter(({ quantity }) => quantity === 'speakingLengthMm');
    if (one === undefined) throw new Error('the demo has lengths');
    const backs = [...withoutBacks, { ...one, id: 'back', quantity: 'backLengthMm' as const, index: 1, typed: '210', value: 210 }];
    const order = orderOf({ readings: backs, orderTerms: STATED });
    expect(order.notes.slice(0, 2).map(({ backLengthMm }) => backLengthMm)).toEqual([210, 150]);
  });

  it('orders as found what is known over all alone, and says that its wraps are the maker’s to choose', () => {
    const order = orderOf({ state: 'found' });
    expect(gap(order, 'wrapWires')).toHaveLength(26);
    expect(order.wire.some(({ use }) => use === 'wrap')).toBe(false);
  });

  it('has nothing to order where nothing is noted', () => {
    expect(hasStrings(orderOf({ readings: [] }))).toBe(false);
    expect(hasStrings(orderOf())).toBe(true);
  });

  it('refuses what cannot be, by field', () => {
    expect(checkOrderTerms({ wastePct: 300, pinTurns: -1, hitchMm: 20 })).toMatchObject({ ok: false, issues: [{ path: 'pinTurns', given: -1 }, { path: 'wastePct', given: 300 }] });
  });
});

describe('tables of an order', () => {
  it('holds every key in the chart and every size in the list', () => {
    const order = orderOf();
    const chart = chartTable(order, compass88);
    expect(chart.rows).toHaveLength(88);
    expect(chart.rows[29]).toEqual([30, 'D3', 3, 1.0668, 'inch', 18.5, '']);
    expect(chart.rows[0]).toEqual([1, 'A0', 1, '', '', '', 1]);
    expect(wireTable(order).rows).toHaveLength(order.wire.length);
  });
});

describe('documents of an order', () => {
  it.each(languages)('say everything in %s, and nothing that is not known', (language) => {
    const input = demoOrder(language);
    for (const text of [textOf(orderDocument(input)), textOf(stringingChart(input))]) {
      expect(text).not.toMatch(/undefined|NaN|\{|\[object/u);
      expect(text).toContain(createSay(language)('strings.caution.title'));
    }
    expect(textOf(orderDocument(input))).toContain(createSay(language)('proof.notStated'));
  });

  it.each(languages)('stay as they were (%s)', async (language) => {
    const input = demoOrder(language, { orderTerms: { ...STATED, wastePct: 10, coreToleranceMm: 0.01 } });
    await expect(`${textOf(orderDocument(input))}\n`).toMatchFileSnapshot(`./golden/order.${language}.txt`);
    await expect(`${textOf(stringingChart(input))}\n`).toMatchFileSnapshot(`./golden/chart.${language}.txt`);
  });

  it('number the wound strings alike on sheet and chart', () => {
    const input = demoOrder();
    const sheet = orderDocument(input).blocks.find((block) => block.type === 'table');
    const chart = stringingChart(input).blocks.find((block) => block.type === 'table');
    const numbers = (sheet?.type === 'table' ? sheet.rows : []).map((row) => `${row[0]?.text ?? ''} wound ${row[1]?.text ?? ''}`);
    const onChart = (chart?.type === 'table' ? chart.rows : []).flatMap((row) => (row[3]?.text.startsWith('wound') === true ? [`${row[1]?.text ?? ''} ${row[3].text}`] : []));
    expect(onChart).toEqual(numbers);
  });
});
