/** An objective with four figures that count; a bound not yet known as a dash. */
export function sayObjective(value: number, figure: (value: number, decimals: number) => string): string {
  if (!Number.isFinite(value)) return '–';
  return figure(value, value === 0 ? 0 : Math.min(10, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value))))));
}
