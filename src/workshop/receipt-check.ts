import { type Result, all, map } from '#result';
import { type NoteQuestion, type ScaleWire, noteFiguresOf } from '#strings';
import { type Cents, type Millimetres, type Newtons, cents, newtons } from '#units';

/** A delivered wound string as measured with a micrometer. */
export interface DeliveredString {
  readonly coreDiameterMm: Millimetres;
  readonly overallDiameterMm: Millimetres;
}

/** How a delivered string differs from the one ordered. */
export interface ReceiptCheck {
  readonly orderedN: Newtons;
  /** Tension it takes at the same pitch and length. */
  readonly deliveredN: Newtons;
  readonly deviationN: Newtons;
  /** How far off it would sound at the tension ordered; below nought is flat. */
  readonly deviationCt: Cents;
}

/**
 * A delivered wound string against the order: both at the pitch and length of the note, bare ends included.
 * ΔT = T_delivered − T_ordered; at the ordered tension, f ∝ √T gives 600·log2(T_ordered/T_delivered) cents, which leaves the
 * stiffness of the string aside (it changes little between the two). The measured string is taken as one even wrap.
 * Refuses sizes that make no string, by field.
 * @source MERSENNE-1636 @source WITTRICK-WILLIAMS-1971
 */
export function receiptCheckOf(question: NoteQuestion & { readonly wire: Extract<ScaleWire, { readonly kind: 'wound' }> }, delivered: DeliveredString): Result<ReceiptCheck> {
  const { wire } = question;
  const wrapDensityKgM3 = 'wraps' in wire ? wire.wraps.at(-1)?.densityKgM3 : wire.wrapDensityKgM3;
  const measured: ScaleWire = {
    kind: 'wound', ...delivered,
    ...(wire.coreShape === undefined ? {} : { coreShape: wire.coreShape }), ...(wire.coreDensityKgM3 === undefined ? {} : { coreDensityKgM3: wire.coreDensityKgM3 }),
    ...(wrapDensityKgM3 === undefined ? {} : { wrapDensityKgM3 }), ...('wraps' in wire || wire.packing === undefined ? {} : { packing: wire.packing }),
    ...(wire.bareFrontMm === undefined ? {} : { bareFrontMm: wire.bareFrontMm }), ...(wire.bareRearMm === undefined ? {} : { bareRearMm: wire.bareRearMm }),
  };
  return map(all([noteFiguresOf(question), noteFiguresOf({ ...question, wire: measured })]), ([ordered, found]) => {
    const [orderedN, deliveredN] = [ordered?.tensionN ?? newtons(0), found?.tensionN ?? newtons(0)];
    return { orderedN, deliveredN, deviationN: newtons(deliveredN - orderedN), deviationCt: cents(600 * Math.log2(orderedN / deliveredN)) };
  });
}
