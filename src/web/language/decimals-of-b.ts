/** Decimals that show three figures of an inharmonicity, 0.000123 to 0.0123. */
export function decimalsOfB(value: number): number {
  return value <= 0 ? 6 : Math.min(8, Math.max(2, 2 - Math.floor(Math.log10(value))));
}
