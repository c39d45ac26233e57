import { type WireSize, wireSizesOf } from '#materials';
import type { ScaleTerms } from '#instrument';
import { type OrderLine, type OrderedString, type WireAllowances, wireOrderOf } from '#strings';
import { type Grams, type Millimetres, grams, millimetres } from '#units';
import { type OrderedNote, allowancesOf } from './ordered-notes.ts';
import { type OrderTerms, termOf } from './terms.ts';

/** One size of wire to buy, and what its length is made of. */
export interface WireToBuy extends Pick<OrderLine, 'use' | 'diameterMm' | 'shape' | 'densityKgM3' | 'strings'> {
  /** Gauge number in the series stated; absent where none is, or the size is not of it. */
  readonly gauge?: number;
  /** Speaking lengths; of a wrap, the wire wound on. */
  readonly speakingMm: Millimetres;
  /** Front and back lengths, as far as known. */
  readonly beyondMm: Millimetres;
  /** Turns on pins, loops, spare. */
  readonly endsMm: Millimetres;
  readonly wasteMm: Millimetres;
  readonly totalMm: Millimetres;
  readonly massG: Grams;
  /** True where front or back lengths are missing in it: there is more to buy. */
  readonly isAtLeast: boolean;
}

const NO_ALLOWANCES: WireAllowances = { pinTurns: 0, pinDiameterMm: millimetres(0), hitchMm: millimetres(0), spareMm: millimetres(0) };
const NOTHING = millimetres(0);

/** Diameters this close are one size; mm. @source PRACTICE */
const SAME_MM = 1e-3;

/**
 * Wire to buy by use and size, thin to stout: speaking + front and back + ends, and waste on top; mass ρ·A·length.
 * Takes only the notes whose strings are wholly known. @source OWN
 */
export function wireToBuyOf(notes: readonly OrderedNote[], orderTerms: OrderTerms, series: ScaleTerms['wireSeries']): readonly WireToBuy[] {
  const strings = notes.flatMap(orderedOf);
  const open = new Set(linesOf(strings.filter(({ isOpen }) => isOpen)).map(nameOf));
  const [full, run, net] = [linesOf(strings, allowancesOf(orderTerms)), linesOf(strings), linesOf(strings.map((string) => ({ ...string, frontLengthMm: NOTHING, backLengthMm: NOTHING })))];
  const share = (termOf(orderTerms, 'wastePct') ?? 0) / 100;
  return full.map((line, index) => {
    const { use, diameterMm, shape, densityKgM3, lengthMm, massG } = line;
    const [speaking, ran] = [net[index]?.lengthMm ?? NOTHING, run[index]?.lengthMm ?? NOTHING];
    const gauge = shape === 'round' && use !== 'wrap' ? gaugeOf(diameterMm, series) : undefined;
    return {
      use, diameterMm, shape, densityKgM3, strings: line.strings, ...(gauge !== undefined && { gauge }),
      speakingMm: speaking, beyondMm: millimetres(ran - speaking), endsMm: millimetres(lengthMm - ran), wasteMm: millimetres(lengthMm * share),
      totalMm: millimetres(lengthMm * (1 + share)), massG: grams(massG * (1 + share)), isAtLeast: use !== 'wrap' && open.has(nameOf(line)),
    };
  });
}

/** True where everything a string is made of is known. */
export function isOrderable({ wire, strings, speakingLengthMm, issues }: OrderedNote): boolean {
  return wire !== undefined && strings !== undefined && speakingLengthMm !== undefined && issues.length === 0 && !('overallDiameterMm' in wire);
}

/** Gauge number of a size in a series; `undefined` where none is stated, or the size is not of it. */
export function gaugeOf(diameterMm: Millimetres, series: ScaleTerms['wireSeries']): WireSize['gauge'] | undefined {
  return series === 'inch' || series === 'metric' ? wireSizesOf(series).find((size) => Math.abs(size.diameterMm - diameterMm) < SAME_MM)?.gauge : undefined;
}

type ToOrder = OrderedString & { readonly isOpen: boolean };

function orderedOf(note: OrderedNote): readonly ToOrder[] {
  const { wire, strings, speakingLengthMm, frontLengthMm, backLengthMm } = note;
  if (!isOrderable(note) || wire === undefined || strings === undefined || speakingLengthMm === undefined) return [];
  return [{ ...wire, count: strings, speakingLengthMm, frontLengthMm: frontLengthMm ?? NOTHING, backLengthMm: backLengthMm ?? NOTHING, isOpen: frontLengthMm === undefined || backLengthMm === undefined }];
}

/** @throws Error for a string that cannot be ordered: those were left out before. */
function linesOf(strings: readonly OrderedString[], allowances = NO_ALLOWANCES): readonly OrderLine[] {
  const lines = wireOrderOf(strings, allowances);
  if (!lines.ok) throw new Error(`an order line that is none: ${lines.issues.map(({ path, allowed }) => `${path} ${allowed}`).join('; ')}`);
  return lines.value;
}

const nameOf = ({ use, shape, diameterMm, densityKgM3 }: OrderLine): string => [use, shape, diameterMm, densityKgM3].join(' ');
