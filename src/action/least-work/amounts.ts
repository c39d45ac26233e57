import { grams, ratio } from '#units';
import type { Choice } from './choices.ts';
import type { KeyTask, Offer } from './offer.ts';
import { type TouchState, type WorkDone, changeKinds } from './problem.ts';
import { steppedSumsOf } from './reach.ts';

/** Halvings that bring a share of 1 to the last bit of a double. */
const HALVINGS = 60;

/**
 * How much of each operation of a choice, so that the key comes to the balance weight it is to have.
 * What goes in steps as the reach found it; all else the same share of its way from the end that lightens the key to the end
 * that weighs it down, so that no operation is pressed to its limit while another idles.
 * @source OWN
 */
export function amountsOf(task: KeyTask, { chosen, reached }: Choice): ReadonlyMap<Offer, number> {
  const stepped = steppedSumsOf(chosen).find(({ sum }) => sum === reached.steppedG)?.amounts ?? [];
  const inSteps = chosen.filter(({ steps }) => steps.length > 0);
  const fixed = new Map(inSteps.map((offer, place) => [offer, stepped[place] ?? 0]));
  const at = (share: number): ReadonlyMap<Offer, number> => new Map(chosen.map((offer) => [offer, fixed.get(offer) ?? along(offer, share)]));
  let [low, high] = [0, 1];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (balanceAfter(task, at(middle)) < reached.balanceG) low = middle;
    else high = middle;
  }
  return at(high);
}

/** More front weight lightens the key, more of all else weighs it down. */
const along = ({ changes, from, to }: Offer, share: number): number => (changes === 'front' ? to + share * (from - to) : from + share * (to - from));

interface Changes {
  readonly friction: number;
  readonly ratio: number;
  readonly hammer: number;
  readonly front: number;
}

function changesOf(amounts: ReadonlyMap<Offer, number>): Changes {
  const sum = { friction: 0, ratio: 0, hammer: 0, front: 0 };
  for (const [{ changes }, amount] of amounts) sum[changes] += amount;
  return sum;
}

function balanceAfter({ balanceG, parts }: KeyTask, amounts: ReadonlyMap<Offer, number>): number {
  const { ratio: more, hammer, front } = changesOf(amounts);
  const { ratio: before, hammerG } = parts ?? { ratio: 0, hammerG: 0 };
  return balanceG + (before + more) * (hammerG + hammer) - before * hammerG - front;
}

/** The touch that a key comes to by amounts of work; as found where there are none. */
export function stateAfter(task: KeyTask, amounts: ReadonlyMap<Offer, number>): TouchState {
  const change = changesOf(amounts);
  const balance = balanceAfter(task, amounts);
  const friction = task.frictionG + change.friction;
  return {
    downWeightG: grams(balance + friction), upWeightG: grams(balance - friction), balanceWeightG: grams(balance), frictionG: grams(friction),
    ...(task.parts === undefined ? {} : {
      frontWeightG: grams(task.parts.frontG + change.front), hammerWeightG: grams(task.parts.hammerG + change.hammer), weightRatio: ratio(task.parts.ratio + change.ratio),
    }),
  };
}

/** The work of a choice with its amounts, in the order of the bench. */
export function workOf(amounts: ReadonlyMap<Offer, number>): readonly WorkDone[] {
  const inOrder = [...amounts].sort(([a], [b]) => changeKinds.indexOf(a.changes) - changeKinds.indexOf(b.changes));
  return inOrder.map(([{ operation, changes, minutes, partsMinor }, amount]) => ({
    operation: operation.name, changes, ...(changes === 'ratio' ? { ratioChange: ratio(amount) } : { changeG: grams(amount) }), minutes, partsMinor,
  }));
}
