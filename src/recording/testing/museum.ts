export const MUSEUM_RATE_HZ = 16_000;
export const MUSEUM_FRAMES = 8000;

/** What all of them hold, before any coding: full scale at 1. */
export function museumSound(): Float64Array {
  return Float64Array.from({ length: MUSEUM_FRAMES }, (_, index) => {
    const t = index / MUSEUM_RATE_HZ;
    return 0.5 * Math.sin(2 * Math.PI * 440 * t) * Math.exp(-2 * t) + 0.25 * Math.sin(2 * Math.PI * 881 * t) * Math.exp(-4 * t);
  });
}
