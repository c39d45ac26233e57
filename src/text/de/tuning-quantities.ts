import type { tuningQuantities as english } from '../en/tuning-quantities.ts';

/** German: what is measured of the tuning. ICU MessageFormat. */
export const tuningQuantities: Readonly<Record<keyof typeof english, string>> = {
  'quantity.pitchHz.name': 'Tonhöhe des Tons',
  'quantity.pitchHz.short': 'Tonhöhe',
  'quantity.pitchHz.howTo': 'Frequenz des 1. Teiltons in Hertz, eine Saite klingend, die anderen abgedämpft. Im Bass, wo der 1. Teilton kaum zu hören ist: was die höheren Teiltöne für ihn ergeben. Eine Aufnahme des Tons trägt sie ein.',
  'quantity.pitchHz.mistakes': 'Die Oktave darüber oder darunter notiert; drei uneinige Saiten für eine genommen; abgelesen, bevor der Ton nach dem Anschlag zur Ruhe kam.',
  'quantity.unisonSpreadCt.name': 'Streuung des Chors',
  'quantity.unisonSpreadCt.short': 'Chor',
  'quantity.unisonSpreadCt.howTo': 'Cent zwischen der höchsten und der tiefsten Saite des Tons, alle klingend. Aus zwei Saiten: Schwebungen je Sekunde mal 1731, geteilt durch die Frequenz, die schwebt.',
  'quantity.unisonSpreadCt.mistakes': 'Die Eigenschwebung einer einzelnen Saite für einen verstimmten Chor gehalten: die anderen abdämpfen und noch einmal hören.',
  'quantity.unisonLineCount.name': 'Tonhöhen im Chor',
  'quantity.unisonLineCount.short': 'Linien',
  'quantity.unisonLineCount.howTo': 'Wie viele Tonhöhen sich im Ton unterscheiden lassen: eine bei reinem Chor.',
  'quantity.unisonLineCount.mistakes': 'Die Zahl der Saiten statt der Tonhöhen notiert.',
  'quantity.inharmonicityB.name': 'Inharmonizität, gemessen',
  'quantity.inharmonicityB.short': 'B gemessen',
  'quantity.inharmonicityB.howTo': 'B aus f_n = n·f₀·√(1 + B·n²), aus der Aufnahme einer Saite. Bei umsponnenen Saiten hängt es davon ab, welche Teiltöne genommen wurden; in der Bemerkung sagen, welche.',
  'quantity.inharmonicityB.mistakes': 'Die Zahl des ganzen verstimmten Chors; ein Kennwert anderer Art für B gehalten.',
};
