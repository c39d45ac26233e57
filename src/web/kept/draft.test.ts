import { describe, expect, it } from 'vitest';
import { changedFields, draftOver } from './draft.ts';

const base = { stepG: '1', remark: '', anchors: [{ key: '', weight: '' }], even: null as string | null };

describe('a half-filled form', () => {
  it('keeps only what was typed, so that a card changed elsewhere meanwhile is not set back', () => {
    const kept = changedFields(base, { ...base, remark: 'cold room' });
    expect(kept).toEqual({ remark: 'cold room' });
    expect(draftOver({ ...base, stepG: '0.5' }, kept)).toEqual({ ...base, stepG: '0.5', remark: 'cold room' });
  });

  it('keeps lists whole, and nothing where nothing was typed', () => {
    expect(changedFields(base, { ...base, anchors: [{ key: 'A0', weight: '' }] })).toEqual({ anchors: [{ key: 'A0', weight: '' }] });
    expect(changedFields(base, { ...base, anchors: [{ key: '', weight: '' }] })).toEqual({});
  });

  it('takes up a choice that was open, and drops fields and kinds of value the form no longer has', () => {
    const kept = { even: 'curve', gone: 'x', stepG: 3 } as unknown as Partial<typeof base>;
    expect(draftOver(base, kept)).toEqual({ ...base, even: 'curve' });
  });
});
