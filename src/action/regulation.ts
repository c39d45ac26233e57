import { type Millimetres, type Ratio, millimetres } from '#units';

/** What of a regulation stays fixed whatever floats. */
export interface RegulationBase {
  /** Hammer to string where the jack lets go. */
  readonly letOffMm: Millimetres;
  /** Action ratio by distance, never by weights. */
  readonly distanceRatio: Ratio;
  /** Balance point to the front edge, where dip and aftertouch are read. */
  readonly keyEdgeMm: Millimetres;
  /** Balance point to the measuring point, where the ratio holds. */
  readonly keyFrontMm: Millimetres;
  /** Key travel at the measuring point that felt and lost motion take before the hammer moves. */
  readonly lossMm: Millimetres;
}

/** A regulation whole: blow at the hammer; dip and aftertouch at the front edge. */
export interface Regulation {
  readonly blowMm: Millimetres;
  readonly dipMm: Millimetres;
  /** Below nought: the key lands before the jack lets go, and the hammer blocks. */
  readonly aftertouchMm: Millimetres;
}

/**
 * Key travel to let-off at the measuring point.
 * y = (blow − let-off)/R_d + loss; mm.
 * @source OWN the ratio by distance taken as constant over the stroke
 */
export function travelToLetOffOf({ blowMm, letOffMm, distanceRatio, lossMm }: Pick<RegulationBase, 'letOffMm' | 'distanceRatio' | 'lossMm'> & Pick<Regulation, 'blowMm'>): Millimetres {
  return millimetres((blowMm - letOffMm) / distanceRatio + lossMm);
}

/** Aftertouch that blow and dip leave: dip − y·a_edge/a, at the front edge, mm. @source OWN */
export function aftertouchOf(base: RegulationBase, { blowMm, dipMm }: Pick<Regulation, 'blowMm' | 'dipMm'>): Millimetres {
  return millimetres(dipMm - travelToLetOffOf({ ...base, blowMm }) * edgeFactor(base));
}

/** Dip that blow and aftertouch ask for: aftertouch + y·a_edge/a, at the front edge, mm. @source OWN */
export function dipFor(base: RegulationBase, { blowMm, aftertouchMm }: Pick<Regulation, 'blowMm' | 'aftertouchMm'>): Millimetres {
  return millimetres(aftertouchMm + travelToLetOffOf({ ...base, blowMm }) * edgeFactor(base));
}

/**
 * Blow that dip and aftertouch allow: let-off + R_d·((dip − aftertouch)·a/a_edge − loss), mm.
 * Below let-off when the dip is too small for the aftertouch: no hammer travel is left.
 * @source OWN
 */
export function blowFor(base: RegulationBase, { dipMm, aftertouchMm }: Pick<Regulation, 'dipMm' | 'aftertouchMm'>): Millimetres {
  return millimetres(base.letOffMm + base.distanceRatio * ((dipMm - aftertouchMm) / edgeFactor(base) - base.lossMm));
}

const edgeFactor = ({ keyEdgeMm, keyFrontMm }: RegulationBase): number => keyEdgeMm / keyFrontMm;
