import { sessionDraftSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { draftOf, formOf, sessionFigures } from './session-draft.ts';

const where = { cycle: 1, state: 'found', locale: 'de-DE' } as const;
const empty = formOf(null, String);

describe('the form of a weighing session', () => {
  it('states nothing that was not stated', () => {
    const read = draftOf(empty, where);
    if (!read.ok) throw new Error('refused');
    const { cycle: _cycle, state: _state, repeats: _repeats, remark: _remark, ...rest } = read.draft;
    expect(Object.values(rest).every((value) => value === null)).toBe(true);
  });

  it('reads decimal commas and units', () => {
    const read = draftOf({ ...empty, stepG: '0,5', placeOnKeyMm: '1,3 cm', regulated: 'no', rule: 'interpolated' }, where);
    expect(read).toMatchObject({ ok: true, draft: { stepG: 0.5, placeOnKeyMm: 13, regulated: false, rule: 'interpolated' } });
  });

  it('names the field that cannot be', () => {
    expect(draftOf({ ...empty, stepG: '0', humidityPct: '140', repeats: '1,5' }, where)).toMatchObject({ ok: false, issues: { stepG: { code: 'range' }, humidityPct: { code: 'range' }, repeats: { code: 'range' } } });
  });

  it('allows exactly what the record allows', () => {
    for (const { name, min, max, above } of sessionFigures) {
      for (const value of [min, max, min - 0.1, max + 0.1]) {
        const taken = sessionDraftSchema.safeParse({ cycle: 1, state: 'found', [name]: value }).success;
        expect([name, value, draftOf({ ...empty, [name]: String(value) }, where).ok]).toEqual([name, value, taken]);
      }
      expect(above === true).toBe(name === 'stepG');
    }
  });

  it('comes back as it was kept', () => {
    const kept = { ...sessionDraftSchema.parse({ cycle: 1, state: 'found', stepG: 0.5, weighedOn: '2026-02-09', dampers: 'lifted', regulated: true, repeats: 3, weightClass: 'M1' }), id: 's', startedAt: '2024-01-01T00:00:00Z' };
    const read = draftOf(formOf(kept, String), where);
    const { id: _id, startedAt: _startedAt, ...rest } = kept;
    expect(read).toEqual({ ok: true, draft: rest });
  });
});
