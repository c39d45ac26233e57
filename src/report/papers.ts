import { type FactName, type ListedMaterial, type PaperAction, type PaperOutcome, type PaperReason, mayBeBarred, papersAsked, placeNameOf, toFindOf } from '#law';
import { languageOf } from '#text';
import { formatMeasure } from '#units';
import { cell } from './build.ts';
import type { Block, Cell, Column } from './document.ts';
import { type Tongue, dayOf, statedOr } from './words.ts';

/** A material as a print tells it. */
export interface ToldMaterial {
  readonly material: ListedMaterial;
  readonly where: string;
  readonly species: 'proven' | 'doubtful';
  readonly mass: { readonly massG: number; readonly uncertaintyG?: number; readonly how: 'weighed' | 'measured' | 'estimated' } | undefined;
  readonly evidence: string;
  readonly judgedBy: string;
  readonly photos: readonly unknown[];
  readonly documents: readonly { readonly name: string; readonly sha256: string }[];
}

/** A sale, shipment or journey as a print tells it. */
export interface ToldShipment {
  readonly from: string;
  readonly to: string;
  readonly action: PaperAction;
  readonly on: string;
  readonly outcome: PaperOutcome;
  readonly reasons: readonly PaperReason[];
  /** Day the rules were issued. */
  readonly issued: string;
}

/** Papers of an instrument as any report may tell them. */
export interface ToldPapers {
  readonly materials: readonly ToldMaterial[];
  readonly history: { readonly yearMade: number | null; readonly yearEvidence: string; readonly evidence: string } | undefined;
  readonly shipments: readonly ToldShipment[];
}

/** The short form: caution, materials, and each shipment with its outcome, its papers and what is still to be found out. For sheets where papers are one matter among others. */
export function papersBlocks(papers: ToldPapers, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    { type: 'caution', text: say('report.papers.caution') },
    ...materialBlocks(papers, tongue),
    ...papers.shipments.flatMap((shipment) => [...headOf(shipment, tongue), ...wantedOf(shipment, tongue)]),
  ];
}

/** The long form: the short one with every reason, its rule, source, authority and days. */
export function papersInFull(papers: ToldPapers, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    { type: 'caution', text: say('papers.caution') },
    ...materialBlocks(papers, tongue),
    { type: 'heading', level: 2, text: say('report.papers.shipment') },
    ...(papers.shipments.length === 0 ? [{ type: 'paragraph', size: 'body', text: say('report.papers.noShipments') } as const] : []),
    ...papers.shipments.flatMap((shipment) => [...headOf(shipment, tongue), ...wantedOf(shipment, tongue), ...reasonsOf(shipment, tongue)]),
  ];
}

/** `Shipment, sold: Germany to Japan, 1 December 2026` */
export function shipmentTitle({ action, from, to, on }: Pick<ToldShipment, 'action' | 'from' | 'to' | 'on'>, tongue: Tongue): string {
  const { say, locale } = tongue;
  const name = (place: string): string => placeNameOf(place, say, locale);
  return say(from === to ? 'papers.shipment.titleHome' : 'papers.shipment.title', { action: say(`papers.action.${action}`), from: name(from), to: name(to), day: dayOf(on, tongue) });
}

function materialBlocks({ materials, history }: ToldPapers, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    { type: 'heading', level: 2, text: say('report.papers.materials') },
    materials.length === 0 ? { type: 'paragraph', size: 'body', text: say('report.papers.noMaterials') } : {
      type: 'table', strips: 1, rowHeads: true, caption: say('report.papers.materials'),
      columns: ([['material', 2.4], ['where', 2.2], ['species', 1.4], ['mass', 2], ['evidence', 4]] as const).map(([name, width]): Column => ({ label: say(`papers.column.${name}`), align: 'start', width })),
      rows: materials.map((material) => materialRow(material, tongue)),
    },
    ...(history === undefined ? [] : [{ type: 'keyValues', rows: [
      { label: say('papers.field.yearMade'), value: history.yearMade === null ? statedOr('', tongue) : cell(String(history.yearMade)) },
      { label: say('papers.field.yearEvidence'), value: statedOr(history.yearEvidence, tongue) },
      { label: say('papers.field.evidence'), value: statedOr(history.evidence, tongue) },
    ] } as const]),
  ];
}

