import { compass88 } from '#instrument';
import { createSay } from '#text';
import type { Change, LogEvent, WorkItem } from '#workshop';
import { describe, expect, it } from 'vitest';
import { type Telling, sayEvent } from './say-event.ts';

const english: Telling = { say: createSay('en-GB'), locale: 'en-GB', compass: compass88 };
const german: Telling = { say: createSay('de-DE'), locale: 'de-DE', compass: compass88 };
const event = (changes: readonly Change[], undoes: number | null = null): LogEvent => ({
  seq: 9, at: '2026-01-01T00:00:00Z', by: 'bench', kind: 'any', undoes, undoneBy: null, changes: [...changes], hash: '',
});
const reading = (value: number | null, outcome: string | null = null) => ({ value, outcome, typed: String(value), quantity: 'downWeightG' });
const figure = (key: number, before: unknown, after: unknown): Change => ({ entity: 'reading', place: `c1/found/downWeightG/key/${String(key)}/1`, before, after });

describe('an event in words', () => {
  it('tells one figure with before and after, in the figures of the language', () => {
    expect(sayEvent(event([figure(40, reading(49), reading(49.5))]), english)).toBe('Down weight C4 (As found): 49\u00A0g → 49.5\u00A0g');
    expect(sayEvent(event([figure(40, reading(49), reading(49.5))]), german)).toBe('Niedergewicht C4 (Vorgefunden): 49\u00A0g → 49,5\u00A0g');
  });

  it('tells an outcome as an outcome and a cleared place as a dash, never as a number', () => {
    expect(sayEvent(event([figure(40, null, reading(null, 'sticks'))]), english)).toBe('Down weight C4 (As found): – → Sticks');
    expect(sayEvent(event([figure(40, reading(49), null)]), english)).toBe('Down weight C4 (As found): 49\u00A0g → –');
  });

  it('tells a pasted block by count and kind, and an undo by what it undid', () => {
    const block = [figure(1, null, reading(50)), figure(2, null, reading(51))];
    expect(sayEvent(event(block), english)).toBe('2 figures, as found: Down');
    expect(sayEvent(event(block, 7), english)).toBe('Undid event 7: 2 figures, as found: Down');
  });

  it('tells figures put into a session as that, and not as figures changed', () => {
    const at = { at: '2026-01-01T00:00:00Z' };
    const moves = [40, 41].map((key) => figure(key, { ...reading(49), ...at, sessionId: null }, { ...reading(49), ...at, sessionId: 's' }));
    const back = moves.map(({ before, after, ...rest }) => ({ ...rest, before: after, after: before }));
    expect(sayEvent(event(moves), english)).toBe('2 figures put into a weighing session, as found');
    expect(sayEvent(event(back, 9), german)).toBe('Ereignis 9 zurückgenommen: 2 Werte wieder aus einer Wägung genommen, vorgefunden');
    expect(sayEvent(event([figure(40, { ...reading(49), ...at, sessionId: null }, { ...reading(49), at: '2026-02-01T00:00:00Z', sessionId: 's' })]), english)).toMatch(/49\u00A0g → 49\u00A0g/u);
  });

  it('tells what was changed on a card by the words of the card: notes, units, choices, nothing stated', () => {
    const card = (before: object, after: object): LogEvent => event([{ entity: 'instrument', place: 'p', before, after }]);
    expect(sayEvent(card({ lastMidi: 105, lengthMm: null }, { lastMidi: 108, lengthMm: 2095.5 }), english)).toBe(
      'Card of the piano changed: Highest note A7 → C8, Length not stated → 2095.5\u00A0mm',
    );
    expect(sayEvent(card({ sections: [] }, { sections: [{ name: 'Bass', firstKey: 1, lastKey: 20 }] }), english)).toBe('Card of the piano changed: Sections not stated → Bass 1–20');
    expect(sayEvent(card({ kind: 'grand' }, { kind: 'upright' }), german)).toBe('Karte des Instruments geändert: Bauart Flügel → Klavier');
  });

  it('names the job that was ticked off', () => {
    const job = { id: 'w1', remedy: 'other', remark: 'Ease the bushing', key: 40 } as WorkItem;
    const done: Change = { entity: 'work', place: 'w1', before: { status: 'open', doneAt: null }, after: { status: 'done', doneAt: '2026-01-01T00:00:00Z' } };
    expect(sayEvent(event([done]), { ...english, work: [job] })).toBe('Done: Ease the bushing, C4');
  });

  it('tells every kind of change in both languages without a raw field name or an error', () => {
    const changes: readonly Change[] = [
      { entity: 'session', place: 's', before: null, after: { state: 'found', stepG: 1 } },
      { entity: 'session', place: 's', before: { rule: null, regulated: null }, after: { rule: 'interpolated', regulated: true } },
      { entity: 'intent', place: 'c1', before: null, after: { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } },
      { entity: 'intent', place: 'c1', before: null, after: { even: 'curve', anchors: [{ key: 1, downWeightG: 50 }, { key: 88, downWeightG: 46 }], toleranceG: 2, upWeightMinG: 20 } },
      { entity: 'observation', place: 'o', before: null, after: { part: 'soundboard', fault: 'crack', state: 'found', remark: 'third rib' } },
      { entity: 'observation', place: 'o', before: { fault: 'crack', photos: [] }, after: { fault: 'repaired', photos: [{ hash: 'a', name: 'board.jpg' }] } },
      { entity: 'observation', place: 'o', before: { part: 'soundboard', fault: 'crack', state: 'found', remark: '' }, after: null },
      { entity: 'scale', place: 'c1', before: null, after: { strengthModel: 'power-law', lengthUncertaintyMm: 0.5, mostBreakingPct: null, wires: [{ name: 'Coil 3', use: 'core', metal: 'steel', shape: 'hex', diameterMm: 1.2 }] } },
      { entity: 'scale', place: 'c1', before: { mostBreakingPct: 70 }, after: { mostBreakingPct: 65 } },
      { entity: 'action', place: 'c1', before: null, after: { hammerCurve: 'anchors', hammerAnchors: [{ key: 1, weightG: 11 }], drillsMm: [9.5, 12.7], keepOuts: [{ fromMm: -40, toMm: 40 }], regulationFloats: 'dip', operationMinutes: [{ operation: 'repinHammer', minutes: 6 }], regulation: [{ register: 'bass', blowMm: 46, dipMm: null }] } },
      { entity: 'action', place: 'c1', before: { frictionBassG: 13 }, after: { frictionBassG: null } },
      { entity: 'tuning', place: 'c1', before: null, after: { temperament: 'well1691', root: 'D', octaves: [{ fromKey: 1, toKey: 20, type: '6:3' }], smoothness: 50, strungOn: '2026-03-09', unisonToleranceCt: 1 } },
      { entity: 'tuning', place: 'c1', before: { driftToleranceCt: 3 }, after: null },
      { entity: 'pass', place: 'x', before: null, after: { stretch: 'highTreble', day: '2026-03-09', foundCt: -40, leftCt: 12.5 } },
      { entity: 'pass', place: 'x', before: { time: null, stretch: 'bass', humidityPct: 40 }, after: { time: '14:30', stretch: 'tenor', humidityPct: 41 } },
      { entity: 'pass', place: 'x', before: { stretch: 'whole', day: '2026-03-09', foundCt: -4, leftCt: null }, after: null },
      { entity: 'instrument', place: 'p', before: { cycle: 1 }, after: { cycle: 2 } },
    ];
    const told = [english, german].flatMap((telling) => changes.map((change) => sayEvent(event([change]), telling)));
    for (const line of told) expect(line).not.toMatch(/undefined|\{|rule|stepG|interpolated|Pct|power-law|hammerAnchors|repinHammer|fromMm|well1691|highTreble|strungOn|foundCt/u);
    expect(new Set(told).size).toBe(told.length);
  });
});
