import { z } from 'zod';

/** Fields of a draft as they stand in a change: all optional, none with a default. */
type ChangeShape<Shape extends z.ZodRawShape> = {
  [Name in keyof Shape]: z.ZodOptional<Shape[Name] extends z.ZodDefault<infer Inner extends z.ZodType> ? Inner : Shape[Name]>;
};

/**
 * The schema of a change to something kept: every field optional, and a field left out stays as it is.
 * Plain `partial()` will not do: it keeps the defaults of the draft, so that changing a name would empty the rest.
 */
export function changeOf<Shape extends z.ZodRawShape>(shape: Shape): z.ZodObject<ChangeShape<Shape>, z.core.$strict> {
  const fields = Object.entries(shape).map(([name, field]) => [name, z.optional(field instanceof z.ZodDefault ? field.unwrap() : field)] as const);
  return z.strictObject(Object.fromEntries(fields)) as unknown as z.ZodObject<ChangeShape<Shape>, z.core.$strict>;
}
