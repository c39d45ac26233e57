export type { MessageKey } from './catalogue.en.ts';
export { createSay, isMessageKey, languageOf, languages } from './translate.ts';
export type { Language, MessageValues, Say } from './translate.ts';
