import { medianOf } from '#numerics';
import { type Block, type TableBlock, noteRuns, textOf } from '#report';
import { createSay, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { buildProof, proofInputOf } from './index.ts';
import type { ProofInput } from './input.ts';
import { demoProof } from './demo-proof.ts';

const blocksOf = (input: ProofInput): readonly Block[] => buildProof(input).blocks;
const tablesOf = (input: ProofInput): readonly TableBlock[] => blocksOf(input).filter((block) => block.type === 'table');
const keyTables = (input: ProofInput): readonly TableBlock[] => tablesOf(input).filter(({ strips, columns }) => strips === 2 && columns.at(-1)?.label === input.say('proof.column.verdict'));

/** Lists the 85-key upright made of the demo's own weights: same readings, other instrument. */
function uprightOf85(): ProofInput {
  const { instrument, sessions, readings = [], intent, cycle, head, printedAt, locale, say } = demoProof();
  const small = { ...instrument, kind: 'upright', lastMidi: 105, demo: false } as const;
  return proofInputOf({ instrument: small, sessions: sessions.map((session, index) => ({ ...session, id: String(index) })), readings: readings.filter(({ index }) => index <= 85), intent, cycle, head, printedAt, locale, say });
}

describe('buildProof', () => {
  it.each(languages)('says everything the demo has in %s', (language) => {
    const report = buildProof(demoProof(language));
    expect(report.language).toBe(language);
    expect(textOf(report)).not.toMatch(/undefined|NaN|\{|\[object/u);
  });

  it('sums up what its own tables show, key by key', () => {
    const input = demoProof();
    const say = createSay('en');
    const [found, finished] = keyTables(input);
    for (const [table, touch] of [[found, input.found], [finished, input.finished]] as const) {
      const verdicts = table?.rows.map((row) => row.at(-1)?.text ?? '') ?? [];
      expect(verdicts).toHaveLength(88);
      const inside = verdicts.filter((text) => text.startsWith('inside')).length;
      expect(touch?.summary.inside).toBe(inside);
      const down = table?.rows.flatMap((row) => (row[2]?.text === '–' || row.at(-1)?.tone === 'flag' && !row.at(-1)?.text.startsWith('outside') ? [] : [Number(row[2]?.text)])) ?? [];
      expect(touch?.summary.medianG).toBeCloseTo(medianOf(down), 9);
      expect(textOf(buildProof(input))).toContain(say('proof.countOf', { count: inside, total: verdicts.filter((text) => text !== say('proof.verdict.unmeasured')).length }));
    }
  });

  it('prints balance and friction that follow from the weights beside them', () => {
    for (const row of keyTables(demoProof()).flatMap(({ rows }) => rows)) {
      const [down, up, balance, friction] = row.slice(2, 6).map(({ text }) => Number(text.replace('↓ ', '')));
      if (down === undefined || up === undefined || Number.isNaN(down) || Number.isNaN(up)) continue;
      expect(balance).toBeCloseTo((down + up) / 2, 1);
      expect(friction).toBeCloseTo((down - up) / 2, 1);
    }
  });

  it('never prints the capability figure without the count beside it', () => {
    const row = tablesOf(demoProof()).flatMap(({ rows }) => rows).find(([label]) => label?.text === 'Capability figure');
    expect(row?.slice(1).map(({ text }) => /^\d\.\d\d, beside \d+ of 88 inside\. The reading noise of \d\.\d\d\sg alone holds it to \d\.\d\d at most\.$/u.test(text))).toEqual([true, true]);
  });

  it.each([['found', { finished: null }], ['finished', { found: null }]] as const)('works when only %s was measured', (state, change) => {
    const input = demoProof('en', { ...change, scales: [], bellies: [], regulations: [], tuning: undefined });
    expect(keyTables(input)).toHaveLength(1);
    const text = textOf(buildProof(input));
    expect(text).not.toContain(state === 'found' ? 'As finished' : 'As found');
  });

  it('tells pitch and unisons against the curve, counts only by what is asked, and leaves them out where none was read', () => {
    const input = demoProof('en');
    const [found, finished] = input.tuning?.states ?? [];
    const inside = [...(finished?.off.values() ?? [])].filter((value) => Math.abs(value) <= 1.5).length;
    const text = textOf(buildProof(input));
    expect(text).toContain(`On the curve\t0 of 88 within ± 1.5\u00A0ct\t${String(inside)} of 88 within ± 1.5\u00A0ct`);
    expect(found?.off.size).toBe(88);
    const unasked = textOf(buildProof({ ...input, ...(input.tuning === undefined ? {} : { tuning: { ...input.tuning, terms: null } }) }));
    expect(unasked).not.toContain('On the curve');
    expect(textOf(buildProof({ ...input, tuning: undefined }))).not.toContain('Widest unison');
  });

  it('counts the regulation as found inside what was asked, and leaves it out where none was read', () => {
    const input = demoProof();
    const table = tablesOf(input).find(({ caption }) => caption === 'Regulation');
    const blow = input.regulations?.[0]?.analysis.keys.flatMap(({ read, asked }) => (read.blowMm === undefined || asked.blowMm === undefined ? [] : [Math.abs(read.blowMm - asked.blowMm) <= 1])) ?? [];
    expect(table?.rows.find(([name]) => name?.text === 'Blow distance')?.[2]?.text).toContain(`${String(blow.filter(Boolean).length)} of ${String(blow.length)} inside`);
    expect(textOf(buildProof(demoProof('en', { regulations: [] })))).not.toContain('Blow distance');
  });

  it('says so when nothing was measured at all', () => {
    const text = textOf(buildProof(demoProof('en', { found: null, finished: null, scales: [], bellies: [], regulations: [], tuning: undefined })));
    expect(text).toContain('there is nothing to prove');
  });

  it('tells springs and dampers of an upright with median and range, and of a grand nothing', () => {
    const upright = uprightOf85();
    const { readings = [] } = upright;
    const [first] = readings;
    if (first === undefined) return expect.fail('no readings');
    const parts = [['springTorqueGMm', [60, 80, 130]], ['damperG', [20, 25, 27]]] as const;
    const noted = parts.flatMap(([quantity, values]) => values.map((value, index) => ({ ...first, id: `${quantity}${String(index)}`, quantity, scope: 'key', index: 40 + index, state: 'found', value, outcome: null, typed: String(value), repeat: 1 } as const)));
    const text = textOf(buildProof({ ...upright, readings: [...readings, ...noted], regulations: upright.regulations?.filter(({ state }) => state === 'found') }));
    expect(text).toMatch(/3 keys read, median 80\sg·mm, from 60\sg·mm to 130\sg·mm/u);
    expect(text).toMatch(/3 keys read, median 25\.0\sg, from 20\.0\sg to 27\.0\sg/u);
    expect(textOf(buildProof(demoProof()))).not.toContain('Springs and dampers');
  });

  it('proves 85 keys of an upright as far as an upright goes', () => {
    const input = uprightOf85();
    expect(keyTables(input).every(({ rows }) => rows.length === 85)).toBe(true);
    const text = textOf(buildProof(input));
    expect(text).toContain('Upright: of each key balance and friction are judged, no more.');
    expect(text).toContain('85 keys, A0 to A7');
    expect(text).not.toMatch(/Action ratio|Hammer (?:heavier|lighter)/u);
  });

  it('prints what was not stated as not stated, field by field', () => {
    const input = demoProof('en', { intent: null, head: null });
    const sessions = input.sessions.map((session) => ({ ...session, weighedOn: null, stepG: null, repeatabilityG: null, weightClass: null, rule: null, dampers: null, helperSprings: null, regulated: null, temperatureC: null, humidityPct: null, placeOnKeyMm: null, equipment: null }));
    const method = tablesOf({ ...input, sessions }).find(({ columns }) => columns[0]?.label === 'Stated by those who weighed');
    const stated = method?.rows.filter((row) => row.slice(1).some(({ text }) => text !== 'not stated')).map(([label]) => label?.text);
    expect(stated).toEqual(['Weighings of each key', 'Remark']);
  });

  it('marks nothing inside, outside or too low without an intent', () => {
    const { instrument, sessions, readings = [], cycle, head, printedAt, locale, say } = demoProof();
    const input = proofInputOf({ instrument, sessions: sessions.map((session, index) => ({ ...session, id: String(index) })), readings, intent: null, cycle, head, printedAt, locale, say });
    const verdicts = new Set(keyTables(input).flatMap(({ rows }) => rows.map((row) => row.at(-1)?.text)));
    expect(verdicts).toEqual(new Set(['not judged', 'sticks', 'no return']));
    expect(keyTables(input).flatMap(({ rows }) => rows.flat()).some(({ text }) => text.includes('↓'))).toBe(false);
  });

  it('leaves balance and friction open where the up weight stands above the down weight, and says so', () => {
    const { instrument, sessions, readings = [], intent, cycle, head, printedAt, locale, say } = demoProof();
    const swapped = readings.map((reading) => (reading.state === 'finished' && reading.index === 40 && reading.quantity === 'upWeightG' ? { ...reading, typed: '61', value: 61 } : reading));
    const input = proofInputOf({ instrument, sessions: sessions.map((session, index) => ({ ...session, id: String(index) })), readings: swapped, intent, cycle, head, printedAt, locale, say });
    const rows = keyTables(input)[1]?.rows.map((row) => row.map(({ text }) => text)) ?? [];
    expect(rows[39]?.slice(0, 6)).toEqual(['40', 'C4', rows[39]?.[2], '61.0', '–', '–']);
    expect(rows.filter((row) => row[5] === '–')).toHaveLength(1);
    expect(rows.some((row) => row[5]?.startsWith('−'))).toBe(false);
    const text = textOf(buildProof(input));
    expect(text).toContain('At C4 (As finished) the up weight was read above the down weight');
  });

  it('speaks of slow keys only where a least up weight was asked for', () => {
    const { instrument, sessions, readings = [], cycle, head, printedAt, locale, say } = demoProof();
    const of = (upWeightMinG: number) => textOf(buildProof(proofInputOf({
      instrument, sessions: sessions.map((session, index) => ({ ...session, id: String(index) })), readings, cycle, head, printedAt, locale, say,
      intent: { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG },
    })));
    expect(of(20)).toMatch(/slow to return[\s\S]*Up weight below 20\sg[\s\S]*the dashed line is the least, 20\sg/u);
    expect(of(0)).not.toMatch(/slow to return|Up weight below|the dashed line is the least|↓ \d/u);
    expect(of(0)).toContain('Up weight less than is usual: advice');
  });

  it('prints the day each state was weighed, and not the day it was written down', () => {
    const row = (input: ProofInput) => tablesOf(input).flatMap(({ rows }) => rows).find(([label]) => label?.text === 'Day of weighing')?.map(({ text }) => text);
    expect(row(demoProof())).toEqual(expect.arrayContaining(['February 9, 2026', 'April 17, 2026']));
    const input = demoProof();
    expect(row({ ...input, sessions: input.sessions.map((session) => ({ ...session, weighedOn: null })) })?.slice(1)).toEqual(input.sessions.map(() => 'not stated'));
  });

  it('carries the record of the store, and says when there is none', () => {
    const input = demoProof();
    expect(textOf(buildProof(input))).toContain(input.head?.hash);
    expect(textOf(buildProof({ ...input, head: null }))).toContain('There is no log behind them');
  });

  it('prints the strings where any were noted, and leaves the pages of the touch as they are', () => {
    const input = demoProof();
    const without = (blocks: readonly Block[]): readonly Block[] => blocks.filter((block) => block.type !== 'note' || !block.text.includes('left out'));
    const [full, touchOnly] = [without(blocksOf(input)), without(blocksOf({ ...input, scales: [] }))];
    const first = full.findIndex((block) => block.type === 'heading' && block.text === input.say('proof.strings'));
    expect(full.slice(0, first - 1)).toEqual(touchOnly.slice(0, first - 1));
    expect(touchOnly.some((block) => block.type === 'heading' && block.text === input.say('proof.strings'))).toBe(false);
    for (const { state, analysis } of input.scales ?? []) {
      const table = full.find((block) => block.type === 'table' && block.caption === input.say('proof.strings.table', { state: input.say(`proof.state.${state}`) }));
      const rows = table?.type === 'table' ? table.rows : [];
      expect(rows).toHaveLength(88);
      const sum = rows.reduce((total, row) => total + Number(row[3]?.text) * Number(row[5]?.text), 0);
      expect(Math.abs(sum - analysis.plate.tensionN)).toBeLessThan(88 * 3 * 0.5);
      expect(textOf(buildProof(input))).toContain(`${(analysis.plate.tensionN / 1000).toFixed(1)}\u00A0kN (88 of 88 notes)`);
    }
    expect(input.scales?.map(({ state }) => state)).toEqual(['found', 'planned']);
  });

  it('prints the bearing where any was noted: loads and angles that follow from its own tables, front and rear apart', () => {
    const input = demoProof();
    expect(input.bellies?.map(({ state }) => state)).toEqual(['found', 'finished']);
    for (const { state, analysis } of input.bellies ?? []) {
      const rows = tablesOf(input).find(({ caption }) => caption === input.say('proof.belly.table', { state: input.say(`proof.state.${state}`) }))?.rows ?? [];
      expect(rows).toHaveLength(88);
      const figures = rows.map((row) => row.slice(3).map(({ text }) => Number(text.replace('\u2212', '-'))));
      for (const [front = 0, rear = 0, total = 0] of figures) expect(Math.abs(front + rear - total)).toBeLessThan(0.0151);
      const sum = figures.reduce((all, row) => all + (row[3] ?? 0), 0);
      expect(Math.abs(sum - (analysis.whole.load?.forceN ?? 0))).toBeLessThan(88 * 0.05);
      const column = state === 'found' ? 1 : 2;
      const treble = tablesOf(input).find(({ caption }) => caption === 'Angles by section')?.rows.find(([label]) => label?.text.startsWith('Treble') && label.text.endsWith('Rear angle'));
      const rears = rows.filter((row) => Number(row[0]?.text) > 50).map((row) => Number(row[4]?.text.replace('\u2212', '-')));
      expect(treble?.at(column)?.text).toMatch(new RegExp(`^${medianOf(rears).toFixed(2).replace('-', '\u2212')}°`, 'u'));
    }
  });

  it('names the notes where strings lift and where bearing is lost, as found, and the climate of both days', () => {
    const input = demoProof();
    const text = textOf(buildProof(input));
    const lifted = input.bellies?.[0]?.analysis.notes.filter(({ findings }) => findings.some(({ code }) => code === 'bearingNegative')).map(({ key }) => key) ?? [];
    expect(lifted.length).toBeGreaterThan(3);
    expect(text).toMatch(new RegExp(`As found: strings? lifts? on one side or both at ${noteRuns(lifted, { firstMidi: 21, lastMidi: 108 })}`, 'u'));
    expect(text).toContain('As finished: no string lifts');
    expect(text).toMatch(/Relative humidity[^\n]*\t68\s%\t46\s%/u);
    const dry = textOf(buildProof({ ...input, readings: input.readings?.filter(({ quantity }) => quantity !== 'roomHumidityPct') }));
    expect(dry).toMatch(/Relative humidity[^\n]*\tnot stated\tnot stated/u);
  });

  it('calls no bearing lost where no angle is asked', () => {
    const input = demoProof();
    const { instrument, sessions, readings = [], intent, cycle, head, printedAt, locale, say } = input;
    const text = textOf(buildProof(proofInputOf({ instrument, sessions: sessions.map((session, index) => ({ ...session, id: String(index) })), readings, intent, cycle, head, printedAt, locale, say, terms: null })));
    expect(text).not.toContain('bearing lost, below');
    expect(text).toContain('no angle with a tolerance is asked');
  });

  it.each(languages)('proves strings and bearing of a piano no key of which was weighed, and says in %s what is left out', (language) => {
    const input = demoProof(language, { found: null, finished: null, intent: null });
    const text = textOf(buildProof(input));
    expect(text).toContain(input.say('proof.leftOut', { parts: ['touch', 'tone', 'papers'].map((part) => input.say(`proof.part.${part as 'touch'}`)).join(', ') }));
    expect(text).toContain(input.say('proof.title.other', { name: input.instrument.name }));
    for (const key of ['proof.summary', 'proof.plots', 'proof.uncertainty.how', 'proof.nothingMeasured'] as const) expect(text).not.toContain(`\n${input.say(key, { coverage: 2 })}\n`);
    expect(text).toContain(input.say('proof.belly'));
    const bearingOnly = textOf(buildProof({ ...input, scales: [] }));
    expect(bearingOnly).toContain(input.say('proof.leftOut', { parts: ['touch', 'strings', 'tone', 'papers'].map((part) => input.say(`proof.part.${part as 'touch'}`)).join(', ') }));
  });

  it('keeps remarks made at the keys', () => {
    expect(textOf(buildProof(demoProof()))).toContain('As found. F1: White powder on the middle lead, rubs its neighbour; A♯2: Hammer of another set');
    const input = demoProof();
    const many = { ...input, readings: input.readings?.map((reading) => (reading.quantity === 'upWeightG' ? { ...reading, remark: `noted at ${String(reading.index)}` } : reading)) };
    const table = tablesOf(many).find(({ caption }) => caption === 'Remarks at the keys');
    expect(table?.rows).toHaveLength(6 + 2 * 88);
  });
});
