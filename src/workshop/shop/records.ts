import { MOST_PHOTOS, daySchema, observedParts, photoSchema } from '#instrument';
import { paperActions, placeSchema, ruleFileSchema, ruleSchema } from '#law';
import { ownTargetSchema } from '#room';
import { z } from 'zod';
import { changeOf } from '../change.ts';
import { currency, line, minor, named, piano, words } from './fields.ts';
import { tradeDrafts } from './trade.ts';

/** What somebody is to the shop. */
export const contactRoles = ['customer', 'supplier', 'mover'] as const;
/** What a visit or a reminder is for. */
export const purposes = ['viewing', 'trial', 'survey', 'tuning', 'service', 'collection', 'delivery', 'other'] as const;
/** Where a visit takes place. */
export const visitPlaces = ['shop', 'hall', 'home', 'elsewhere'] as const;
/** Parts a piano on loan is looked over by, before and after. */
export const loanParts = ['case', 'lid', 'musicDesk', 'keys', 'action', 'strings', 'pedals', 'castors', 'bench'] as const;
/** How a part of a piano on loan was found. */
export const loanGrades = ['good', 'marked', 'damaged'] as const;

/** What is kept in stock. */
export const stockKinds = ['wire', 'wrapWire', 'tuningPins', 'centrePins', 'felt', 'leather', 'hammers', 'leads', 'other'] as const;
/** What it is counted in. */
export const stockUnits = ['m', 'g', 'piece', 'set'] as const;

const amount = z.number().min(-1e9).max(1e9);

/** A day, a month or only a year, as far as it is known (ISO 8601): `1926`, `1926-05`, `1926-05-01`. */
const roughDaySchema = z.union([z.iso.date(), z.string().regex(/^\d{4}(?:-(?:0[1-9]|1[0-2]))?$/u, 'a year, a month or a day such as 1926, 1926-05 or 1926-05-01')]).nullable().default(null);

/** Condition of a piano on loan at one moment. */
export const loanConditionSchema = z.strictObject({
  on: daySchema,
  points: z.array(z.strictObject({ part: z.enum(loanParts), grade: z.enum(loanGrades), words: words(1000) })).max(loanParts.length),
  a4Hz: z.number().min(390).max(470).nullable().default(null),
  humidityPct: z.number().min(0).max(100).nullable().default(null),
  photos: z.array(photoSchema).max(MOST_PHOTOS).default([]),
});
export type LoanCondition = z.output<typeof loanConditionSchema>;

const place = line(300);
const free = z.strictObject({ words: words(4000) }).default({ words: '' });
const freeWithPlace = z.strictObject({ place, words: words(4000) }).default({ place: '', words: '' });

/** A paper somebody holds in hand: which, as the rule calls it in English, its number and day, and what it looks like. */
const heldPaper = z.strictObject({ paper: z.string().trim().min(1).max(1000), number: line(120), on: daySchema.nullable().default(null), photos: z.array(photoSchema).max(MOST_PHOTOS).default([]) });
export type HeldPaper = z.output<typeof heldPaper>;

