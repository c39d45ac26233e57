import { type ListedMaterial, type PaperFacts, type PaperOutcome, type PaperQuestion, type PaperReason, type PaperRule, type PaperRuleFile, kindsOf, listedMaterials, papersTogether, rulesOn, shippedRules } from '#law';
import { grams } from '#units';
import type { ShopCard } from '../shop/records.ts';
import { allIvoryOf, massOf } from './ivory.ts';
import type { PaperHistory, PaperMaterial, PaperRecord } from './records.ts';

export type Shipment = Extract<ShopCard, { readonly kind: 'shipment' }>;

/** Files of rules and rules of the shop's own that the shop goes by. */
export interface RuleBook {
  /** The one that comes with the program first, then those taken in, as they came. */
  readonly files: readonly PaperRuleFile[];
  readonly own: readonly PaperRule[];
}

/** The rules the shop goes by, from the cards of its book. */
export function ruleBookOf(cards: readonly ShopCard[]): RuleBook {
  return {
    files: [shippedRules, ...cards.flatMap((card) => (card.kind === 'ruleFile' ? [card.file] : []))],
    own: cards.flatMap((card) => (card.kind === 'ownRule' ? [card.rule] : [])),
  };
}

/** Shipments of one piano, the next to come first. */
export function shipmentsOf(cards: readonly ShopCard[], pianoId: string): readonly Shipment[] {
  return cards.filter((card): card is Shipment => card.kind === 'shipment' && card.pianoId === pianoId).toSorted((a, b) => a.on.localeCompare(b.on) || a.at.localeCompare(b.at));
}

/** What one material of a shipment comes to. */
export interface JudgedMaterial {
  /** Absent for the crate. */
  readonly record?: PaperMaterial;
  readonly question: PaperQuestion;
  readonly outcome: PaperOutcome;
}

/** A shipment held against the rules of its day. */
export interface JudgedShipment {
  readonly shipment: Shipment;
  readonly outcome: PaperOutcome;
  readonly reasons: readonly PaperReason[];
  /** Each material by itself, in the order they were noted. */
  readonly materials: readonly JudgedMaterial[];
  /** Day the rules in use were issued. */
  readonly issued: string;
  readonly rules: readonly PaperRule[];
}

/** Holds a shipment of an instrument against the rules of its day. Without a material noted there is nothing to ask, and the authority is asked. @source OWN */
export function judgeShipment(shipment: Shipment, records: readonly PaperRecord[], { files, own }: RuleBook): JudgedShipment {
  const { issued, rules } = rulesOn(shipment.on, files, own);
  const asked = questionsOf(shipment, records);
  const { outcome, reasons } = papersTogether(asked.map(({ question }) => question), rules);
  const materials = asked.map((one): JudgedMaterial => ({ ...one, outcome: papersTogether([one.question], rules).outcome }));
  return { shipment, outcome, reasons, materials, issued, rules };
}

const isMaterial = (record: PaperRecord): record is PaperMaterial => record.kind === 'material';
/** The materials noted of an instrument, in the order they were. */
export const materialsOf = (records: readonly PaperRecord[]): readonly PaperMaterial[] => records.filter(isMaterial);
/** What is proven of the history of an instrument; nothing where nothing was noted. */
export const historyOf = (records: readonly PaperRecord[]): PaperHistory | undefined => records.find((record) => record.kind === 'history');
/** True for ivory of whatever species. */
export const isIvory = ({ material }: Pick<PaperMaterial, 'material'>): boolean => kindsOf(material).has('ivory');

function questionsOf({ from, to, action, on, hasCrate }: Shipment, records: readonly PaperRecord[]): readonly Omit<JudgedMaterial, 'outcome'>[] {
  const materials = materialsOf(records);
  const shared = factsOfHistory(historyOf(records));
  const ivory = allIvoryOf(materials.filter(isIvory));
  const journey = { from, to, action, date: on } as const;
  return [
    ...materials.map((record) => ({ record, question: { ...journey, facts: { ...shared, ...factsOfMaterial(record), ...(isIvory(record) ? factsOfMass(ivory) : {}) } } })),
    ...(hasCrate ? [{ question: { ...journey, facts: { ...shared, material: 'crate:solid-wood' as const } } }] : []),
  ];
}

/** Only what is stated: `null` is not known, and asked about. */
function stated<T extends object>(facts: { readonly [Name in keyof T]: T[Name] | null | undefined }): Partial<T> {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== null && value !== undefined)) as Partial<T>;
}

function factsOfHistory(history: PaperHistory | undefined): Omit<PaperFacts, 'material'> {
  if (history === undefined) return {};
  return stated<Omit<PaperFacts, 'material'>>({
    yearMade: history.yearMade, ivoryVolPct: history.ivoryVolumePct as PaperFacts['ivoryVolPct'] | null, ivoryShareOfValuePct: history.ivoryValuePct as PaperFacts['ivoryShareOfValuePct'] | null,
    repairedWithListedSpeciesSince1973: history.isRepairedWithListedSince1973, importedToUSBefore1990: history.isImportedToUsBefore1990,
    playedUntilRecently: history.isPlayedUntilRecently, repairOfInstrumentBefore1975: history.isForRepairBefore1975,
  });
}

/** A species that is doubtful is asked about as the widest kind it is of; where there is none, as what it is called, and every rule asks. */
function namedAs({ material, species }: PaperMaterial): { readonly material: ListedMaterial; readonly speciesProven?: boolean } {
  if (species === 'proven') return { material };
  const widest = listedMaterials.find((one) => one === material.split(':')[0]) ?? material;
  return listedMaterials.some((one) => one.startsWith(`${widest}:`)) ? { material: widest } : { material: widest, speciesProven: false };
}

function factsOfMaterial(record: PaperMaterial): PaperFacts {
  const { isRaw, isFixed, isFinished, isCertifiedPreConvention, isTakenBefore1976 } = record;
  const mass = kindsOf(record.material).has('wood') ? massOf(record) : undefined;
  const ivory = isIvory(record) ? { ivoryRaw: isRaw, ivoryFixed: isFixed } : {};
  return { ...stated<Omit<PaperFacts, 'material'>>({ ...ivory, finished: isFinished, preConventionCertificate: isCertifiedPreConvention, takenFromWildBefore1976: isTakenBefore1976, listedWoodG: mass?.massG ?? null }), ...namedAs(record) };
}

/** A mass whose doubt nobody stated decides nothing: only one weighed or measured with its uncertainty counts. */
function factsOfMass(ivory: ReturnType<typeof allIvoryOf>): Omit<PaperFacts, 'material'> {
  if (ivory?.uncertaintyG === undefined) return {};
  return { ivoryMassG: grams(ivory.massG), ivoryMassUncertaintyG: grams(ivory.uncertaintyG), ivoryMassHow: ivory.how };
}
