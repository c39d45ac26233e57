export { checkInput } from './check.ts';
export { describeOperation } from './describe.ts';
export type { OperationDescription } from './describe.ts';
export { field } from './fields.ts';
export type { Range } from './fields.ts';
export { defineOperation } from './operation.ts';
export type { AnyOperation, Operation } from './operation.ts';
export { calculate, runOperation } from './run.ts';
export type { Calculation } from './run.ts';
