import { type SymmetricBands, solveSymmetricBanded } from '#numerics';
import { type Issue, type Result, ok, refuse } from '#result';
import type { NewtonsPerMillimetre } from '#units';

/** Stiffness of a board at its stations: square, symmetric, positive definite. One station: the whole board as one spring. */
export type BoardStiffness = readonly (readonly NewtonsPerMillimetre[])[];

/** Two halves of a symmetric matrix may differ by this share of the geometric mean of their diagonals: printed digits, no more. */
const SYMMETRY = 1e-6;

/**
 * Holds a matrix of stiffness to what a board at rest can be: square, symmetric (Maxwell’s reciprocity), and positive
 * definite, since no push may gain energy. Refuses by entry; the two halves are then averaged.
 * @source MAXWELL-1864
 */
export function boardOf(matrix: BoardStiffness, path: string): Result<BoardStiffness> {
  const shape = shapeIssuesOf(matrix, path);
  if (shape.length > 0) return refuse(...shape);
  const oneSided = asymmetryIssuesOf(matrix, path);
  if (oneSided.length > 0) return refuse(...oneSided);
  const symmetric = matrix.map((row, i) => row.map((entry, j) => ((entry + (matrix[j]?.[i] ?? entry)) / 2) as NewtonsPerMillimetre));
  const bad = firstIndefiniteRowOf(symmetric);
  if (bad === undefined) return ok(symmetric);
  return refuse({
    code: 'unsolvable', path: `${path}[${String(bad)}]`, given: matrix[bad]?.[bad],
    allowed: 'a positive definite matrix: with this row some push would gain energy', params: { reason: 'boardIndefinite', row: bad + 1 },
  });
}

function shapeIssuesOf(matrix: BoardStiffness, path: string): readonly Issue[] {
  const size = matrix.length;
  return matrix.flatMap((row, i): readonly Issue[] => (row.length === size ? [] : [{
    code: 'length', path: `${path}[${String(i)}]`, given: row.length, allowed: `${String(size)} entries, as many as there are rows`, params: { reason: 'boardSquare', rows: size },
  }]));
}

function asymmetryIssuesOf(matrix: BoardStiffness, path: string): readonly Issue[] {
  return matrix.flatMap((row, i) => row.slice(0, i).flatMap((entry, j): readonly Issue[] => {
    const mirror = matrix[j]?.[i] ?? Number.NaN;
    const scale = Math.sqrt(Math.abs((row[i] ?? 0) * (matrix[j]?.[j] ?? 0)));
    if (Math.abs(entry - mirror) <= SYMMETRY * scale) return [];
    return [{ code: 'range', path: `${path}[${String(i)}][${String(j)}]`, given: entry, allowed: `${String(mirror)}, the entry mirrored in the diagonal`, params: { reason: 'boardAsymmetric', mirror } }];
  }));
}

/** The first row by which the leading block stops being positive definite, by halving: a block inside a definite one is definite. */
function firstIndefiniteRowOf(matrix: BoardStiffness): number | undefined {
  const definite = (size: number): boolean => solveBoard(matrix.slice(0, size).map((row) => row.slice(0, size)), new Float64Array(size)) !== undefined;
  let good = 0;
  let bad = matrix.length;
  if (definite(bad)) return undefined;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (definite(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** Solves K·x = f for a symmetric matrix, `undefined` where it is not positive definite. */
export function solveBoard(matrix: readonly ArrayLike<number>[], rightSide: Float64Array): Float64Array | undefined {
  return solveSymmetricBanded(bandsOf(matrix), rightSide);
}

/** A full symmetric matrix as bands: as many as it has rows. */
function bandsOf(matrix: readonly ArrayLike<number>[]): SymmetricBands {
  return matrix.map((_, offset) => Float64Array.from(matrix, (__, column) => matrix[column + offset]?.[column] ?? 0));
}
