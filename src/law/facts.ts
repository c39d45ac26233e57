import { field } from '#operation';
import { z } from 'zod';
import { listedMaterials } from './materials.ts';

const material = z.enum(listedMaterials);
const year = field.count({ min: 1700, max: 2200, describe: 'Year, as far as it is proven' });
const share = field.percent({ min: 0, max: 100 });

/** What is known of an instrument that papers may hang on. What is left out is not known, and is asked about. */
export const factsSchema = z.strictObject({
  material: z.union([material, z.array(material).min(1).max(50)]).describe('Materials of the instrument or of its crate; the widest name where the species is not known'),
  speciesProven: z.boolean().describe('False where it is doubtful whether the material is what it is called; left out, it is').optional(),
  yearMade: year.optional(),
  ivoryMassG: field.grams({ min: 0, max: 100_000, describe: 'All ivory together' }).optional(),
  ivoryMassUncertaintyG: field.grams({ min: 0, max: 100_000, describe: 'Standard uncertainty of that mass' }).optional(),
  ivoryMassHow: z.enum(['weighed', 'measured', 'estimated']).describe('How the mass is known').optional(),
  ivoryVolPct: share.describe('Ivory as a share of all material, by volume').optional(),
  ivoryShareOfValuePct: share.describe('Ivory as a share of the value').optional(),
  ivoryRaw: z.boolean().describe('Whether any of it is raw ivory, not worked').optional(),
  ivoryFixed: z.boolean().describe('Whether it is a fixed part of the instrument').optional(),
  repairedWithListedSpeciesSince1973: z.boolean().describe('Whether listed species were used on it since 27 December 1973').optional(),
  importedToUSBefore1990: z.boolean().describe('Whether it is proven to have been in the United States before 18 January 1990').optional(),
  preConventionCertificate: z.boolean().describe('Whether an unlimited certificate from before the convention is at hand').optional(),
  takenFromWildBefore1976: z.boolean().describe('Whether the ivory is proven to have been taken from the wild before 26 February 1976').optional(),
  playedUntilRecently: z.boolean().describe('Whether a performer used it until recently').optional(),
  finished: z.boolean().describe('Whether the listed wood is a finished instrument, part or accessory').optional(),
  listedWoodG: field.grams({ min: 0, max: 10_000_000, describe: 'Mass of listed wood in the shipment, by item' }).optional(),
  repairOfInstrumentBefore1975: z.boolean().describe('Whether raw material is for repairing an instrument of before 1975').optional(),
});
export type PaperFacts = z.output<typeof factsSchema>;
/** Facts a rule may hang on; whether the species is proven is asked of every rule alike. */
export type FactName = Exclude<keyof PaperFacts, 'material' | 'speciesProven'>;

/** Facts with what follows from them on a day. */
export type DatedFacts = PaperFacts & {
  /** Full years that have surely passed since the year of making. */
  readonly ageYears?: number;
};

/** Facts as they stand on a day, ISO 8601. */
export function factsOn(date: string, facts: PaperFacts): DatedFacts {
  return facts.yearMade === undefined ? facts : { ...facts, ageYears: Number(date.slice(0, 4)) - facts.yearMade - 1 };
}

/** What is to be done with the instrument. */
export const paperActions = ['sell', 'buy', 'offer', 'hire', 'keep-for-sale', 'ship-sold', 'travel', 'move-own', 'restore', 'dispose'] as const;
export type PaperAction = (typeof paperActions)[number];
