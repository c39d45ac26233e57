import { sumOf } from '#numerics';
import { type Issue, type Result, ok, refuse } from '#result';
import { type Millimetres, type Newtons, type NewtonsPerMillimetre, millimetres, newtonsPerMillimetre } from '#units';

/** A known load on the board and how far it went down there. */
export interface PushReading {
  readonly forceN: Newtons;
  readonly deflectionMm: Millimetres;
}

export interface PushTest {
  readonly stiffnessNPerMm: NewtonsPerMillimetre;
  /** Standard uncertainty (k = 1); absent for a single reading, which cannot contradict itself. */
  readonly stiffnessUncertaintyNPerMm?: NewtonsPerMillimetre;
  /** Standard deviation of the deflections about the line; absent for a single reading. */
  readonly residualMm?: Millimetres;
}

/**
 * Stiffness of a board from pushes: the line δ = c·F through the origin by least squares, c = ΣF·δ/ΣF², k = 1/c.
 * The loads are taken as known and the dial gauge as what scatters: s² = Σ(δ − c·F)²/(m − 1), u(c) = s/√ΣF²,
 * u(k) = u(c)/c². Millimetres, newtons. Ignores that a crowned board softens under load: push about as hard as the
 * strings do.
 *
 * Refuses readings without any load, and a board that does not give way.
 * @source JCGM-100 clause 4.2 and annex H.3
 */
export function pushTestOf(readings: readonly PushReading[]): Result<PushTest> {
  const compliance = complianceOf(readings);
  if (compliance === undefined) return refuse(noLoad('readings[0].forceN', readings[0]?.forceN));
  const { perNewton, uncertainty, residual } = compliance;
  if (perNewton <= 0) return refuse(noGiving('readings', perNewton));
  return ok({
    stiffnessNPerMm: newtonsPerMillimetre(1 / perNewton),
    ...(uncertainty === undefined ? {} : { stiffnessUncertaintyNPerMm: newtonsPerMillimetre(uncertainty / perNewton ** 2) }),
    ...(residual === undefined ? {} : { residualMm: millimetres(residual) }),
  });
}

interface Compliance {
  /** Millimetres for each newton. */
  readonly perNewton: number;
  readonly uncertainty: number | undefined;
  readonly residual: number | undefined;
}

/** The slope of deflection on force through the origin; `undefined` where no reading has a load. */
export function complianceOf(readings: readonly PushReading[]): Compliance | undefined {
  const squares = sumOf(readings.map(({ forceN }) => forceN ** 2));
  if (squares === 0) return undefined;
  const perNewton = sumOf(readings.map(({ forceN, deflectionMm }) => forceN * deflectionMm)) / squares;
  if (readings.length < 2) return { perNewton, uncertainty: undefined, residual: undefined };
  const residual = Math.sqrt(sumOf(readings.map(({ forceN, deflectionMm }) => (deflectionMm - perNewton * forceN) ** 2)) / (readings.length - 1));
  return { perNewton, uncertainty: residual / Math.sqrt(squares), residual };
}

/** Nothing was pushed. */
export const noLoad = (path: string, given: number | undefined): Issue => ({ code: 'range', path, given, allowed: 'a load other than 0 in at least one reading', params: { reason: 'noLoad' } });

/** The board went nowhere, or up when pushed down. */
export const noGiving = (path: string, given: number): Issue => ({
  code: 'unsolvable', path, given, allowed: 'deflections that follow the load; down is positive for both', params: { reason: 'boardNotGiving' },
});
