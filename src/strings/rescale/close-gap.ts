import type { Held } from './hold-load.ts';
import { type LoadBand, isWithin, loadsToCome } from './load-band.ts';
import { type Candidate, type Path, type Row, candidateOf, stepCost } from './row.ts';

/** What the search that closes the gap found. */
export interface Closed {
  readonly best: Candidate | undefined;
  readonly lowerBound: number;
}

/** How far the search goes. */
export interface GapSearch {
  readonly threshold: number;
  /** Beginnings kept for each row. */
  readonly most: number;
  readonly isTwoSided: boolean;
}

/** The beginning of a way through the rows: how far it came, what it has cost, and what it must cost at least in the end. */
interface Label {
  readonly place: number;
  readonly below: Label | undefined;
  /** Lagrange cost J + λ·(S − edge) so far. */
  readonly cost: number;
  readonly loadN: number;
  readonly whole: number;
}

/**
 * Every way whose Lagrange cost lies below a threshold, row by row, and the best of them within the band.
 * The costs to go are exact, so a beginning is only kept when a way that cheap lies behind it. Of two beginnings that
 * share their last two places, one that both costs and presses on the edge no less than the other is dropped; what is then
 * proven is proven for the band's one edge alone, and so for the band. Where the cheapest way for the one edge lies beyond
 * the other, `isTwoSided` drops only what pulls the same load for more. Keeps at most `most` beginnings a row: with more, the best are
 * followed and the bound stays what it was. @source OWN
 */
export function* closeGap(rows: readonly Row[], band: LoadBand, held: Held, { threshold, most, isTwoSided }: GapSearch): Generator<number, Closed> {
  const { least, most: greatest } = loadsToCome(rows);
  let labels: readonly Label[] = [{ place: 0, below: undefined, cost: -held.multiplier * held.edgeN, loadN: 0, whole: 0 }];
  let isComplete = true;
  for (let i = 1; i < rows.length; i += 1) {
    const reaches = ({ loadN }: Label): boolean => {
      const [notAbove, notBelow] = [loadN + (least[i + 1] ?? 0) <= band.high, loadN + (greatest[i + 1] ?? 0) >= band.low];
      return isTwoSided ? notAbove && notBelow : held.side > 0 ? notAbove : notBelow;
    };
    const next = undominated(labels.flatMap((label) => longer(rows, held, label, i, threshold)), isTwoSided ? sameLoad : front(held)).filter(reaches);
    isComplete &&= next.length <= most;
    labels = next.length <= most ? next : [...next].sort((a, b) => a.whole - b.whole).slice(0, most);
    yield i;
  }
  const ends = labels.map((label) => candidateOf(rows, pathOf(label, rows.length)));
  const within = ends.filter(({ loadN }) => isWithin(band, loadN));
  const cheapest = (candidates: readonly Candidate[]) => candidates.reduce<Candidate | undefined>((a, b) => (a === undefined || b.objective < a.objective ? b : a), undefined);
  return { best: cheapest(within), lowerBound: isComplete ? Math.min(threshold, cheapest(isTwoSided ? within : ends)?.objective ?? threshold) : held.lowerBound };
}

function longer(rows: readonly Row[], held: Held, label: Label, i: number, threshold: number): readonly Label[] {
  const [row, unaries, toGo] = [rows[i], held.unaries, held.toGo[i]];
  const found: Label[] = [];
  if (row === undefined || toGo === undefined) return found;
  const two = label.below?.place ?? 0;
  for (let place = 0; place < row.count; place += 1) {
    const cost = label.cost + stepCost(rows, unaries, i, two, label.place, place);
    const whole = cost + (toGo[label.place * row.count + place] ?? 0);
    if (whole < threshold) found.push({ place, below: label, cost, loadN: label.loadN + (row.load[place] ?? 0), whole });
  }
  return found;
}

type Keep = (labels: Label[]) => readonly Label[];

/** Of the labels that share their last two places, those that are kept. */
function undominated(labels: readonly Label[], keep: Keep): readonly Label[] {
  const byState = new Map<number, Label[]>();
  for (const label of labels) {
    const state = (label.below?.place ?? 0) * 0x1_0000 + label.place;
    const known = byState.get(state);
    if (known === undefined) byState.set(state, [label]);
    else known.push(label);
  }
  return [...byState.values()].flatMap((known) => (known.length === 1 ? known : keep(known)));
}

/** The labels none of the others betters: by what they press on the edge, each dearer than the one before is dropped. */
const front = ({ multiplier, side }: Held): Keep => (labels) => {
  const plain = (label: Label): number => label.cost - multiplier * label.loadN;
  labels.sort((a, b) => side * (a.loadN - b.loadN) || plain(a) - plain(b));
  let best = Infinity;
  return labels.filter((label) => {
    if (plain(label) >= best) return false;
    best = plain(label);
    return true;
  });
};

/** Of labels that pull the same load, the cheapest. */
const sameLoad: Keep = (labels) => {
  labels.sort((a, b) => a.loadN - b.loadN || a.cost - b.cost);
  return labels.filter(({ loadN }, at) => loadN !== labels[at - 1]?.loadN);
};

function pathOf(label: Label, length: number): Path {
  const path: Path = new Int32Array(length);
  for (let [here, i]: [Label | undefined, number] = [label, length - 1]; here !== undefined; [here, i] = [here.below, i - 1]) path[i] = here.place;
  return path;
}
