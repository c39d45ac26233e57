import { describe, expect, it } from 'vitest';
import { isPersonReference, whoWrote } from './people.ts';

const reference = '6f1c1d5e-94b3-4c0b-8a53-0a7c3f4f2b11';

describe('who wrote something', () => {
  it('is the person named, while the name is known', () => {
    expect(whoWrote(reference, [{ reference, name: 'A. Tester' }])).toEqual({ kind: 'named', name: 'A. Tester' });
  });

  it('is told as forgotten where the reference has no name any more, and as nobody where none was named', () => {
    expect(whoWrote(reference, [])).toEqual({ kind: 'forgotten' });
    for (const by of ['bench', 'demo', 'file']) expect(whoWrote(by, [])).toEqual({ kind: 'nobody' });
  });

  it('takes no name for a reference', () => {
    for (const name of ['A. Tester', '', `${reference}x`, reference.toUpperCase()]) expect(isPersonReference(name)).toBe(false);
    expect(isPersonReference(reference)).toBe(true);
  });
});
