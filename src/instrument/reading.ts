import { z } from 'zod';
import { isQuantityName } from './quantity.ts';
import { bases, outcomes, states } from './state.ts';

/** One reading as it is kept. Never overwritten: a correction is a new reading that supersedes this one. */
export const readingSchema = z.strictObject({
  id: z.string(),
  cycle: z.number().int().min(1),
  state: z.enum(states),
  quantity: z.string().refine(isQuantityName, 'a quantity of the registry'),
  scope: z.enum(['key', 'colour', 'instrument']),
  index: z.number().int().min(0),
  repeat: z.number().int().min(1),
  /** Exactly what was typed; null for an outcome. */
  typed: z.string().nullable(),
  /** Value in the quantity's unit; null for an outcome. */
  value: z.number().nullable(),
  outcome: z.enum(outcomes).nullable(),
  /** Standard uncertainty in the quantity's unit, if known. */
  uncertainty: z.number().min(0).nullable(),
  basis: z.enum(bases),
  remark: z.string(),
  /** The weighing session it belongs to, if any. */
  sessionId: z.string().nullable(),
  /** When it was acknowledged, ISO 8601. */
  at: z.string(),
  /** When it was typed, as the device that sent it says, ISO 8601; left out where no device said so. A device may hold a figure for long before it is acknowledged. */
  typedAt: z.iso.datetime().optional(),
  /** Reference of the person; the name stands elsewhere. */
  by: z.string(),
});
export type Reading = z.output<typeof readingSchema>;
