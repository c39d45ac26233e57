import type { issues as english } from '../en/issues.ts';

/** German: issues. */
export const issues: Readonly<Record<keyof typeof english, string>> = {
  'issue.required': 'Hier ist nichts angegeben. {kind, select, number {Eine Zahl wird gebraucht.} other {Eine Angabe wird gebraucht.}}',
  'issue.type': '„{given}“ ist {kind, select, number {keine Zahl} int {keine ganze Zahl} string {kein Text} boolean {weder Ja noch Nein} array {keine Liste} object {keine Gruppe von Feldern} other {nicht, was hier gebraucht wird: {allowed}}}.',
  'issue.range': '{given} liegt außerhalb des Zulässigen: {bounds, select, between {{min} bis {max}} min {{min} oder mehr} above {mehr als {above}} max {{max} oder weniger} below {weniger als {below}} other {{allowed}}}{unit, select, none {} other { {unit}}}.',
  'issue.order': '{given} steht in falscher Reihenfolge: {allowed}.',
  'issue.length': '{of, select, string {Dieser Text hat die falsche Länge} other {Diese Liste hat die falsche Länge}}: Zulässig sind {bounds, select, between {{min} bis {max}} min {{min} oder mehr} above {mehr als {above}} max {höchstens {max}} below {weniger als {below}} other {{allowed}}} {of, select, string {Zeichen} other {Einträge}}.',
  'issue.choice': '„{given}“ steht nicht zur Wahl. Möglich sind: {choices}.',
  'issue.format': '„{given}“ ist hier nicht zu lesen. Zulässig: {allowed}.',
  'issue.ambiguous': '„{given}“ lässt sich auf zwei Arten lesen. Bitte schreiben: {allowed}.',
  'issue.unit': '„{given}“ hat eine Einheit, die hier nicht passt. Zulässig: {allowed}.',
  'issue.unknown': 'Dieses Feld gibt es nicht; es wurde nichts daraus übernommen.',
  'issue.duplicate': '„{given}“ steht hier zweimal: {allowed}.',
  'issue.conflict': 'Hier hat inzwischen jemand anderes geschrieben: {allowed}. Es wurde nichts überschrieben.',
  'issue.unreachable': '{given} ist nicht zu erreichen: {allowed}.',
  'issue.unsolvable': 'Für diese Angaben gibt es keine Lösung: {allowed}.',
};
