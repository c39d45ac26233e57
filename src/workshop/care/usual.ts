import type { CareOf, PartLife } from './records.ts';

/** Lives by habit; hours of playing or years. @source PRACTICE */
export const usualLives: readonly PartLife[] = [
  { part: 'hammerShape', by: 'hours', from: 300, to: 500, since: null },
  { part: 'hammers', by: 'hours', from: 2000, to: 4000, since: null },
  { part: 'trebleStrings', by: 'years', from: 20, to: 40, since: null },
  { part: 'bassStrings', by: 'years', from: 15, to: 30, since: null },
  { part: 'centrePins', by: 'years', from: 15, to: 30, since: null },
  { part: 'pinblock', by: 'years', from: 40, to: 80, since: null },
];

/** A plan as it is usual, until somebody says otherwise. @source PRACTICE */
export const usualPlan: Omit<CareOf<'plan'>, 'id' | 'madeAt'> = {
  kind: 'plan', strungOn: null, lastTunedOn: null, visitsFirstYear: 4, visitsLater: 2, hoursPerWeek: 7, intensity: 1, lowPct: 35, highPct: 65, dayChangePct: 10, boardMm: null, blockMm: null, lives: [...usualLives], remark: '',
};
