import { BLOCK, type Path, type Row, changeCost, stepCost } from './row.ts';

/** For each pair of places in rows i − 1 and i: the least cost of all terms that end above row i. Index: place below × count + place. */
export type CostToGo = readonly Float64Array[];

/**
 * The exact dynamic programme over the pair of choices on two neighbouring notes, from the top down:
 * W_i(j, l) = min_m [W_{i+1}(l, m) + u(m) + p(l, m) + Σ w·(q_j − 2·q_l + q_m)²].
 * Whole blocks of m are passed over when their least W + u + p and the distance of their q from 2·q_l − q_j cannot better
 * what is known; nothing else is left out. Yields the rows done. `unaries` stand in for the rows' own.
 * @source BELLMAN-1957
 */
export function* costToGo(rows: readonly Row[], unaries: readonly Float64Array[]): Generator<number, CostToGo> {
  const toGo: Float64Array[] = rows.map(() => new Float64Array(0));
  const top = rows.length - 1;
  toGo[top] = new Float64Array((rows[top - 1]?.count ?? 1) * (rows[top]?.count ?? 0));
  for (let i = top - 1; i >= 1; i -= 1) {
    const [lower, here, upper, unary, above] = [rows[i - 1], rows[i], rows[i + 1], unaries[i + 1], toGo[i + 1]];
    if (lower === undefined || here === undefined || upper === undefined || unary === undefined || above === undefined) break;
    toGo[i] = stageOf(lower, here, upper, unary, above);
    yield top - i;
  }
  return toGo;
}

/** What is needed to find the best m for one l: W + u + p of each m, and its scaled columns. */
interface Stage {
  readonly rest: Float64Array;
  readonly least: Float64Array;
  /** Blocks by their least W + u + p. */
  readonly order: Uint16Array;
  readonly t: Float64Array;
  readonly b: Float64Array;
  readonly z: Float64Array;
  /** Lowest and highest of t, b and z in each block: six in a row. */
  readonly spans: Float64Array;
}

function stageOf(lower: Row, here: Row, upper: Row, unary: Float64Array, above: Float64Array): Float64Array {
  const result = new Float64Array(lower.count * here.count);
  const [low, mid, up] = [scaled(lower, upper), scaled(here, upper), scaled(upper, upper)];
  const blocks = Math.ceil(upper.count / BLOCK);
  const stage: Stage = { rest: new Float64Array(upper.count), least: new Float64Array(blocks), order: new Uint16Array(blocks), ...up, spans: spansOf(up) };
  for (let l = 0; l < here.count; l += 1) {
    fillRest(stage, upper, here.sizes[l] as number, unary, above.subarray(l * upper.count, (l + 1) * upper.count));
    const t = 2 * (mid.t[l] as number);
    const b = 2 * (mid.b[l] as number);
    const z = 2 * (mid.z[l] as number);
    let m = 0;
    for (let j = 0; j < lower.count; j += 1) {
      const x = t - (low.t[j] as number);
      const y = b - (low.b[j] as number);
      const w = z - (low.z[j] as number);
      m = bestOf(stage, x, y, w, m);
      result[j * here.count + l] = costAt(stage, x, y, w, m);
    }
  }
  return result;
}

/** The columns of a row times the roots of the weights, so that squares need no factor. */
function scaled({ features: [t, b, z] }: Row, { weights: [wt, wb, wz] }: Row): Pick<Stage, 't' | 'b' | 'z'> {
  const by = (weight: number) => (value: number) => value * Math.sqrt(weight);
  return { t: t.map(by(wt)), b: b.map(by(wb)), z: z.map(by(wz)) };
}

function spansOf({ t, b, z }: Pick<Stage, 't' | 'b' | 'z'>): Float64Array {
  const starts = Array.from({ length: Math.ceil(t.length / BLOCK) }, (_, block) => block * BLOCK);
  return Float64Array.from(starts.flatMap((start) => [t, b, z].flatMap((column) => {
    const part = column.subarray(start, start + BLOCK);
    return [Math.min(...part), Math.max(...part)];
  })));
}

function fillRest({ rest, least, order }: Stage, upper: Row, size: number, unary: Float64Array, above: Float64Array): void {
  least.fill(Infinity);
  for (let m = 0; m < rest.length; m += 1) {
    const value = (above[m] as number) + (unary[m] as number) + changeCost(upper, size, upper.sizes[m] as number);
    rest[m] = value;
    const block = (m / BLOCK) | 0;
    if (value < (least[block] as number)) least[block] = value;
  }
  order.set([...least.keys()].sort((a, b) => (least[a] as number) - (least[b] as number)));
}

function costAt({ rest, t, b, z }: Stage, x: number, y: number, w: number, m: number): number {
  const p = (t[m] as number) - x;
  const q = (b[m] as number) - y;
  const r = (z[m] as number) - w;
  return (rest[m] as number) + p * p + q * q + r * r;
}

/** The m of least cost, beginning at a guess. */
function bestOf(stage: Stage, x: number, y: number, w: number, guess: number): number {
  let found = guess;
  let best = costAt(stage, x, y, w, guess);
  for (let turn = 0; turn < stage.order.length; turn += 1) {
    const block = stage.order[turn] as number;
    const base = stage.least[block] as number;
    if (base >= best) break;
    if (base + apart(stage.spans, 6 * block, x, y, w) >= best) continue;
    const end = Math.min(stage.rest.length, (block + 1) * BLOCK);
    for (let m = block * BLOCK; m < end; m += 1) {
      const cost = costAt(stage, x, y, w, m);
      if (cost < best) {
        best = cost;
        found = m;
      }
    }
  }
  return found;
}

/** Squared distance of a point from the box of a block. */
function apart(spans: Float64Array, at: number, x: number, y: number, w: number): number {
  const p = Math.max((spans[at] as number) - x, x - (spans[at + 1] as number), 0);
  const q = Math.max((spans[at + 2] as number) - y, y - (spans[at + 3] as number), 0);
  const r = Math.max((spans[at + 4] as number) - w, w - (spans[at + 5] as number), 0);
  return p * p + q * q + r * r;
}

/** The way of least cost through the rows, by the costs to go. */
export function cheapestPath(rows: readonly Row[], unaries: readonly Float64Array[], toGo: CostToGo): Path {
  const path: Path = new Int32Array(rows.length);
  for (let i = 1; i < rows.length; i += 1) {
    const count = rows[i]?.count ?? 0;
    const [two, one] = [path[i - 2] ?? 0, path[i - 1] ?? 0];
    let best = Infinity;
    for (let m = 0; m < count; m += 1) {
      const cost = stepCost(rows, unaries, i, two, one, m) + (toGo[i]?.[one * count + m] ?? 0);
      if (cost < best) [best, path[i]] = [cost, m];
    }
  }
  return path;
}
