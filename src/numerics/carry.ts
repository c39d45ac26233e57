/**
 * Carries standard uncertainties of inputs through a function to its outputs, to first order: u(y)² = Σ (∂y/∂x·u(x))².
 * Each slope is the central difference over ±u(x), so a bend within the uncertainty is taken as a user would meet it.
 * Inputs independent; an input with no uncertainty costs nothing.
 * @source JCGM-100 clauses 5.1.2 and 5.1.3
 */
export function carriedUncertaintiesOf(outputsOf: (inputs: readonly number[]) => readonly number[], inputs: readonly number[], uncertainties: readonly number[]): readonly number[] {
  const variances = outputsOf(inputs).map(() => 0);
  for (const [place, uncertainty] of uncertainties.entries()) {
    if (uncertainty === 0) continue;
    const [above, below] = [1, -1].map((sign) => outputsOf(inputs.map((value, index) => (index === place ? value + sign * uncertainty : value))));
    for (const index of variances.keys()) variances[index] = (variances[index] ?? 0) + (((above?.[index] ?? 0) - (below?.[index] ?? 0)) / 2) ** 2;
  }
  return variances.map(Math.sqrt);
}
