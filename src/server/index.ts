export { createApp } from './app.ts';
export type { AppOptions } from './app.ts';
export { problemOfError } from './failure.ts';
export { openApiOf } from './openapi.ts';
export { referenceOf } from './reference.ts';
export type { OperationReference, Reference } from './reference.ts';
export { seedDemo } from './seed-demo.ts';
export { DEFAULT_PORT, startServer } from './start.ts';
export type { RunningServer, StartOptions } from './start.ts';
