/** German: money as typed and as worked out. */
export const money = {
  'issue.required.money': 'Hier steht nichts. Ein Betrag in {currency} wird gebraucht.',
  'issue.format.money': '„{given}“ lässt sich nicht als Betrag in {currency} lesen. So schreiben: {sample}.',
  'issue.format.moneyDigits': '„{given}“ hat mehr Nachkommastellen als {currency}: {digits, plural, =0 {keine ist} one {höchstens # ist} other {höchstens # sind}} erlaubt. Es wurde nichts gerundet.',
  'issue.ambiguous.money': '„{given}“ kann Tausender oder Nachkommastellen meinen. So schreiben: {sample}, oder die Tausender ohne Zeichen.',
  'issue.unit.money': '„{given}“ nennt eine andere Währung. Beträge stehen hier in {currency}.',
  'issue.range.amountTooLarge': '{given} ist zu groß, um auf die letzte Einheit gehalten zu werden.',
} as const;
