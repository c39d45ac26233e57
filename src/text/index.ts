export type { MessageKey } from './catalogue.en.ts';
export { explainIssue } from './issue.ts';
export { createSay, isMessageKey, languageOf, languages } from './translate.ts';
export type { Language, MessageValues, Say } from './translate.ts';
