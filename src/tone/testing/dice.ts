/** A repeatable source of chance. */
export interface Dice {
  /** Evenly in [0, 1). */
  readonly even: () => number;
  /** Normal, mean 0, standard deviation 1. */
  readonly normal: () => number;
  /** Evenly in [low, high). */
  readonly between: (low: number, high: number) => number;
}

/** Dice of a seed: the same seed throws the same numbers. A counter hashed by multiplications and shifts; normal numbers by Box and Muller. */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  return { even, normal, between: (low, high) => low + (high - low) * even() };
}

/** A seed nobody chose: name it in the message of whatever fails. */
export function drawnSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}
