export type { MessageKey } from './catalogue.en.ts';
export { explainIssue } from './issue.ts';
export { languageOf, languages, loadCatalogue, loadFirstWords, sayFrom } from './say.ts';
export type { Catalogue, Language, MessageValues, Say, Words } from './say.ts';
export { createSay } from './translate.ts';
