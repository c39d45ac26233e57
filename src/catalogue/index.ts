export { operationByName, operations } from './operations.ts';
export { publishedFigures, validationPage } from './validation.ts';