/** Drafts by kind. `person` is the id of a contact; `details` holds what is personal and is kept outside the log. */
export const shopDrafts = {
  contact: z.strictObject({
    kind: z.literal('contact'),
    roles: z.array(z.enum(contactRoles)).min(1).max(contactRoles.length),
    details: z.strictObject({ name: z.string().trim().min(1).max(120).regex(/^\P{Cc}*$/u, 'one line'), organisation: line(120), phone: line(120), email: line(254), address: words(600), remark: words(4000) }),
  }),
  enquiry: z.strictObject({
    kind: z.literal('enquiry'), person: named, pianoId: piano, on: daySchema,
    about: z.enum(['restoration', 'service', 'buying', 'selling', 'trial', 'other']),
    status: z.enum(['open', 'answered', 'won', 'lost']).default('open'),
    details: free,
  }),
  ownership: z.strictObject({
    kind: z.literal('ownership'), person: named, pianoId: piano, relation: z.enum(['owns', 'wants']),
    from: roughDaySchema, until: roughDaySchema,
    details: free,
  }),
  appointment: z.strictObject({
    kind: z.literal('appointment'), person: named.nullable().default(null), pianoId: piano,
    purpose: z.enum(purposes), where: z.enum(visitPlaces),
    startsAt: z.iso.datetime({ offset: true }), minutes: z.number().int().min(1).max(10080),
    status: z.enum(['planned', 'done', 'cancelled']).default('planned'),
    details: freeWithPlace,
  }),
  loan: z.strictObject({
    kind: z.literal('loan'), person: named, pianoId: named, from: daySchema, until: daySchema.nullable().default(null), returnedOn: daySchema.nullable().default(null),
    before: loanConditionSchema.nullable().default(null), after: loanConditionSchema.nullable().default(null),
    details: freeWithPlace,
  }),
  reminder: z.strictObject({
    kind: z.literal('reminder'), person: named.nullable().default(null), pianoId: piano, purpose: z.enum(purposes),
    firstOn: daySchema, everyMonths: z.number().int().min(1).max(240).nullable().default(null), until: daySchema.nullable().default(null),
    status: z.enum(['active', 'ended']).default('active'),
    details: free,
  }),
  /** What is looked at when an instrument of a kind is surveyed; the newest of the shop is the one in use. */
  template: z.strictObject({
    kind: z.literal('template'), instrument: z.enum(['grand', 'upright']),
    points: z.array(z.strictObject({ part: z.enum(observedParts), ask: z.string().trim().min(1).max(400) })).min(1).max(60),
    details: free,
  }),
  /** Something kept in stock; how much of it is there follows from its moves alone. */
  stock: z.strictObject({
    kind: z.literal('stock'), person: named.nullable().default(null), what: z.enum(stockKinds), name: z.string().trim().min(1).max(120).regex(/^\P{Cc}*$/u, 'one line'),
    /** Diameter of wire or pin, thickness of felt. */
    sizeMm: z.number().gt(0).max(1000).nullable().default(null),
    unit: z.enum(stockUnits), reorderAt: amount.min(0).nullable().default(null),
    details: free,
  }),
  /** Something put into stock or taken out; what is taken out is below nought. */
  stockMove: z.strictObject({
    kind: z.literal('stockMove'), stock: named, on: daySchema, amount: amount.refine((value) => value !== 0, 'something other than 0'), reason: z.enum(['bought', 'used', 'counted', 'lost']),
    pianoId: piano, work: named.nullable().default(null), purchase: named.nullable().default(null),
    details: free,
  }),
  /** What is ordered of a supplier, by hand or from the plan of a piano. */
  purchase: z.strictObject({
    kind: z.literal('purchase'), person: named.nullable().default(null), pianoId: piano,
    orderedOn: daySchema.nullable().default(null), expectedOn: daySchema.nullable().default(null), receivedOn: daySchema.nullable().default(null),
    status: z.enum(['draft', 'ordered', 'received', 'cancelled']).default('draft'),
    lines: z.array(z.strictObject({ stock: named.nullable().default(null), name: z.string().trim().min(1).max(200), sizeMm: z.number().gt(0).max(1000).nullable().default(null), amount: amount.gt(0), unit: z.enum(stockUnits), priceMinor: minor.nullable().default(null) })).min(1).max(300),
    /** What the supplier charges in; the price of a line is that of the whole line, in whole smallest units. */
    currency: currency.nullable().default(null),
    details: free,
  }),
  /** A sample of the wound strings a purchase brought, measured. */
  receipt: z.strictObject({
    kind: z.literal('receipt'), purchase: named.nullable().default(null), pianoId: named, on: daySchema,
    samples: z.array(z.strictObject({ key: z.number().int().min(1).max(128), coreDiameterMm: z.number().gt(0).max(5), overallDiameterMm: z.number().gt(0).max(15) })).min(1).max(128),
    details: free,
  }),
  /** Time at the bench for one task of a piano: by the clock, or typed afterwards. A typed figure wins; the clock stays beside it. */
  hours: z.strictObject({
    kind: z.literal('hours'), pianoId: named, cycle: z.number().int().min(1), on: daySchema,
    /** Jobs of the work list, and the line of the estimate, it counts towards. */
    jobs: z.array(named).max(128).default([]), line: named.nullable().default(null),
    /** Reference of the one at the bench; null where nobody is named. */
    who: named.nullable().default(null),
    hours: z.number().gt(0).max(1000).nullable().default(null),
    startedAt: z.iso.datetime({ offset: true }).nullable().default(null), stoppedAt: z.iso.datetime({ offset: true }).nullable().default(null),
    details: free,
  }),
  /** What the shop reckons with unless an estimate says otherwise; the newest is the one in use. */
  rates: z.strictObject({
    kind: z.literal('rates'), currency, rateMinor: minor, wageMinor: minor.default(0), overheadPct: z.number().min(0).max(1000).default(0),
    details: free,
  }),
  /** A sale, shipment or journey of a piano, for which papers may be needed. */
  shipment: z.strictObject({
    kind: z.literal('shipment'), person: named.nullable().default(null), pianoId: named, on: daySchema, action: z.enum(paperActions), from: placeSchema, to: placeSchema,
    /** Whether it travels in a crate of solid wood. */
    hasCrate: z.boolean().default(false),
    status: z.enum(['planned', 'done', 'cancelled']).default('planned'),
    /** Papers already in hand. */
    inHand: z.array(heldPaper).max(60).optional(),
    details: free,
  }),
  /** A newer file of rules on papers; those before it stay for what was shipped under them. */
  ruleFile: z.strictObject({ kind: z.literal('ruleFile'), file: ruleFileSchema, details: free }),
  /** A rule of the shop's own, beside every file. */
  ownRule: z.strictObject({ kind: z.literal('ownRule'), rule: ruleSchema, details: free }),
  ...tradeDrafts,
  /** A target of reverberation the shop owns: a standard it bought, a wish of its own. */
  standard: z.strictObject({ kind: z.literal('standard'), target: ownTargetSchema, details: free }),
} as const;

