export { expectedInharmonicityOf } from './comb.ts';
export { listenToNote, nothingReasons, toneWarnings } from './listen.ts';
export type { FitMethod, ListenOptions, NothingHeard, NothingReason, ToneNote, TonePartial, ToneQuality, ToneWarning, UnisonLine } from './listen.ts';
export { TONE_METHOD } from './method.ts';
export { partialHzOf, refitOn, stiffFitOf } from './stiff-law.ts';
export type { PartialFrequency, StiffFit, StiffLaw } from './stiff-law.ts';
