import { copperWire, steelWire } from '#materials';
import { type Issue, type Result, ok, refuse } from '#result';
import { type GramsPerMetre, type KilogramsPerCubicMetre, type Millimetres, type Ratio, gramsPerMetre, millimetres, ratio } from '#units';
import { type CoreShape, wireDensityOf } from './section.ts';

/** One layer of wrap wire. */
export interface Wrap {
  readonly wireDiameterMm: Millimetres;
  readonly densityKgM3?: KilogramsPerCubicMetre;
}

/** A wrap known only by what the micrometer says over all. */
export interface MeasuredWrap {
  readonly overallDiameterMm: Millimetres;
  /** Share of the ring that is metal: π/4 for round wire laid close, up to about 0.9 where it is pulled tight and flattens. */
  readonly packing?: Ratio;
  readonly wrapDensityKgM3?: KilogramsPerCubicMetre;
}

interface Core {
  readonly coreDiameterMm: Millimetres;
  readonly coreShape?: CoreShape;
  readonly coreDensityKgM3?: KilogramsPerCubicMetre;
}

/** A core with its wraps, inner first, or with a measured overall diameter. */
export type Winding = Core & ({ readonly wraps: readonly Wrap[] } | MeasuredWrap);

export interface WindingFigures {
  readonly linearDensityGPerM: GramsPerMetre;
  readonly overallDiameterMm: Millimetres;
  /** The core alone, and core with the first wrap alone. */
  readonly coreDensityGPerM: GramsPerMetre;
  readonly firstWrapDensityGPerM: GramsPerMetre;
}

/** Share of a ring that close-laid round wire fills. @source OWN a turn of length π·(D + d) on a pitch of d */
export const CLOSE_PACKING = ratio(Math.PI / 4);

/** Wrap wire thinner than this is not drawn for strings; mm. @source PRACTICE */
export const THINNEST_WRAP_MM = 0.05;

/**
 * Mass of a metre of wound string, and what it measures over all.
 * μ = ρ·A_core + Σ ρ_w·π²·d_w·(D_in + d_w)/4, D_in growing by 2·d_w with each wrap; from a measured D:
 * μ = ρ·A_core + ρ_w·p·(π/4)·(D² − d_c²). g/m, mm, kg/m³.
 * Holds for round wire laid close; a hexagonal core is wrapped as a round one of its size across flats, which leaves out
 * the corners (they add up to a tenth of the inner wrap's length). @source OWN
 */
export function windingFiguresOf(winding: Winding): Result<WindingFigures> {
  const { coreDiameterMm, coreShape = 'round', coreDensityKgM3 = steelWire.densityKgM3.value } = winding;
  const core = wireDensityOf({ diameterMm: coreDiameterMm, shape: coreShape, densityKgM3: coreDensityKgM3 });
  if ('wraps' in winding) return ok(fromWraps(coreDiameterMm, core, winding.wraps));
  const fault = measuredFault(winding);
  if (fault !== undefined) return refuse(fault);
  const { overallDiameterMm, packing = CLOSE_PACKING, wrapDensityKgM3 = copperWire.densityKgM3.value } = winding;
  const linearDensityGPerM = gramsPerMetre(core + wrapDensityKgM3 * packing * (Math.PI / 4) * (overallDiameterMm ** 2 - coreDiameterMm ** 2) * 1e-3);
  return ok({ linearDensityGPerM, overallDiameterMm, coreDensityGPerM: core, firstWrapDensityGPerM: linearDensityGPerM });
}

function fromWraps(coreDiameterMm: Millimetres, core: GramsPerMetre, wraps: readonly Wrap[]): WindingFigures {
  let inner: number = coreDiameterMm;
  const masses = [core];
  for (const { wireDiameterMm, densityKgM3 = copperWire.densityKgM3.value } of wraps) {
    masses.push(gramsPerMetre((masses.at(-1) ?? 0) + (densityKgM3 * Math.PI ** 2 * wireDiameterMm * (inner + wireDiameterMm) * 1e-3) / 4));
    inner += 2 * wireDiameterMm;
  }
  return { linearDensityGPerM: masses.at(-1) ?? core, overallDiameterMm: millimetres(inner), coreDensityGPerM: core, firstWrapDensityGPerM: masses[1] ?? core };
}

function measuredFault({ coreDiameterMm, overallDiameterMm }: Core & MeasuredWrap): Issue | undefined {
  if (overallDiameterMm <= coreDiameterMm) {
    return { code: 'order', path: 'overallDiameterMm', given: overallDiameterMm, allowed: `more than the core, ${String(coreDiameterMm)}`, params: { reason: 'overallBelowCore', above: coreDiameterMm } };
  }
  const least = coreDiameterMm + 2 * THINNEST_WRAP_MM;
  if (overallDiameterMm >= least) return undefined;
  return { code: 'range', path: 'overallDiameterMm', given: overallDiameterMm, allowed: `at least ${String(least)}, the core and a wrap of ${String(THINNEST_WRAP_MM)} mm`, params: { reason: 'wrapTooThin', min: least, wrap: THINNEST_WRAP_MM } };
}
