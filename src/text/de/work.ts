import type { work as english } from '../en/work.ts';

/** German: the Work page. ICU MessageFormat. */
export const work: Readonly<Record<keyof typeof english, string>> = {
  'work.sheet': 'Arbeitsblatt: {piano}',
  'work.fromFindings': '{count, plural, one {# Arbeit aus den Befunden übernehmen} other {# Arbeiten aus den Befunden übernehmen}}',
  'work.print': 'Arbeitsblatt drucken',
  'work.progress': '{done} von {all} erledigt',
  'work.whole': 'Ganzes Instrument',
  'work.drop': 'Nicht nötig',
  'work.drop.of': 'Nicht nötig: {what}',
  'work.remeasure': 'Erledigt. Jetzt noch einmal wiegen, als fertiggestellt: {what}.',
  'work.remeasure.key': 'Erledigt. Jetzt Taste {key} noch einmal wiegen, als fertiggestellt: {what}.',
  'work.remeasure.go': 'Noch einmal wiegen',
  'work.add': 'Eine eigene Arbeit',
  'work.add.words': 'Was zu tun ist',
  'work.add.wordsNeeded': 'Sagen Sie in wenigen Worten, was zu tun ist.',
  'work.add.key': 'Taste oder Ton',
  'work.add.keyHint': 'Leer lassen für das ganze Instrument.',
  'work.add.keyUnknown': '„{given}“ ist keine Taste dieses Instruments. Es hat die Tasten 1 bis {last}.',
  'work.add.do': 'Auf die Liste setzen',
  'work.empty.title': 'Nichts auf der Liste',
  'work.empty.text': 'Arbeiten kommen aus den Befunden der Seite Mechanik: Wiegen Sie Nieder- und Aufgewicht der Tasten, wie vorgefunden; die Abhilfen lassen sich dann hierher übernehmen, in der Reihenfolge Reibung, Übersetzung, Hammer, Blei.',
};
