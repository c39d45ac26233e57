/** A source of randomness that gives the same figures for the same seed, everywhere. */
export interface Random {
  /** The next 32 bits, as a whole number from 0 to 2³² − 1. */
  readonly bits: () => number;
  /** Above 0 and below 1. */
  readonly uniform: () => number;
}

const rotated = (x: number, by: number): number => (x << by) | (x >>> (32 - by));

/** xoshiro128** from a state of four words, not all nought. @source BLACKMAN-VIGNA-2021 */
export function randomFrom(state: readonly [number, number, number, number]): Random {
  let [a, b, c, d] = state;
  const bits = (): number => {
    const answer = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return answer;
  };
  return { bits, uniform: () => (bits() + 0.5) / 4294967296 };
}

/** The source of randomness of a seed, a whole number from 0 to 2³² − 1. @source STEELE-2014 mixing of the seed into a state */
export function seededRandom(seed: number): Random {
  let at = seed >>> 0;
  const next = (): number => {
    at = (at + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(at ^ (at >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return (mixed ^ (mixed >>> 15)) >>> 0;
  };
  return randomFrom([next(), next(), next(), next()]);
}

/** A column of independent standard normal figures. @source BOX-MULLER-1958 */
export function normalColumn(count: number, { uniform }: Random): Float64Array {
  const column = new Float64Array(count);
  for (let i = 0; i < count; i += 2) {
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    column[i] = radius * Math.cos(angle);
    if (i + 1 < count) column[i + 1] = radius * Math.sin(angle);
  }
  return column;
}
