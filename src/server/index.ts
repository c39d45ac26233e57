export { createApp } from './app.ts';
export type { AppOptions } from './app.ts';
export { problemOfError } from './failure.ts';
export { openApiOf } from './openapi.ts';
export { referenceOf } from './reference.ts';
export type { FieldRow } from './field-rows.ts';
export type { OperationReference, Reference } from './reference.ts';