/** Kinds of cards that belong to the shop and not to one piano. */
export const shopKinds = Object.keys(shopDrafts) as readonly ShopKind[];
export type ShopKind = keyof typeof shopDrafts;
type Drafts = typeof shopDrafts;

/** A card as it is written down. */
export const shopCardDraftSchema = z.discriminatedUnion('kind', [shopDrafts.contact, shopDrafts.enquiry, shopDrafts.ownership, shopDrafts.appointment, shopDrafts.loan, shopDrafts.reminder, shopDrafts.template, shopDrafts.stock, shopDrafts.stockMove, shopDrafts.purchase, shopDrafts.receipt, shopDrafts.hours, shopDrafts.rates, shopDrafts.shipment, shopDrafts.ruleFile, shopDrafts.ownRule, shopDrafts.acquisition, shopDrafts.sale, shopDrafts.taxYear, shopDrafts.standard]);
export type ShopCardDraft = z.input<typeof shopCardDraftSchema>;
/** A draft whose defaults are filled in. */
export type ShopCardGiven = z.output<typeof shopCardDraftSchema>;

/** A change of a card: its kind, and the fields that are to be another. `details` come whole. */
export const shopCardChangeSchema = z.discriminatedUnion('kind', [
  changeOfKind(shopDrafts.contact), changeOfKind(shopDrafts.enquiry), changeOfKind(shopDrafts.ownership),
  changeOfKind(shopDrafts.appointment), changeOfKind(shopDrafts.loan), changeOfKind(shopDrafts.reminder), changeOfKind(shopDrafts.template),
  changeOfKind(shopDrafts.stock), changeOfKind(shopDrafts.stockMove), changeOfKind(shopDrafts.purchase), changeOfKind(shopDrafts.receipt), changeOfKind(shopDrafts.hours), changeOfKind(shopDrafts.rates),
  changeOfKind(shopDrafts.shipment), changeOfKind(shopDrafts.ruleFile), changeOfKind(shopDrafts.ownRule), changeOfKind(shopDrafts.standard),
  changeOfKind(shopDrafts.acquisition), changeOfKind(shopDrafts.sale), changeOfKind(shopDrafts.taxYear),
]);
export type ShopCardChange = z.input<typeof shopCardChangeSchema>;

const standing = {
  id: z.string(),
  /** Whose book it stands in: the shop's own, or the demonstration's. */
  workshopId: z.string(),
  at: z.string(),
  changedAt: z.string(),
  /** How often it was changed; grows for ever, undo included. */
  sequence: z.number().int().min(0),
};

/** A card as it is kept; `details` is null once the person asked to be forgotten. */
export const shopCardSchema = z.discriminatedUnion('kind', [
  kept(shopDrafts.contact), kept(shopDrafts.enquiry), kept(shopDrafts.ownership), kept(shopDrafts.appointment), kept(shopDrafts.loan), kept(shopDrafts.reminder), kept(shopDrafts.template),
  kept(shopDrafts.stock), kept(shopDrafts.stockMove), kept(shopDrafts.purchase), kept(shopDrafts.receipt), kept(shopDrafts.hours), kept(shopDrafts.rates),
  kept(shopDrafts.shipment), kept(shopDrafts.ruleFile), kept(shopDrafts.ownRule), kept(shopDrafts.standard),
  kept(shopDrafts.acquisition), kept(shopDrafts.sale), kept(shopDrafts.taxYear),
]);
export type ShopCard = z.output<typeof shopCardSchema>;
export type CardOf<K extends ShopKind> = Extract<ShopCard, { readonly kind: K }>;

type Shapes = Drafts[ShopKind]['shape'];
type KeptShape<Shape extends Shapes> = Omit<Shape, 'details'> & typeof standing & { readonly details: z.ZodNullable<Shape['details']> };
type ChangedShape<Shape extends Shapes> = Omit<ReturnType<typeof changeOf<Shape>>['shape'], 'kind'> & Pick<Shape, 'kind'>;

function kept<Shape extends Shapes>({ shape }: z.ZodObject<Shape, z.core.$strict>): z.ZodObject<KeptShape<Shape>, z.core.$strict> {
  return z.strictObject({ ...shape, ...standing, details: z.nullable(shape.details) });
}

function changeOfKind<Shape extends Shapes>({ shape }: z.ZodObject<Shape, z.core.$strict>): z.ZodObject<ChangedShape<Shape>, z.core.$strict> {
  return z.strictObject({ ...changeOf(shape).shape, kind: shape.kind }) as unknown as z.ZodObject<ChangedShape<Shape>, z.core.$strict>;
}

/** The chain of events that is not of one piano but of the whole shop, by the name it is kept under. */
export function bookOf(workshopId: string): string {
  return `book:${workshopId}`;
}
