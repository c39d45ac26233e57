/**
 * P(|t| ≤ x) of Student's distribution with a whole number of degrees of freedom ν ≥ 1, by its finite series:
 * θ = atan(x/√ν); ν odd: 2/π·(θ + sin θ·(cos θ + 2/3·cos³θ + …)); ν even: sin θ·(1 + 1/2·cos²θ + …).
 * @source ABRAMOWITZ-STEGUN 26.7.3 and 26.7.4
 */
function withinProbabilityOf(x: number, freedom: number): number {
  const angle = Math.atan(x / Math.sqrt(freedom));
  const [sine, square] = [Math.sin(angle), Math.cos(angle) ** 2];
  const isOdd = freedom % 2 === 1;
  let [term, sum] = isOdd ? [Math.cos(angle), 0] : [1, 0];
  for (let k = isOdd ? 3 : 2; k <= freedom; k += 2) {
    sum += term;
    term *= (square * (k - 1)) / k;
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}

/**
 * The factor t that P(|t| ≤ factor) = confidence holds for: what a standard uncertainty with few degrees of freedom is
 * multiplied by. Degrees of freedom whole and at least 1, confidence between 0 and 1; above 1000 as for 1000.
 * @source ABRAMOWITZ-STEGUN 26.7
 */
export function studentFactorOf(freedom: number, confidence = 0.95): number {
  const whole = Math.min(Math.max(Math.floor(freedom), 1), 1000);
  let [low, high] = [0, 1];
  while (withinProbabilityOf(high, whole) < confidence) high *= 2;
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (withinProbabilityOf(middle, whole) < confidence) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
