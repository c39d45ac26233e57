import { type Issue, type Result, ok, refuse } from '#result';
import { type NewtonsPerMillimetre, type Percent, newtonsPerMillimetre, percent } from '#units';
import { type BoardStiffness, solveBoard } from './board.ts';
import { type PushReading, complianceOf, noGiving, noLoad } from './push-test.ts';

/** A load at one station and how far the board went down at the same or another one. Stations count from 1. */
export interface InfluenceReading extends PushReading {
  readonly pushedStation: number;
  readonly readStation: number;
}

export interface Influence {
  readonly stiffnessNPerMm: BoardStiffness;
  /** Largest difference between pushing here and reading there and the other way round, against both own compliances. */
  readonly asymmetryPct: Percent;
  /** Where that difference is; absent where no pair was taken both ways. */
  readonly asymmetryStations?: readonly [number, number];
  /** Pairs taken one way only and trusted to reciprocity. */
  readonly uncheckedPairs: number;
}

/** Compliance by station pushed and station read; `undefined` where it was not taken. */
type Taken = readonly (readonly (number | undefined)[])[];

/**
 * Stiffness matrix of a board from a list of influence. Each pair’s readings give a compliance C_ij = ΣF·δ/ΣF²; by
 * reciprocity C_ij = C_ji, so both are averaged, or the one taken stands for the other; K = C⁻¹.
 * The asymmetry |C_ij − C_ji|/√(C_ii·C_jj) tells how well the readings agree: a percent or two is a good dial gauge.
 *
 * Refuses pairs nobody pushed, by name, and readings that no board could give.
 * @source MAXWELL-1864
 */
export function influenceOf(stations: number, readings: readonly InfluenceReading[]): Result<Influence> {
  const strangers = strangerIssuesOf(stations, readings);
  if (strangers.length > 0) return refuse(...strangers);
  const taken = takenOf(stations, readings);
  const missing = missingIssuesOf(taken);
  if (missing.length > 0) return refuse(...missing);
  const compliance = taken.map((row, i) => row.map((entry, j) => meanOfBoth(entry, taken[j]?.[i])));
  const stiff = compliance.findIndex((row, i) => (row[i] ?? 0) <= 0);
  if (stiff >= 0) return refuse(noGiving(`readings[${String(readings.findIndex(({ pushedStation, readStation }) => pushedStation === stiff + 1 && readStation === stiff + 1))}].deflectionMm`, compliance[stiff]?.[stiff] ?? 0));
  const inverse = inverseOf(compliance);
  if (inverse === undefined) return refuse({ code: 'unsolvable', path: 'readings', given: `${String(readings.length)} readings`, allowed: 'readings of which none gives way more elsewhere than where it is pushed', params: { reason: 'influenceIndefinite' } });
  return ok({ stiffnessNPerMm: inverse, ...asymmetryOf(taken) });
}

function strangerIssuesOf(stations: number, readings: readonly InfluenceReading[]): readonly Issue[] {
  return readings.flatMap((reading, index) => [
    ...(['pushedStation', 'readStation'] as const).flatMap((name): readonly Issue[] =>
      (reading[name] <= stations ? [] : [{ code: 'range', path: `readings[${String(index)}].${name}`, given: reading[name], allowed: `1 to ${String(stations)}, the stations there are`, params: { min: 1, max: stations } }])),
    ...(reading.forceN === 0 ? [noLoad(`readings[${String(index)}].forceN`, reading.forceN)] : []),
  ]);
}

function takenOf(stations: number, readings: readonly InfluenceReading[]): Taken {
  const at = Array.from({ length: stations }, (_, index) => index + 1);
  return at.map((pushed) => at.map((read) => complianceOf(readings.filter(({ pushedStation, readStation }) => pushedStation === pushed && readStation === read))?.perNewton));
}

function missingIssuesOf(taken: Taken): readonly Issue[] {
  return taken.flatMap((row, i) => row.slice(0, i + 1).flatMap((entry, j): readonly Issue[] => {
    if (entry !== undefined || taken[j]?.[i] !== undefined) return [];
    return [{ code: 'required', path: 'readings', given: undefined, allowed: `a push at station ${String(j + 1)} read at station ${String(i + 1)}, or the other way round`, params: { reason: 'influencePair', pushed: j + 1, read: i + 1 } }];
  }));
}

const meanOfBoth = (one: number | undefined, other: number | undefined): number => ((one ?? other ?? 0) + (other ?? one ?? 0)) / 2;

function inverseOf(matrix: readonly (readonly number[])[]): BoardStiffness | undefined {
  const columns = matrix.map((_, at) => solveBoard(matrix, Float64Array.from(matrix, (__, index) => (index === at ? 1 : 0))));
  if (columns.some((column) => column === undefined)) return undefined;
  return columns.map((column, i): readonly NewtonsPerMillimetre[] => columns.map((other, j) => newtonsPerMillimetre(((column?.[j] ?? 0) + (other?.[i] ?? 0)) / 2)));
}

function asymmetryOf(taken: Taken): Omit<Influence, 'stiffnessNPerMm'> {
  let worst: { readonly share: number; readonly pair: readonly [number, number] } | undefined;
  let uncheckedPairs = 0;
  for (const [i, row] of taken.entries()) {
    for (const [j, entry] of row.slice(0, i).entries()) {
      const mirror = taken[j]?.[i];
      if (entry === undefined || mirror === undefined) { uncheckedPairs += 1; continue; }
      const share = Math.abs(entry - mirror) / Math.sqrt((row[i] ?? 0) * (taken[j]?.[j] ?? 0));
      if (worst === undefined || share > worst.share) worst = { share, pair: [j + 1, i + 1] };
    }
  }
  return { asymmetryPct: percent(100 * (worst?.share ?? 0)), uncheckedPairs, ...(worst === undefined ? {} : { asymmetryStations: worst.pair }) };
}
