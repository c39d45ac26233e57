import type { Millimetres } from '#units';
import { type RegulationBase, aftertouchOf, blowFor, dipFor } from '../regulation.ts';

/** What is read and asked of the regulation of one key. */
export const regulationNames = ['keyLevelMm', 'sharpHeightMm', 'blowMm', 'letOffMm', 'dropMm', 'dipMm', 'aftertouchMm', 'checkMm'] as const;
export type RegulationName = (typeof regulationNames)[number];
export type RegulationFigures = Partial<Readonly<Record<RegulationName, Millimetres>>>;

/** The one of blow, dip and aftertouch that follows from the other two. */
export type RegulationFloat = 'dip' | 'blow' | 'aftertouch';

/** What one colour of key turns with; lever arms as regulated, ratio by distance. */
export interface RegulationLevers extends Omit<RegulationBase, 'letOffMm'> {
  /** Rise of the hammer for each millimetre the capstan is turned up. */
  readonly hammerPerCapstan?: number;
  /** Balance point to the back end of the key. */
  readonly keyBackLengthMm?: Millimetres;
}

/** Where what is asked does not fit together: the aftertouch it gives, and what would give the one asked. */
export interface RegulationMisfit {
  readonly givenAftertouchMm: Millimetres;
  readonly dipMm: Millimetres;
  readonly blowMm: Millimetres;
}

/** What is asked of the keys of one register and colour. */
export interface AskedRegulation {
  readonly figures: RegulationFigures;
  /** The figure that was worked out from the other two. */
  readonly worked?: 'dipMm' | 'blowMm' | 'aftertouchMm';
  readonly misfit?: RegulationMisfit;
}

const NAME_OF = { dip: 'dipMm', blow: 'blowMm', aftertouch: 'aftertouchMm' } as const satisfies Readonly<Record<RegulationFloat, RegulationName>>;

/**
 * What is asked of one register and colour: as stated, the one that floats worked out from the other two by the ratio by
 * distance. Without levers, let-off or one of the two, what floats is not asked at all. Where none floats, the three may not
 * fit together: by how much is told, judged to `toleranceMm` of aftertouch.
 * @source OWN see {@link aftertouchOf}
 */
export function askedRegulationOf(stated: RegulationFigures, { floats, levers, toleranceMm }: { readonly floats: RegulationFloat | undefined; readonly levers: RegulationLevers | undefined; readonly toleranceMm: number }): AskedRegulation {
  if (floats === undefined) return { figures: stated, ...misfitOf(stated, levers, toleranceMm) };
  const name = NAME_OF[floats];
  const { [name]: _, ...fixed } = stated;
  const worked = workedOf(floats, fixed, levers);
  return worked === undefined ? { figures: fixed } : { figures: { ...fixed, [name]: worked }, worked: name };
}

function workedOf(floats: RegulationFloat, { blowMm, dipMm, aftertouchMm, letOffMm }: RegulationFigures, levers: RegulationLevers | undefined): Millimetres | undefined {
  if (levers === undefined || letOffMm === undefined) return undefined;
  const base = { ...levers, letOffMm };
  switch (floats) {
    case 'dip': return blowMm === undefined || aftertouchMm === undefined ? undefined : dipFor(base, { blowMm, aftertouchMm });
    case 'blow': return dipMm === undefined || aftertouchMm === undefined ? undefined : blowFor(base, { dipMm, aftertouchMm });
    case 'aftertouch': return blowMm === undefined || dipMm === undefined ? undefined : aftertouchOf(base, { blowMm, dipMm });
  }
}

/** How far the aftertouch that blow, let-off and dip give is from the one asked; nothing where it is within the tolerance or not known. @source OWN */
export function misfitOf({ blowMm, dipMm, aftertouchMm, letOffMm }: RegulationFigures, levers: RegulationLevers | undefined, toleranceMm: number): { readonly misfit?: RegulationMisfit } {
  if (levers === undefined || letOffMm === undefined || blowMm === undefined || dipMm === undefined || aftertouchMm === undefined) return {};
  const base = { ...levers, letOffMm };
  const givenAftertouchMm = aftertouchOf(base, { blowMm, dipMm });
  if (Math.abs(givenAftertouchMm - aftertouchMm) <= toleranceMm + HAIR_MM) return {};
  return { misfit: { givenAftertouchMm, dipMm: dipFor(base, { blowMm, aftertouchMm }), blowMm: blowFor(base, { dipMm, aftertouchMm }) } };
}

/** What is left of sums of decimals: nothing is outside by less. */
export const HAIR_MM = 1e-9;
