import type { shell as english } from '../en/shell.ts';

/** German: shell. ICU MessageFormat. */
export const shell: Readonly<Record<keyof typeof english, string>> = {
  'shell.name': 'Wrestplank',
  'shell.skip': 'Zur Seite',
  'shell.loading': 'Wird geholt …',
  'shell.demo': 'Erfundenes Beispiel',
  'shell.nav.shop': 'Werkstatt',
  'shell.nav.piano': 'Seiten dieses Instruments',
  'shell.nav.pianos': 'Instrumente',
  'shell.nav.settings': 'Einstellungen',
  'shell.nav.story': 'Verlauf',
  'shell.nav.readings': 'Messwerte',
  'shell.nav.action': 'Mechanik',
  'shell.nav.work': 'Arbeiten',
  'shell.nav.proof': 'Nachweis',
  'shell.notFound.title': 'Diese Seite gibt es nicht',
  'shell.notFound.text': 'Die Adresse ist vielleicht vertippt, oder das Instrument wurde herausgenommen.',
  'shell.notFound.back': 'Zu den Instrumenten',
  'shell.problem.noAnswer': 'Wrestplank antwortet nicht. Läuft es noch auf diesem Rechner?',
  'shell.problem.field': '{path}: angegeben {given}, erlaubt {allowed}',
  'shell.problem.retry': 'Noch einmal versuchen',
  'shell.outbox.saved': 'Gespeichert',
  'shell.outbox.saving': 'Wird gespeichert …',
  'shell.outbox.waiting': '{count, plural, one {# Wert wartet} other {# Werte warten}}',
  'shell.outbox.stuck': '{count, plural, one {# Eintrag braucht Sie} other {# Einträge brauchen Sie}}',
};
