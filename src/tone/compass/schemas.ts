import { field } from '#operation';
import { z } from 'zod';
import { type RefusalReason, refusalReasons } from '../heard-note.ts';

/** Most keys of one question. */
export const MOST_NOTES = 128;

/** Most strikes of one question. */
export const MOST_STRIKES = 4000;

const LEVEL_DB = { min: -300, max: 300 };

/** Fields that the operations along the keys share. */
export const fields = {
  key: field.count({ min: 1, max: 128, describe: 'Number of the key; A0 is 1 on 88 keys' }),
  levelDb: field.number({ ...LEVEL_DB, describe: 'Level of the strike; any reference, the same for all' }),
  brightness: field.number({ min: -1e6, max: 1e6, describe: 'One descriptor of brightness for all keys: harmonic centroid or balance; higher is brighter' }),
  lambda: (usual: number) => field.number({ min: 1e-3, max: 1e9, describe: `How stiff the curve is; ${String(usual)} unless said` }).optional(),
  uncertainty: (describe = 'Standard uncertainty of the value') => field.number({ min: 0, max: 1e6, describe }).optional(),
  decayS: field.number({ min: 1e-3, max: 1000, describe: 'Time for 60 dB: early decay time or T20, the same for all keys' }),
} as const;

/** A figure that is not given, as answered. */
export const refusalShape = z.strictObject({
  figure: z.string(),
  reason: z.enum(refusalReasons as unknown as [RefusalReason, ...RefusalReason[]]),
  found: field.number({ describe: 'In the unit of the reason' }).optional(),
  needed: field.number({ describe: 'In the unit of the reason' }).optional(),
});

/** A key beside its curve, as answered. */
export const offsetShape = {
  key: field.count(),
  value: field.number(),
  curve: field.number({ describe: 'Smooth curve through the neighbours' }),
  offset: field.number({ describe: 'Value less curve' }),
  uncertainty: field.number().optional(),
} as const;
