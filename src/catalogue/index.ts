export { operationByName, operations } from './operations.ts';
