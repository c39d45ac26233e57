import type { Issue } from '#result';
import { type Millimetres, millimetres } from '#units';
import type { Lead } from './lead.ts';

/** How far a key reaches from its balance point; a side that is not known refuses nothing. */
export interface KeyReach {
  readonly keyFrontLengthMm?: Millimetres | undefined;
  readonly keyBackLengthMm?: Millimetres | undefined;
}

/** Decimals of a millimetre that a distance is told with: less is rounding of the machine. */
const NANOMETRES = 6;

/** Issues of leads that do not lie on the key with their whole hole, each with how far it is out. */
export function leadsOffKey(leads: readonly Lead[], { keyFrontLengthMm = millimetres(Infinity), keyBackLengthMm = millimetres(Infinity) }: KeyReach): readonly Issue[] {
  return leads.flatMap(({ positionMm, diameterMm }, index) => {
    const [min, max] = [diameterMm / 2 - keyBackLengthMm, keyFrontLengthMm - diameterMm / 2];
    const byMm = Number(Math.max(min - positionMm, positionMm - max).toFixed(NANOMETRES));
    if (byMm <= 0) return [];
    return [{
      code: 'range', path: `leads[${String(index)}].positionMm`, given: positionMm,
      allowed: `${limits(min, max)}, so that the whole hole lies on the key; it is ${String(byMm)} mm off`,
      params: { reason: 'offKey', byMm, ...(Number.isFinite(min) ? { min } : {}), ...(Number.isFinite(max) ? { max } : {}) },
    }];
  });
}

/** Issues of leads drilled out as wide as they are. */
export function wideBores(leads: readonly Lead[], list = 'leads'): readonly Issue[] {
  return leads.flatMap(({ boreMm, diameterMm }, index): readonly Issue[] => (boreMm === undefined || boreMm < diameterMm ? [] : [{
    code: 'range', path: `${list}[${String(index)}].boreMm`, given: boreMm, allowed: `less than its diameter, ${String(diameterMm)}`, params: { below: diameterMm },
  }]));
}

function limits(min: number, max: number): string {
  if (Number.isFinite(min) && Number.isFinite(max)) return `${String(min)} to ${String(max)}`;
  return Number.isFinite(max) ? `at most ${String(max)}` : `at least ${String(min)}`;
}
