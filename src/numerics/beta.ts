/** Coefficients of Lanczos’ approximation with g = 7, nine terms. @source LANCZOS-1964 */
const LANCZOS = [0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7] as const;

/** ln Γ(x) for x above ½. @source LANCZOS-1964 */
function logGammaOf(x: number): number {
  const base = x + 6.5;
  const sum = LANCZOS.reduce((total, coefficient, i) => total + (i === 0 ? coefficient : coefficient / (x + i - 1)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(base) - base + Math.log(sum);
}

/** ln B(α, β) of the beta function, both above ½. */
export function logBetaOf(alpha: number, beta: number): number {
  return logGammaOf(alpha) + logGammaOf(beta) - logGammaOf(alpha + beta);
}

/**
 * Regularised incomplete beta function I_x(α, β): the probability that a beta figure is at most x, 0 ≤ x ≤ 1, α and β above ½.
 * Continued fraction by Lentz’ method, on the side where it converges fast. @source ABRAMOWITZ-STEGUN 26.5.8
 */
export function betaProbabilityOf(x: number, alpha: number, beta: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return x > (alpha + 1) / (alpha + beta + 2) ? 1 - lowerSide(1 - x, beta, alpha) : lowerSide(x, alpha, beta);
}

function lowerSide(x: number, alpha: number, beta: number): number {
  const front = Math.exp(alpha * Math.log(x) + beta * Math.log1p(-x) - logBetaOf(alpha, beta)) / alpha;
  let [c, d] = [1, 1 / (1 - ((alpha + beta) * x) / (alpha + 1))];
  let product = d;
  for (let m = 1; m < 300; m += 1) {
    const even = (m * (beta - m) * x) / ((alpha + 2 * m - 1) * (alpha + 2 * m));
    const odd = (-(alpha + m) * (alpha + beta + m) * x) / ((alpha + 2 * m) * (alpha + 2 * m + 1));
    let step = 1;
    for (const term of [even, odd]) {
      d = 1 / (1 + term * d);
      c = 1 + term / c;
      step = c * d;
      product *= step;
    }
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return front * product;
}
