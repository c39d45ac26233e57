import { mustBe } from '#result';
import { type ShopCard, type ShopCardDraft, shopCardSchema, shopKinds } from '#workshop';
import { describe, expect, it } from 'vitest';
import { cardFields } from './card-fields.ts';
import { cardChangeOf, cardDraftOf, cardFormOf } from './card-form.ts';
import { comingOf } from './coming.ts';

const kept = { id: 'x', workshopId: 'shop', at: '2031-01-01T00:00:00Z', changedAt: '2031-01-01T00:00:00Z', sequence: 0 };
const condition = { on: '2031-02-01', points: [{ part: 'case', grade: 'marked', words: 'Dent' }, { part: 'keys', grade: 'good', words: '' }], a4Hz: 439.2, humidityPct: 46.5, photos: [] } as const;
const drafts: readonly ShopCardDraft[] = [
  { kind: 'contact', roles: ['customer', 'mover'], details: { name: 'A', organisation: 'B', phone: '1', email: 'a@b', address: 'two\nlines', remark: ' kept  as typed ' } },
  { kind: 'enquiry', person: 'p', pianoId: null, on: '2031-02-01', about: 'buying', status: 'answered', details: { words: 'x' } },
  { kind: 'ownership', person: 'p', pianoId: 'i', relation: 'owns', from: '1926', until: '1958-05', details: { words: '' } },
  { kind: 'appointment', person: null, pianoId: 'i', purpose: 'tuning', where: 'hall', startsAt: '2031-05-01T08:30:00.000Z', minutes: 45, status: 'planned', details: { place: 'Hall', words: '' } },
  { kind: 'loan', person: 'p', pianoId: 'i', from: '2031-02-01', until: null, returnedOn: '2031-02-09', before: { ...condition, points: [...condition.points], photos: [] }, after: null, details: { place: '', words: '' } },
  { kind: 'reminder', person: 'p', pianoId: null, purpose: 'service', firstOn: '2031-02-01', everyMonths: 6, until: null, status: 'active', details: { words: '' } },
  { kind: 'shipment', person: 'p', pianoId: 'i', on: '2031-06-01', action: 'sell', from: 'DE', to: 'US', hasCrate: true, status: 'planned', details: { words: 'x' } },
  { kind: 'acquisition', person: null, pianoId: 'i', number: 7, on: '2031-02-01', invoice: 'P 7', description: 'Grand, invented', priceMinor: 850_000, currency: 'EUR', eligible: true, details: { name: 'A', address: 'two\nlines', words: '' } },
  { kind: 'sale', person: 'p', acquisition: 'a', on: null, invoice: '', priceMinor: 1_234_567, currency: 'KWD', regime: 'export', place: 'DE', ratePct: 17.5, rounding: 'down', details: { name: '', address: '', words: 'x' } },
  { kind: 'stock', person: null, what: 'wire', name: 'Wire', sizeMm: 0.925, unit: 'm', reorderAt: 12.5, details: { words: '' } },
];
const card = (draft: ShopCardDraft): ShopCard => shopCardSchema.parse({ ...draft, ...kept });

describe('the form of a card', () => {
  it.each(drafts.flatMap((draft) => ['en-GB', 'de-DE'].map((locale) => [draft.kind, locale, draft] as const)))('gives back every field as it stood: %s in %s', (kind, locale, draft) => {
    const again = mustBe(cardDraftOf(kind, cardFormOf(kind, card(draft), locale), locale));
    expect(again).toEqual(draft);
    expect(cardChangeOf(card(draft), again)).toEqual({ kind });
  });

  it('asks for every field of its kind that its schema knows, but those with forms of their own', () => {
    const asked = shopKinds.filter((kind) => cardFields[kind].length > 0);
    expect(asked.sort()).toEqual(drafts.map(({ kind }) => kind).sort());
    for (const draft of drafts) {
      const paths = new Set(cardFields[draft.kind].map(({ path }) => path.split('.')[0]));
      expect(Object.keys(draft).filter((field) => field !== 'kind' && !paths.has(field))).toEqual([]);
    }
  });

  it('names every field that is wrong, and takes nothing for granted', () => {
    const wrong = (kind: ShopCardDraft['kind'], fields: Readonly<Record<string, string>>, rest: object = {}): readonly string[] => {
      const form = cardFormOf(kind, undefined, 'en-GB');
      const refused = cardDraftOf(kind, { ...form, ...rest, fields: { ...form.fields, ...fields } }, 'en-GB');
      return refused.ok ? [] : refused.issues.map(({ path, code }) => `${path} ${code}`);
    };
    expect(wrong('contact', { roles: '' })).toEqual(['details.name required', 'roles required']);
    expect(wrong('appointment', { minutes: '-5' })).toEqual(['startsAt required', 'minutes type']);
    expect(wrong('ownership', { person: 'p', from: '1958', until: '1926' })).toEqual(['until order']);
    expect(wrong('loan', { person: 'p', pianoId: 'i', from: '2031-01-01' }, { before: { ...cardFormOf('loan', undefined, 'en').before, words: { case: 'Dent' } } })).toEqual(['before.case required', 'before.on required']);
    expect(wrong('acquisition', { number: '7', priceMinor: '12' })).toEqual(['currency required']);
    expect(wrong('acquisition', { number: '7', priceMinor: '12.345', currency: 'eur' })).toEqual(['priceMinor format']);
    expect(wrong('sale', { currency: 'XXX' })).toEqual(['acquisition required', 'currency choice']);
    expect(wrong('stock', { name: 'Wire', reorderAt: 'much' })).toEqual(['reorderAt format']);
  });
});

describe('what is coming', () => {
  it('is put in order, and tells what was planned and is past, late, out, due or unanswered', () => {
    const cards = drafts.map((draft, index) => ({ ...card(draft), id: String(index) }));
    const whys = (now: string) => comingOf(cards, new Date(now)).map(({ why }) => why);
    expect(whys('2031-01-20T00:00:00Z')).toEqual(['due', 'planned']);
    expect(whys('2031-05-01T09:00:00Z')).toEqual(['planned']);
    expect(whys('2031-05-01T10:00:00Z')).toEqual(['past']);
    const out = [{ ...card({ kind: 'loan', person: 'p', pianoId: 'i', from: '2031-02-01', until: '2031-02-10' }), id: 'l' } as ShopCard];
    expect(comingOf(out, new Date('2031-02-05T00:00:00Z')).map(({ why }) => why)).toEqual(['out']);
    expect(comingOf(out, new Date('2031-02-11T00:00:00Z')).map(({ why }) => why)).toEqual(['late']);
    expect(comingOf(out, new Date('2031-01-11T00:00:00Z'))).toEqual([]);
  });
});
