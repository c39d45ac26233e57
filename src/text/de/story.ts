import type { story as english } from '../en/story.ts';

/** German: story. ICU MessageFormat. */
export const story: Readonly<Record<keyof typeof english, string>> = {
  'story.notStated': 'nicht angegeben',
  'story.place.repeat': '({repeat}. Wägung)',
  'story.event.undone': 'Ereignis {seq} zurückgenommen: {what}',
  'story.event.nothing': 'Nichts geändert',
  'story.event.jobs': '{count, plural, one {Eine Arbeit} other {# Arbeiten}} auf die Arbeitsliste gesetzt',
  'story.event.figures': '{count} Werte, {state, select, found {vorgefunden} planned {geplant} finished {fertiggestellt} other {}}: {what}',
  'story.event.figure': '{where}: {before} → {after}',
  'story.event.pianoAdded': 'Instrument aufgenommen',
  'story.event.cycle': 'Wieder in der Werkstatt: {cycle}. Aufenthalt eröffnet',
  'story.event.pianoChanged': 'Karte des Instruments geändert: {what}',
  'story.event.sessionAdded': 'Wägung eröffnet',
  'story.event.sessionGone': 'Wägung zurückgezogen',
  'story.event.sessionChanged': 'Wägung geändert: {what}',
  'story.event.intentSet': 'Was gleichmäßig werden soll: {what}',
  'story.event.intentGone': 'Was gleichmäßig werden soll: zurückgezogen',
  'story.event.jobGone': 'Arbeit von der Liste zurückgezogen',
  'story.event.jobChanged': 'Arbeit geändert: {what}',
  'story.event.field': '{field} {before} → {after}',
  'story.event.intent': '{even, select, downWeight {Niedergewicht} balanceWeight {Balancegewicht} curve {Niedergewicht nach einer Kurve} other {}} {target}, ± {tolerance}',
};