function materialRow({ material, where, species, mass, evidence, judgedBy, photos, documents }: ToldMaterial, { say, locale }: Tongue): readonly Cell[] {
  const grams = (value: number): string => formatMeasure(value, { locale, decimals: 1, unit: 'g' });
  const how = mass === undefined ? '' : say(`papers.massHow.${mass.how}`);
  const known = mass === undefined ? cell(say('papers.mass.none'), 'quiet') : cell(mass.uncertaintyG === undefined ? say('papers.mass.of', { mass: grams(mass.massG), how }) : say('papers.mass.ofDoubt', { mass: grams(mass.massG), doubt: grams(mass.uncertaintyG), how }));
  const shown = [evidence, judgedBy === '' ? '' : say('papers.evidence.judged', { who: judgedBy }), photos.length === 0 ? '' : say('papers.evidence.photos', { count: photos.length }), ...documents.map(({ name, sha256 }) => `${name} (SHA-256 ${sha256.slice(0, 16)}…)`)].filter((part) => part !== '');
  return [cell(say(`papers.material.${material}`), 'strong'), cell(where), cell(say(`papers.species.${species}`), species === 'doubtful' ? 'flag' : 'plain'), known, shown.length === 0 ? cell(say('papers.evidence.none'), 'quiet') : cell(shown.join('; '))];
}

function headOf(shipment: ToldShipment, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  return [
    { type: 'heading', level: 3, text: shipmentTitle(shipment, tongue) },
    { type: 'keyValues', rows: [{ label: say('papers.outcome'), value: cell(say(`papers.outcome.${shipment.outcome}`), shipment.outcome === 'note' ? 'strong' : 'flag') }, { label: say('papers.rules'), value: cell(say('papers.shipment.rules', { day: dayOf(shipment.issued, tongue) })) }] },
    ...(mayBeBarred(shipment) ? [{ type: 'caution', text: say('papers.outcome.mayBeBarred') } as const] : []),
    ...(shipment.reasons.length === 0 ? [{ type: 'note', text: say('papers.shipment.nothing') } as const] : []),
  ];
}

function wantedOf({ reasons }: ToldShipment, { say, locale }: Tongue): readonly Block[] {
  const asked: readonly (readonly [string, readonly string[]])[] = [
    [say('papers.shipment.toHave'), papersAsked(reasons).map((words) => words[languageOf(locale)])],
    [say('papers.shipment.toFind'), toFindOf(reasons, say)],
    [say('papers.shipment.toAsk'), [...new Set(reasons.flatMap(({ rule }) => (rule === undefined ? [] : [rule.authority[languageOf(locale)]])))]],
  ];
  return asked.filter(([, items]) => items.length > 0).flatMap(([title, items]): readonly Block[] => [{ type: 'paragraph', size: 'small', text: title }, { type: 'list', items }]);
}

function reasonsOf(shipment: ToldShipment, tongue: Tongue): readonly Block[] {
  const { say } = tongue;
  if (shipment.reasons.length === 0) return [];
  return [{
    type: 'table', strips: 1, rowHeads: true, caption: say('report.papers.reasonTable', { what: shipmentTitle(shipment, tongue) }),
    columns: [{ label: say('papers.outcome'), align: 'start', width: 1.6 }, { label: say('papers.column.material'), align: 'start', width: 2.2 }, { label: say('report.papers.column.rule'), align: 'start', width: 5 }, { label: say('report.papers.column.source'), align: 'start', width: 4 }],
    rows: shipment.reasons.map((reason) => reasonRow(reason, tongue)),
  }];
}

/** One reason in the words of a print: what it comes to, where and of what, the rule, and where it stands. */
export function reasonRow({ kind, outcome, place, material, rule, missing, wouldBe }: PaperReason, tongue: Tongue): readonly Cell[] {
  const { say, locale } = tongue;
  const where = placeNameOf(place, say, locale);
  const why = say(`papers.reason.${kind}`, { facts: missing.map((fact: FactName) => say(`field.${fact}`)).join('; '), day: rule === undefined ? '' : dayOf(rule.reviewBy, tongue), place: where });
  const days = rule === undefined ? '' : say(rule.effectiveUntil === undefined ? 'papers.reason.days' : 'papers.reason.until', { from: dayOf(rule.effectiveFrom, tongue), until: dayOf(rule.effectiveUntil ?? rule.effectiveFrom, tongue), checked: dayOf(rule.lastChecked, tongue), review: dayOf(rule.reviewBy, tongue) });
  return [
    cell(say(`papers.outcome.${outcome}`), outcome === 'note' ? 'plain' : 'flag'),
    cell(material === undefined ? where : say('papers.reason.at', { place: where, material: say(`papers.material.${material}`) })),
    cell([rule?.text[languageOf(locale)], kind === 'holds' ? undefined : why, wouldBe === undefined ? undefined : say('papers.reason.wouldBe', { outcome: say(`papers.outcome.${wouldBe}`) })].filter((part) => part !== undefined).join(' ')),
    rule === undefined ? cell('–', 'quiet') : cell(`${rule.source} (${say(`papers.seen.${rule.seen}`)}). ${rule.authority[languageOf(locale)]}. ${days}`),
  ];
}
