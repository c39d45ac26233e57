import { z } from 'zod';
import { type CareCard, careCardSchema } from '../care/records.ts';
import { type Quote, quoteSchema } from '../quote.ts';
import { eventSchema } from '../records.ts';
import { shopCardSchema } from './records.ts';

/** All the book holds of one person, to be handed to them. */
export const personExportSchema = z.strictObject({
  contact: shopCardSchema,
  /** Cards that name the person. */
  cards: z.array(shopCardSchema),
  /** Quotes drawn up for the person. */
  quotes: z.array(quoteSchema),
  /** Moves the person carries, and the plans of care and moves of the pianos they own. */
  care: z.array(z.strictObject({ pianoId: z.string(), piano: z.string(), card: careCardSchema })),
  /** Every version of what is personal, the earlier ones too. */
  personal: z.array(z.record(z.string(), z.unknown())),
  /** Events that touched the person's card or one that names them, at a piano too. */
  events: z.array(eventSchema),
});
export interface PersonExport {
  readonly contact: z.output<typeof shopCardSchema>;
  readonly cards: readonly z.output<typeof shopCardSchema>[];
  readonly quotes: readonly Quote[];
  readonly care: readonly { readonly pianoId: string; readonly piano: string; readonly card: CareCard }[];
  readonly personal: readonly Readonly<Record<string, unknown>>[];
  readonly events: readonly z.output<typeof eventSchema>[];
}
