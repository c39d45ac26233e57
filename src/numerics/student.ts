/** 97.5 % points of Student's t for 1 and 2 degrees of freedom, where the series below does not hold. */
const FEW = [Infinity, 12.7062, 4.30265];
const NORMAL = 1.959964;

/** 97.5 % point of Student's t: what a standard uncertainty is multiplied with for a 95 % interval. Cornish and Fisher's series in 1/ν. @source ABRAMOWITZ-STEGUN-26.7.5 */
export function student95(degreesOfFreedom: number): number {
  const few = FEW[Math.max(0, Math.floor(degreesOfFreedom))];
  if (few !== undefined) return few;
  const [z, v] = [NORMAL, degreesOfFreedom];
  return z + (z ** 3 + z) / (4 * v) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * v ** 2) + (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * v ** 3);
}
