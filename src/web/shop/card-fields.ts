import { paperActions } from '#law';
import { roundings } from '#money';
import type { UnitId } from '#units';
import { type ShopKind, contactRoles, purposes, stockKinds, stockUnits, taxRegimes, visitPlaces } from '#workshop';

/** How a field of a card is typed. `money` is read in the currency of the field `currency`; `given` is known and not asked for. */
export type FieldForm = 'money' | 'currency' | 'given' | 'line' | 'lines' | 'day' | 'roughDay' | 'moment' | 'whole' | 'number' | 'measure' | 'choice' | 'roles' | 'piano' | 'person' | 'condition' | 'truth' | 'place';

/** One field of a card: where it stands, how it is typed, whether it may be left open. */
export interface CardField {
  readonly path: string;
  /** Area of its label, `shop.field` where none is named; hints stand under the same with `hint`. */
  readonly area?: string;
  /** Unit of a number, where it has one. */
  readonly unit?: UnitId;
  readonly as: FieldForm;
  readonly isOptional?: boolean;
  readonly choices?: readonly string[];
  /** Area of the words of the choices: `shop.purpose`. */
  readonly words?: string;
  readonly maxLength?: number;
  /** What an empty field states: null where left out. */
  readonly empty?: '';
  /** Left out of the form that makes a card: it is known only later. */
  readonly isLater?: boolean;
}

const choice = (path: string, choices: readonly string[], words: string, rest: Partial<CardField> = {}): CardField => ({ path, as: 'choice', choices, words: `shop.${words}`, ...rest });
const line = (path: string, maxLength: number): CardField => ({ path, as: 'line', maxLength, isOptional: true, empty: '' });
const words: CardField = { path: 'details.words', as: 'lines', maxLength: 4000, isOptional: true };
const person: CardField = { path: 'person', as: 'person' };
const piano: CardField = { path: 'pianoId', as: 'piano', isOptional: true };
const place = line('details.place', 300);

/** Fields of a purchase or sale of a piano, named after the side it is seen from. */
const traded = (side: 'bought' | 'sold', fields: readonly CardField[]): readonly CardField[] => fields.map((field) => ({ ...field, area: `stockBook.field.${side}` }));
const party: readonly CardField[] = [{ ...person, isOptional: true }, line('details.name', 200), { path: 'details.address', as: 'lines', maxLength: 600, isOptional: true }];
const priced: readonly CardField[] = [{ path: 'currency', as: 'currency', isOptional: true }, { path: 'priceMinor', as: 'money', isOptional: true }];

/** The fields of each kind of card, in the order they are asked for. */
export const cardFields: Readonly<Record<ShopKind, readonly CardField[]>> = {
  // Made and changed on forms of their own.
  template: [],
  stockMove: [],
  purchase: [],
  receipt: [],
  hours: [],
  rates: [],
  taxYear: [],
  ruleFile: [],
  ownRule: [],
  acquisition: traded('bought', [
    { path: 'number', as: 'whole' }, line('description', 300), { path: 'on', as: 'day', isOptional: true }, ...priced, { path: 'eligible', as: 'truth', isOptional: true }, line('invoice', 60),
    ...party, piano, words,
  ]),
  sale: traded('sold', [
    { path: 'acquisition', as: 'given' }, { path: 'on', as: 'day', isOptional: true }, ...priced, line('invoice', 60), ...party,
    choice('regime', taxRegimes, '', { words: 'worth.regime' }), { path: 'place', as: 'place', isOptional: true }, { path: 'ratePct', as: 'number', unit: 'pct', isOptional: true }, choice('rounding', roundings, '', { words: 'worth.rounding' }), words,
  ]),
  standard: [],
  shipment: [
    { path: 'action', as: 'choice', choices: paperActions, words: 'papers.action' }, { path: 'from', as: 'place' }, { path: 'to', as: 'place' }, { path: 'on', as: 'day' },
    { path: 'hasCrate', as: 'truth' }, choice('status', ['planned', 'done', 'cancelled'], 'status'), { ...person, isOptional: true }, { ...piano, isOptional: false }, words,
  ],
  stock: [
    { path: 'name', as: 'line', maxLength: 120 }, choice('what', stockKinds, 'stockKind'), { path: 'sizeMm', as: 'measure', isOptional: true }, choice('unit', stockUnits, 'unit'),
    { path: 'reorderAt', as: 'number', isOptional: true }, { ...person, isOptional: true }, words,
  ],
  contact: [
    { path: 'details.name', as: 'line', maxLength: 120 },
    { path: 'roles', as: 'roles', choices: contactRoles, words: 'shop.role' },
    line('details.organisation', 120), line('details.phone', 120), line('details.email', 254),
    { path: 'details.address', as: 'lines', maxLength: 600, isOptional: true },
    { path: 'details.remark', as: 'lines', maxLength: 4000, isOptional: true },
  ],
  enquiry: [
    person, piano, { path: 'on', as: 'day' }, choice('about', ['restoration', 'service', 'buying', 'selling', 'trial', 'other'], 'about'),
    choice('status', ['open', 'answered', 'won', 'lost'], 'status'), words,
  ],
  ownership: [person, choice('relation', ['owns', 'wants'], 'relation'), piano, { path: 'from', as: 'roughDay', isOptional: true }, { path: 'until', as: 'roughDay', isOptional: true }, words],
  appointment: [
    { ...person, isOptional: true }, piano, choice('purpose', purposes, 'purpose'), choice('where', visitPlaces, 'where'),
    { path: 'startsAt', as: 'moment' }, { path: 'minutes', as: 'whole' }, choice('status', ['planned', 'done', 'cancelled'], 'status'), place, words,
  ],
  loan: [
    person, { ...piano, isOptional: false }, { path: 'from', as: 'day' }, { path: 'until', as: 'day', isOptional: true }, { path: 'returnedOn', as: 'day', isOptional: true, isLater: true },
    place, { path: 'before', as: 'condition', isOptional: true }, { path: 'after', as: 'condition', isOptional: true, isLater: true }, words,
  ],
  reminder: [
    { ...person, isOptional: true }, piano, choice('purpose', purposes, 'purpose'), { path: 'firstOn', as: 'day' }, { path: 'everyMonths', as: 'whole', isOptional: true },
    { path: 'until', as: 'day', isOptional: true }, choice('status', ['active', 'ended'], 'status'), words,
  ],
};
