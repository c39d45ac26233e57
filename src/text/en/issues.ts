/** English: issues, one message per code. ICU MessageFormat. */
export const issues = {
  'issue.required': 'Nothing is given here. {kind, select, number {A number is needed.} other {A value is needed.}}',
  'issue.type': '“{given}” is not {kind, select, number {a number} int {a whole number} string {text} boolean {yes or no} array {a list} object {a group of fields} other {what is needed here: {allowed}}}.',
  'issue.range': '{given} is outside what is allowed: {bounds, select, between {{min} to {max}} min {{min} or more} above {more than {above}} max {{max} or less} below {less than {below}} other {{allowed}}}{unit, select, none {} other { {unit}}}.',
  'issue.order': '{given} stands in the wrong order: {allowed}.',
  'issue.length': '{of, select, string {This text has the wrong length} other {This list has the wrong length}}: {bounds, select, between {{min} to {max}} min {{min} or more} above {more than {above}} max {{max} or fewer} below {fewer than {below}} other {{allowed}}} {of, select, string {characters} other {entries}} are allowed.',
  'issue.choice': '“{given}” is not one of the choices: {choices}.',
  'issue.format': '“{given}” cannot be read here. Allowed: {allowed}.',
  'issue.ambiguous': '“{given}” can be read in two ways. Write {allowed}.',
  'issue.unit': '“{given}” has a unit that does not fit. Allowed: {allowed}.',
  'issue.unknown': 'There is no such field, and nothing was taken from it.',
  'issue.duplicate': '“{given}” stands here twice: {allowed}.',
  'issue.conflict': 'Someone else wrote here first: {allowed}. Nothing was overwritten.',
  'issue.unreachable': '{given} cannot be reached: {allowed}.',
  'issue.unsolvable': 'There is no solution for what is given: {allowed}.',
} as const;
