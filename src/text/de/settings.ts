import type { settings as english } from '../en/settings.ts';

/** German: settings. ICU MessageFormat. */
export const settings: Readonly<Record<keyof typeof english, string>> = {
  'settings.look': 'Aussehen und Sprache',
  'settings.look.device': 'Gilt nur für dieses Gerät. Es ändert, was gezeigt wird, nie was gespeichert ist.',
  'settings.language': 'Sprache',
  'settings.language.hint': 'Zahlen erscheinen als {figure}. Tippen lassen sich in beiden Sprachen 49.5 und 49,5.',
  'settings.theme': 'Darstellung',
  'settings.theme.system': 'Wie das Gerät',
  'settings.theme.light': 'Hell',
  'settings.theme.dark': 'Dunkel',
  'settings.contrast': 'Kontrast',
  'settings.contrast.system': 'Wie das Gerät',
  'settings.contrast.usual': 'Üblich',
  'settings.contrast.more': 'Hoch',
  'settings.data': 'Daten',
  'settings.data.embedded': 'Alles liegt im Datenordner dieses Rechners, in der eingebauten Datenbank. Nichts verlässt ihn.',
  'settings.data.server': 'Alles liegt auf dem PostgreSQL-Server der Werkstatt.',
  'settings.data.version': 'Wrestplank {version}',
  'settings.keys.hint': 'Kürzel, die zu einer Seite gehören, stehen in der Liste, solange diese Seite offen ist: dort ? drücken.',
  'settings.about': 'Über das Programm',
  'settings.about.text': 'Wrestplank ist ein rechnendes Werkbuch für alle, die Klaviere und Flügel restaurieren. Freie Software unter der MIT-Lizenz.',
  'settings.about.reference': 'Nachschlagewerk der Berechnungen und der Schnittstelle für Skripte',
  'settings.language.en': 'English',
  'settings.language.de': 'Deutsch',
};
