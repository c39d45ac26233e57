/** Small seeded generator (a linear congruence), so that the demo is the same everywhere and for ever; from −1 to 1. @source OWN */
export function swaysFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}
