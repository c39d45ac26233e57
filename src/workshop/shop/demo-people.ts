import type { DemoCard } from './demo-card.ts';
import { demoStockBook } from './demo-stock-book.ts';
import type { ShopCardDraft } from './records.ts';

const INVENTED = 'Invented for demonstration. Not a real person, not a real address.';

const contact = (ref: string, roles: ('customer' | 'supplier' | 'mover')[], details: { name: string; organisation?: string; phone?: string; email?: string; address?: string; remark?: string }): DemoCard =>
  ({ ref, draftOf: () => ({ kind: 'contact', roles, details: { ...details, remark: [details.remark, INVENTED].filter((part) => part !== undefined).join(' ') } }) });

/** Something in stock, put in as it was counted first. */
const stock = (ref: string, what: Omit<Extract<ShopCardDraft, { kind: 'stock' }>, 'kind'>, counted: number): readonly DemoCard[] => [
  { ref, draftOf: ({ idOf }) => ({ kind: 'stock', person: what.what === 'wire' ? idOf('strings') : null, ...what }) },
  { ref: `${ref}-counted`, draftOf: ({ idOf }) => ({ kind: 'stockMove', stock: idOf(ref), on: '2026-02-01', amount: counted, reason: 'counted' }) },
];

/** The invented people around the invented grand: who owned it, who asks, who tries it, who carries it. @source OWN */
export function demoShopCards(): readonly DemoCard[] {
  return [
    contact('first', ['customer'], { name: 'First owner, invented' }),
    contact('second', ['customer'], { name: 'Second owner, invented' }),
    contact('customer', ['customer'], { name: 'Customer A, invented', phone: '+00 000 0001', email: 'customer.a@example.org', address: '1 Example Lane\n00000 Exampleton' }),
    contact('seeker', ['customer'], { name: 'Customer B, invented', email: 'customer.b@example.org' }),
    contact('strings', ['supplier'], { name: 'String winder, invented', organisation: 'Example Strings', email: 'orders@example.org', remark: 'Winds bass strings to measure.' }),
    contact('mover', ['mover'], { name: 'Mover, invented', phone: '+00 000 0002', remark: 'Comes with three people and a skid board.' }),
    { ref: 'owned1', draftOf: ({ pianoId, idOf }) => ({ kind: 'ownership', person: idOf('first'), pianoId, relation: 'owns', from: '1926', until: '1958', details: { words: 'Bought new for a music room.' } }) },
    { ref: 'owned2', draftOf: ({ pianoId, idOf }) => ({ kind: 'ownership', person: idOf('second'), pianoId, relation: 'owns', from: '1958', until: '2025-11', details: { words: 'Stood in a cold front room from about 1990.' } }) },
    { ref: 'owned3', draftOf: ({ pianoId, idOf }) => ({ kind: 'ownership', person: idOf('customer'), pianoId, relation: 'owns', from: '2025-11' }) },
    { ref: 'wanted', draftOf: ({ idOf }) => ({ kind: 'ownership', person: idOf('seeker'), relation: 'wants', details: { words: 'A grand of about 1.8 m with a light, even touch.' } }) },
    { ref: 'asked1', draftOf: ({ pianoId, idOf }) => ({ kind: 'enquiry', person: idOf('customer'), pianoId, on: '2025-12-02', about: 'restoration', status: 'won', details: { words: 'Touch heavy and uneven, treble thin. Asks for a restoration.' } }) },
    { ref: 'asked2', draftOf: ({ idOf }) => ({ kind: 'enquiry', person: idOf('seeker'), on: '2026-03-30', about: 'buying', details: { words: 'Would like to play grands of this length.' } }) },
    { ref: 'fetched', draftOf: ({ pianoId, idOf }) => ({ kind: 'appointment', person: idOf('mover'), pianoId, purpose: 'collection', where: 'home', startsAt: '2026-02-05T08:00:00Z', minutes: 180, status: 'done', details: { place: '1 Example Lane', words: 'Two steps at the door.' } }) },
    { ref: 'viewing', draftOf: ({ pianoId, idOf }) => ({ kind: 'appointment', person: idOf('seeker'), pianoId, purpose: 'trial', where: 'shop', startsAt: '2026-04-24T13:00:00Z', minutes: 60, status: 'done' }) },
    { ref: 'hall', draftOf: ({ pianoId, idOf }) => ({ kind: 'appointment', person: idOf('customer'), pianoId, purpose: 'viewing', where: 'hall', startsAt: '2031-05-08T17:00:00Z', minutes: 90, details: { place: 'Small hall, invented', words: 'To be heard from the last row.' } }) },
    { ref: 'lent', draftOf: ({ pianoId, idOf }) => ({
      kind: 'loan', person: idOf('seeker'), pianoId, from: '2026-05-04', until: '2026-05-18', returnedOn: '2026-05-18',
      before: { on: '2026-05-04', a4Hz: 440, humidityPct: 46, points: [{ part: 'case', grade: 'good' }, { part: 'lid', grade: 'marked', words: 'Hairline scratch at the bass corner, 40 mm' }, { part: 'keys', grade: 'good' }, { part: 'pedals', grade: 'good' }] },
      after: { on: '2026-05-18', a4Hz: 439.2, humidityPct: 52, points: [{ part: 'case', grade: 'marked', words: 'Shallow dent in the rim by the left leg' }, { part: 'lid', grade: 'marked', words: 'Hairline scratch at the bass corner, 40 mm' }, { part: 'keys', grade: 'good' }, { part: 'pedals', grade: 'good' }] },
      details: { place: 'Flat on the first floor, invented', words: '' },
    }) },
    ...stock('wire0900', { what: 'wire', name: 'Music wire', sizeMm: 0.9, unit: 'm', reorderAt: 20 }, 46),
    ...stock('wire0950', { what: 'wire', name: 'Music wire', sizeMm: 0.95, unit: 'm', reorderAt: 20 }, 14.5),
    ...stock('wire1000', { what: 'wire', name: 'Music wire', sizeMm: 1, unit: 'm', reorderAt: 20 }, 61),
    ...stock('pins', { what: 'tuningPins', name: 'Tuning pins, 60 mm long', sizeMm: 7, unit: 'piece', reorderAt: 60 }, 250),
    ...stock('felt', { what: 'felt', name: 'Key bushing felt, strip', sizeMm: 1.2, unit: 'm', reorderAt: 2 }, 3.4),
    ...stock('leads', { what: 'leads', name: 'Key lead, round', sizeMm: 12.7, unit: 'piece', reorderAt: 30 }, 112),
    { ref: 'used', draftOf: ({ pianoId, idOf }) => ({ kind: 'stockMove', stock: idOf('felt'), on: '2026-03-12', amount: -1.6, reason: 'used', pianoId }) },
    { ref: 'order', draftOf: ({ pianoId, idOf }) => ({
      kind: 'purchase', person: idOf('strings'), pianoId, orderedOn: '2026-02-20', expectedOn: '2026-03-20', receivedOn: '2026-03-18', status: 'received',
      lines: [{ name: 'Wound strings to the sheet sent, one set', amount: 1, unit: 'set' }, { stock: idOf('wire0950'), name: 'Music wire', sizeMm: 0.95, amount: 50, unit: 'm' }],
    }) },
    { ref: 'sold', draftOf: ({ pianoId, idOf }) => ({ kind: 'shipment', person: idOf('seeker'), pianoId, on: '2027-03-15', action: 'ship-sold', from: 'DE', to: 'US', hasCrate: true, details: { words: 'Asked for by Customer B; nothing agreed. Invented for demonstration.' } }) },
    { ref: 'offered', draftOf: ({ pianoId }) => ({ kind: 'shipment', pianoId, on: '2026-12-10', action: 'offer', from: 'DE', to: 'DE', details: { words: 'To be offered at the shop. Invented for demonstration.' } }) },
    ...demoStockBook(),
    { ref: 'tuning', draftOf: ({ pianoId, idOf }) => ({ kind: 'reminder', person: idOf('customer'), pianoId, purpose: 'tuning', firstOn: '2026-07-31', everyMonths: 3, until: '2027-04-30', details: { words: 'New strings: four times in the first year.' } }) },
    { ref: 'service', draftOf: ({ pianoId, idOf }) => ({ kind: 'reminder', person: idOf('customer'), pianoId, purpose: 'service', firstOn: '2027-04-17', everyMonths: 12, details: { words: 'Regulation and hammer shape.' } }) },
  ];
}
