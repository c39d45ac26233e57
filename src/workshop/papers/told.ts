import type { ShopCard } from '../shop/records.ts';
import { type KnownMass, massOf } from './ivory.ts';
import type { PaperHistory, PaperMaterial, PaperRecord } from './records.ts';
import { type JudgedShipment, historyOf, judgeShipment, materialsOf, ruleBookOf, shipmentsOf } from './shipment.ts';

/** Everything a print tells of the papers of a piano. */
export interface PapersTold {
  readonly materials: readonly (PaperMaterial & { readonly mass: KnownMass | undefined })[];
  readonly history: PaperHistory | undefined;
  /** Called off ones left out. */
  readonly shipments: readonly (JudgedShipment['shipment'] & Pick<JudgedShipment, 'outcome' | 'reasons' | 'issued'>)[];
}

/** What is told of the papers of a piano, from its records and the book of the shop; nothing where nothing was noted. Persons are left out. */
export function papersToldOf(pianoId: string, records: readonly PaperRecord[], cards: readonly ShopCard[]): PapersTold | undefined {
  const rules = ruleBookOf(cards);
  const shipments = shipmentsOf(cards, pianoId).filter(({ status }) => status !== 'cancelled').map((shipment) => {
    const { outcome, reasons, issued } = judgeShipment(shipment, records, rules);
    return { ...shipment, person: null, details: null, outcome, reasons, issued };
  });
  if (records.length === 0 && shipments.length === 0) return undefined;
  return { materials: materialsOf(records).map((material) => ({ ...material, mass: massOf(material) })), history: historyOf(records), shipments };
}
