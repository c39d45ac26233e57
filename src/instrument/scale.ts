import { z } from 'zod';

/** Wire a shop has: what its coil, its certificate or a test break says. Diameters, never bare gauge numbers. */
export const shopWireSchema = z.strictObject({
  name: z.string().trim().min(1).max(60),
  use: z.enum(['plain', 'core', 'wrap']),
  metal: z.enum(['steel', 'copper', 'iron']),
  shape: z.enum(['round', 'hex']).default('round'),
  /** Across flats for a hexagonal core. */
  diameterMm: z.number().min(0.05).max(4),
  /** Tensile strength by the maker's certificate. */
  certificateMPa: z.number().min(200).max(4000).nullable().default(null),
  /** Load at which a test piece broke. */
  testBreakN: z.number().min(1).max(20000).nullable().default(null),
});
export type ShopWire = z.output<typeof shopWireSchema>;

const doubt = z.number().gt(0).max(50).nullable().default(null);
const share = z.number().gt(0).max(100).nullable().default(null);

/** What is stated and asked of the strings and the bearing of one stay; `null` means not stated, and nothing is judged by it. */
export const scaleTermsSchema = z.strictObject({
  strengthModel: z.enum(['astm-a228-min', 'en-10270-1-sm', 'power-law']).nullable().default(null),
  wrapMetal: z.enum(['copper', 'iron']).nullable().default(null),
  /** Share of a wrap measured over all that is metal: π/4 for round wire laid close, more where it was pulled flat. */
  wrapPacking: z.number().min(0.5).max(1).nullable().default(null),
  /** Sizes a plain string is stepped through: the inch series, the metric one, or the plain wires of the shop. */
  wireSeries: z.enum(['inch', 'metric', 'shop']).nullable().default(null),
  /** Standard uncertainties of the measuring. */
  lengthUncertaintyMm: doubt,
  diameterUncertaintyMm: doubt,
  heightUncertaintyMm: doubt,
  /** Share of the breaking load that a string is asked to keep within. */
  leastBreakingPct: share,
  mostBreakingPct: share,
  /** Bearing angle asked, front and rear together. */
  bearingTargetDeg: z.number().min(-10).max(20).nullable().default(null),
  bearingToleranceDeg: z.number().gt(0).max(10).nullable().default(null),
  /** Feet of the bearing gauge, from its middle. */
  gaugeFrontSpanMm: z.number().gt(0).max(500).nullable().default(null),
  gaugeRearSpanMm: z.number().gt(0).max(500).nullable().default(null),
  /** How far the board yields under the bridge, from a push test. */
  boardStiffnessNPerMm: z.number().gt(0).max(1e6).nullable().default(null),
  boardStiffnessUncertaintyNPerMm: z.number().gt(0).max(1e6).nullable().default(null),
  wires: z.array(shopWireSchema).max(300).default([]),
  remark: z.string().max(4000).default(''),
}).refine(({ leastBreakingPct: least, mostBreakingPct: most }) => least === null || most === null || least < most, { path: ['mostBreakingPct'], message: 'more than the least share of breaking' });
export type ScaleTerms = z.output<typeof scaleTermsSchema>;
export type ScaleTermsDraft = z.input<typeof scaleTermsSchema>;
