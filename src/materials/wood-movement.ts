/** Across the grain: from pith to bark, or along the rings. */
export const grainDirections = ['radial', 'tangential'] as const;
export type GrainDirection = (typeof grainDirections)[number];

/** What a wood moves by for one per cent of moisture, as a share of its width. */
export interface WoodMovement {
  readonly radial: number;
  readonly tangential: number;
  /** A key of the bibliography. */
  readonly source: string;
  /** The wood whose figures are taken, where none of its own are known. */
  readonly borrowedFrom?: string;
}

const SITKA = { radial: 0.00148, tangential: 0.00263, source: 'FPL-190-13-MEMORY' } as const;

/** Dimensional change coefficients between 6 and 14 % of moisture. @source FPL-190-13 table 13-5; spruce and mahogany from memory */
export const woodMovements = {
  'sugar-maple': { radial: 0.00165, tangential: 0.00353, source: 'FPL-190-13' },
  'red-maple': { radial: 0.00137, tangential: 0.00289, source: 'FPL-190-13' },
  'american-beech': { radial: 0.0019, tangential: 0.00431, source: 'FPL-190-13' },
  'yellow-birch': { radial: 0.00256, tangential: 0.00338, source: 'FPL-190-13' },
  'black-walnut': { radial: 0.0019, tangential: 0.00274, source: 'FPL-190-13' },
  'black-cherry': { radial: 0.00126, tangential: 0.00248, source: 'FPL-190-13' },
  'white-oak': { radial: 0.0018, tangential: 0.00365, source: 'FPL-190-13' },
  'sitka-spruce': SITKA,
  'european-spruce': { ...SITKA, borrowedFrom: 'sitka-spruce' },
  mahogany: { radial: 0.00172, tangential: 0.00238, source: 'FPL-190-13-MEMORY' },
} as const satisfies Readonly<Record<string, WoodMovement>>;

export type WoodSpecies = keyof typeof woodMovements;
/** Woods whose movement is known or borrowed. */
export const woodSpecies = Object.keys(woodMovements) as readonly WoodSpecies[] as readonly [WoodSpecies, ...WoodSpecies[]];
