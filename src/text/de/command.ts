import type { command as english } from '../en/command.ts';

/** German: command. ICU MessageFormat. */
export const command: Readonly<Record<keyof typeof english, string>> = {
  'command.palette': 'Befehle',
  'command.search': 'Tippen Sie, was Sie tun möchten',
  'command.none': 'Auf dieser Seite heißt kein Befehl so.',
  'command.keys': 'Tastenkürzel',
  'command.ctrl': 'Strg',
  'command.group.everywhere': 'Überall',
  'command.group.piano': 'Dieses Instrument',
  'command.group.look': 'Aussehen und Sprache',
  'command.go.pianos': 'Zu den Instrumenten',
  'command.go.settings': 'Zu den Einstellungen',
  'command.go.story': 'Zum Verlauf',
  'command.go.readings': 'Zu den Messwerten',
  'command.go.action': 'Zur Mechanik',
  'command.go.work': 'Zur Arbeitsliste',
  'command.go.proof': 'Zum Nachweis',
  'command.undo': 'Letzten Schritt an diesem Instrument zurücknehmen',
  'command.theme.light': 'Helle Darstellung',
  'command.theme.dark': 'Dunkle Darstellung',
  'command.theme.system': 'Darstellung wie auf dem Gerät eingestellt',
  'command.language.en': 'English (Englisch)',
  'command.language.de': 'Deutsch',
};
