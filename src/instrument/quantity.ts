import type { UnitId } from '#units';

/** What a quantity is measured on: each key, each colour of key (naturals, sharps), or the whole instrument. */
export type Scope = 'key' | 'colour' | 'instrument';

/**
 * One measured thing. Grid columns, CSV headers, validation, help, tolerance bands and plots all derive from its entry.
 * Its words stand in the message catalogue: `quantity.<name>.name`, `.short`, `.howTo`, `.mistakes`.
 */
export interface Quantity {
  /** Ends in its unit; also the CSV header and JSON field. */
  readonly name: string;
  readonly unit: UnitId;
  readonly scope: Scope;
  /** Outside: kept, with a warning. */
  readonly plausible: readonly [number, number];
  /** Outside: refused. */
  readonly possible: readonly [number, number];
  /** Decimals printed; what is stored is never rounded. */
  readonly decimals: number;
  /** Usual half-width of the tolerance band, if the trade has one. */
  readonly tolerance?: number;
  /** True when a reading of it belongs to a weighing session. */
  readonly weighed: boolean;
  /** Where the plausible range and the tolerance come from. */
  readonly source: string;
}

const weight = (name: string, plausible: readonly [number, number], possible: readonly [number, number], rest: Partial<Quantity> = {}): Quantity => ({
  name, unit: 'g', scope: 'key', plausible, possible, decimals: 1, weighed: true, source: 'PRACTICE', ...rest,
});

const arm = (name: string, plausible: readonly [number, number]): Quantity => ({
  name, unit: 'mm', scope: 'colour', plausible, possible: [1, 1000], decimals: 1, weighed: false, source: 'PRACTICE',
});

/** The one registry of measured things. Adding a quantity is one entry here and its words in the catalogue. */
export const quantities = {
  downWeightG: weight('downWeightG', [35, 75], [0, 300], { tolerance: 2 }),
  upWeightG: weight('upWeightG', [10, 45], [0, 300]),
  frontWeightG: weight('frontWeightG', [-10, 60], [-150, 200]),
  hammerWeightG: weight('hammerWeightG', [3, 15], [0.1, 60], { decimals: 2 }),
  wippenWeightG: weight('wippenWeightG', [10, 30], [0.1, 120]),
  keyFrictionG: weight('keyFrictionG', [0, 8], [0, 100]),
  helperSpringG: weight('helperSpringG', [0, 25], [0, 150]),
  keyFrontMm: arm('keyFrontMm', [170, 290]),
  keyBackMm: arm('keyBackMm', [80, 160]),
  wippenHeelMm: arm('wippenHeelMm', [45, 90]),
  wippenJackMm: arm('wippenJackMm', [70, 120]),
  rollerMm: arm('rollerMm', [13, 22]),
  hammerMm: arm('hammerMm', [110, 150]),
} as const satisfies Readonly<Record<string, Quantity>>;

export type QuantityName = keyof typeof quantities;

/** Every quantity, in the order screens and files show them. */
export const quantityNames = Object.keys(quantities) as readonly QuantityName[];

/** The entry of a quantity. */
export function quantityOf(name: QuantityName): Quantity {
  return quantities[name];
}

/** True for a name of the registry. */
export function isQuantityName(name: string): name is QuantityName {
  return Object.hasOwn(quantities, name);
}
