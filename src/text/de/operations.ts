import type { operations as english } from '../en/operations.ts';

/** German: operations. ICU MessageFormat. */
export const operations: Readonly<Record<keyof typeof english, string>> = {
  'operation.touch-weight.title': 'Balancegewicht und Reibung',
  'operation.touch-weight.help': 'Nimmt Niedergewicht und Aufgewicht einer Taste und sagt, was sie im Gleichgewicht hält und was reibt. Mit der Stufung der Gewichte kommt die Reibung ohne den Anteil der Stufe hinzu, mit dem Vordergewicht auch, wie weit sich das Balancegewicht verschöbe, wenn alle Reibung mit der Last wüchse.',
  'operation.touch-uncertainty.title': 'Unsicherheit der Spielart',
  'operation.touch-uncertainty.help': 'Wie sicher Niedergewicht, Balancegewicht, Reibung und die Übersetzung nach Gewichten sind, wenn Stufung der Gewichte, Streuung wiederholter Wägungen und Waage bekannt sind, und aus welcher Wägung der Zweifel an der Übersetzung stammt. Angegeben sind Standardunsicherheiten; rund 95 % liegen innerhalb des Doppelten.',
  'operation.evenness.title': 'Gleichmäßigkeit einer Tastenreihe',
  'operation.evenness.help': 'Zählt, wie viele Werte in der Toleranz liegen, einfach und mit Abstand für die Unsicherheit, und findet den größten Sprung zwischen Nachbarn und die Tasten, die herausfallen. Eine Taste ohne Zahl wird als null angegeben und zählt nie als innerhalb. Die Fähigkeitszahl steht neben der Anzahl, nie allein.',
  'operation.smooth-curve.title': 'Glatte Kurve durch eine Tastenreihe',
  'operation.smooth-curve.help': 'Legt eine glatte Kurve durch gemessene Werte und überbrückt Lücken, damit ein Ziel beim Niveau des Instruments bleiben kann. Jeder Abschnitt wird für sich geglättet: Vom Übergang zwischen Bass und Diskant weiß die Kurve nichts.',
  'operation.sample-size.title': 'Wie viele Tasten wiegen',
  'operation.sample-size.help': 'Wie viele Tasten zu wiegen sind, damit ein Mittelwert genau genug ist oder eine schlechte Taste mit gegebener Sicherheit gefunden wird; und wie viele schlechte es noch geben kann, wenn keine der gewogenen schlecht war. Stichproben taugen für ein Angebot; der Nachweis ist jede Taste.',
  'operation.lever-ratios.title': 'Hebelverhältnisse',
  'operation.lever-ratios.help': 'Übersetzungen von Taste, Hebeglied, Hammer und ganzer Mechanik aus den sechs Hebelarmen. Untertasten und Obertasten getrennt messen. Dies ist die Übersetzung nach Wegen; die Übersetzung nach Gewichten ist eine eigene Zahl.',
  'operation.balance-from-parts.title': 'Balancegewicht aus den Teilen',
  'operation.balance-from-parts.help': 'Das Balancegewicht, das Hebelarme und die Gewichte von Hammer, Hebeglied und Taste erwarten lassen. Dämpfung gehoben; eine Hilfsfeder wird als das eingegeben, was sie vorn an der Taste abnimmt.',
  'operation.weight-ratio.title': 'Übersetzung nach Gewichten',
  'operation.weight-ratio.help': 'Die Übersetzung der Mechanik, wie die Gewichte sie zeigen, für einen Ton oder einen Abschnitt. Ein Ton sagt wenig, ein Abschnitt von fünfzehn viel. Untertasten und Obertasten getrennt angeben: Ihre Tastenhebel sind verschieden.',
  'operation.front-weight-target.title': 'Vordergewicht für ein Ziel',
  'operation.front-weight-target.help': 'Das Vordergewicht, mit dem eine Taste das gewünschte Balancegewicht bekommt, wenn Hammer, Hebeglied und Übersetzung bleiben, wie sie sind. Mit der Reibung auch, welches Niedergewicht und Aufgewicht zu erwarten ist.',
  'operation.touch-diagnosis.title': 'Warum eine Taste schwer oder leicht geht',
  'operation.touch-diagnosis.help': 'Zerlegt die Abweichung des Niedergewichts vom Ziel genau in Übersetzung, Hammer, Hebeglied, Vordergewicht und Reibung, benennt, was groß genug ist, und reiht die Abhilfen: zuerst Reibung, dann Übersetzung, dann Hammer, zuletzt Blei. Sagt es auch, wenn Fehler einander verdecken.',
  'operation.friction-budget.title': 'Woher die Reibung kommt',
  'operation.friction-budget.help': 'Wie viele Gramm vorn an der Taste von der Taste selbst, vom Achsstift des Hebeglieds, vom Achsstift des Hammers, von der Pilote und von der Hammerrolle stammen. Die Rolle ist meist der größte Teil.',
};
