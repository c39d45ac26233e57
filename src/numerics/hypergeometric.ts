/**
 * Probability that a sample drawn without replacement holds none of the marked ones.
 * P = C(N − b, n) / C(N, n) = Π (N − n − i)/(N − i), i = 0 … b − 1.
 *
 * N `population`, b `marked`, n `drawn`: whole numbers, 0 ≤ b, n ≤ N. Exact but for rounding; 0 once n > N − b.
 * @source OWN the product is the quotient of the binomials, factor by factor
 */
export function noneDrawnProbability({ population, marked, drawn }: { readonly population: number; readonly marked: number; readonly drawn: number }): number {
  if (drawn > population - marked) return 0;
  let probability = 1;
  for (let i = 0; i < marked; i += 1) probability *= (population - drawn - i) / (population - i);
  return probability;
}
