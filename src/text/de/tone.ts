import type { tone as english } from '../en/tone.ts';

/** German: the Tone page. ICU MessageFormat. */
export const tone: Readonly<Record<keyof typeof english, string>> = {
  'tone.title': 'Klang',
  'tone.view': 'Was zu sehen ist',
  'tone.view.recordings': 'Aufnahmen',
  'tone.view.compass': 'Umfang',
  'tone.none': 'Von diesem Aufenthalt ist noch nichts aufgenommen. Die Töne aufnehmen, bevor die erste Saite oder der erste Hammer angefasst wird: was dann klang, lässt sich nicht wieder hören. Gleiches Mikrofon, gleicher Platz, gleicher Raum vorher und nachher.',
  'recording.contents.note': 'Ein Ton',
  'recording.contents.walk': 'Töne die Klaviatur hinauf',
  'recording.contents.ladder': 'Ein Ton, leise bis laut',
  'recording.contents.other': 'Etwas anderes',
  'recording.field.cycle': 'Aufenthalt',
  'recording.field.state': 'Zustand',
  'recording.field.contents': 'Was gespielt wurde',
  'recording.field.copy': 'Verlustfreie Kopie',
  'recording.field.fileName': 'Datei',
  'recording.field.key': 'Taste',
  'recording.field.place': 'Mikrofon stand',
  'recording.field.device': 'Mikrofon',
  'recording.field.remark': 'Bemerkung',
  'recording.field.takenAt': 'Aufgenommen am',
};
