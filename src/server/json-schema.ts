import { instrumentSchema, readingSchema, sessionSchema, touchIntentSchema } from '#instrument';
import type { JsonSchema } from '#operation';
import { eventSchema, workItemSchema } from '#workshop';
import { z } from 'zod';

/** Schemas that stand once under a name of their own, wherever an answer holds them. */
const named = z.registry<{ id: string }>();
named.add(instrumentSchema, { id: 'Instrument' });
named.add(readingSchema, { id: 'Reading' });
named.add(sessionSchema, { id: 'WeighingSession' });
named.add(touchIntentSchema, { id: 'TouchIntent' });
named.add(workItemSchema, { id: 'WorkItem' });
named.add(eventSchema, { id: 'LogEvent' });

/** Turns schemas into JSON Schema for one description, the named ones gathered once under `components`. */
export class SchemaBook {
  readonly components: Record<string, JsonSchema> = {};

  /** What a request may carry. */
  taken(schema: z.ZodType): JsonSchema {
    const { properties } = z.toJSONSchema(z.object({ taken: schema }), { io: 'input', unrepresentable: 'throw', override: tidy });
    return plain(properties?.['taken']) as JsonSchema;
  }

  /** What an answer holds. */
  answered(schema: z.ZodType): JsonSchema {
    const { properties, $defs = {} } = z.toJSONSchema(z.object({ answer: schema }), { io: 'output', unrepresentable: 'throw', metadata: named, override: tidy });
    for (const [name, definition] of Object.entries($defs)) this.components[name] = plain(definition) as JsonSchema;
    return plain(properties?.['answer']) as JsonSchema;
  }
}

/** Leaves out what says nothing: the name a component stands under anyway, and the bounds of every whole number. */
function tidy({ jsonSchema }: { jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  delete jsonSchema.id;
  if (jsonSchema.minimum === Number.MIN_SAFE_INTEGER) delete jsonSchema.minimum;
  if (jsonSchema.maximum === Number.MAX_SAFE_INTEGER) delete jsonSchema.maximum;
}

/** The schema as plain data, its references turned to `components`. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === '$ref' && typeof inner === 'string' ? inner.replace('#/$defs/', '#/components/schemas/') : plain(inner)]),
  );
}
