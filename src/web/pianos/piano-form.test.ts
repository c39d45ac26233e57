import type { Instrument } from '#instrument';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { changesOf, emptyPianoForm, pianoDraftOf, pianoFormOf } from './piano-form.ts';

const named = { ...emptyPianoForm, name: 'Test grand' };

describe('the card of a piano', () => {
  it('understands a length in feet of paper: inches, centimetres, decimal commas', () => {
    expect(mustBe(pianoDraftOf({ ...named, length: '2,1 m' }, 'de')).lengthMm).toBe(2100);
    expect(mustBe(pianoDraftOf({ ...named, length: '70"' }, 'en')).lengthMm).toBe(1778);
    expect(mustBe(pianoDraftOf({ ...named, length: '' }, 'en')).lengthMm).toBeNull();
  });

  it('names every field that is wrong at once', () => {
    const refused = pianoDraftOf({ ...named, compass: 'other', firstNote: 'X1', year: '85', length: 'long' }, 'en');
    expect(refused.ok ? [] : refused.issues.map(({ path }) => path)).toEqual(['year', 'firstMidi', 'lengthMm']);
  });

  it('refuses a keyboard that ends below its first key, and a piano without a name', () => {
    const backwards = pianoDraftOf({ ...named, compass: 'other', firstNote: 'C4', lastNote: 'C3' }, 'en');
    expect(backwards.ok ? '' : backwards.issues[0]?.path).toBe('lastMidi');
    const nameless = pianoDraftOf({ ...named, name: '  ' }, 'en');
    expect(nameless.ok ? '' : nameless.issues[0]?.path).toBe('name');
  });

  it('reads a card back into the same draft, so that opening and saving changes nothing', () => {
    const draft = mustBe(pianoDraftOf({ ...named, compass: 'other', firstNote: 'F0', lastNote: 'F8', length: '2745.5', year: '1885', pitch: '435' }, 'en'));
    const kept = { ...draft, id: 'a', workshopId: 'shop', cycle: 1, demo: false, sections: [] } as unknown as Instrument;
    expect(changesOf(kept, mustBe(pianoDraftOf(pianoFormOf(kept), 'en')))).toEqual({});
  });

  it('reads sections by key or note, bass to treble, and names each field that cannot be', () => {
    const sections = [{ name: 'Bass', first: '1', last: 'E2' }, { name: 'Treble', first: '21', last: '88' }];
    expect(mustBe(pianoDraftOf({ ...named, sections }, 'en')).sections).toEqual([{ name: 'Bass', firstKey: 1, lastKey: 20 }, { name: 'Treble', firstKey: 21, lastKey: 88 }]);
    const wrong = (...rows: (typeof sections)[number][]): readonly string[] => {
      const refused = pianoDraftOf({ ...named, sections: rows }, 'en');
      return refused.ok ? [] : refused.issues.map(({ path, code }) => `${path} ${code}`);
    };
    expect(wrong({ name: ' ', first: '0', last: 'H9' })).toEqual(['sections[0].name required', 'sections[0].firstKey choice', 'sections[0].lastKey choice']);
    expect(wrong({ name: 'Bass', first: '1', last: '20' }, { name: 'Tenor', first: '20', last: '19' })).toEqual(['sections[1].firstKey order', 'sections[1].lastKey order']);
    expect(wrong({ name: 'Treble', first: '21', last: '88' })).toEqual([]);
  });

  it('sends only what was changed', () => {
    const kept = { ...mustBe(pianoDraftOf(named, 'en')), id: 'a', workshopId: 'shop', cycle: 1, demo: false, sections: [] } as unknown as Instrument;
    expect(changesOf(kept, mustBe(pianoDraftOf({ ...pianoFormOf(kept), serial: '4711' }, 'en')))).toEqual({ serial: '4711' });
    const parted = { ...kept, sections: [{ name: 'Bass', firstKey: 1, lastKey: 20 }] };
    expect(changesOf(parted, mustBe(pianoDraftOf(pianoFormOf(parted), 'en')))).toEqual({});
  });
});
