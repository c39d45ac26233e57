/** English: what is measured of the tuning. ICU MessageFormat. */
export const tuningQuantities = {
  'quantity.pitchHz.name': 'Pitch of the note',
  'quantity.pitchHz.short': 'Pitch',
  'quantity.pitchHz.howTo': 'Frequency of partial 1 in hertz, one string sounding, the others muted. In the bass, where partial 1 can hardly be heard, what the higher partials say it is. A recording of the note fills this in.',
  'quantity.pitchHz.mistakes': 'The octave above or below noted; three strings that disagree taken as one; a figure read before the note had settled after the stroke.',
  'quantity.unisonSpreadCt.name': 'Spread of the unison',
  'quantity.unisonSpreadCt.short': 'Unison',
  'quantity.unisonSpreadCt.howTo': 'Cents between the highest and the lowest string of the note, all of them sounding. From two strings: beats a second, times 1731, divided by the frequency that beats.',
  'quantity.unisonSpreadCt.mistakes': 'A false beat of a single string taken for a unison out of tune: mute the others and listen again.',
  'quantity.unisonLineCount.name': 'Pitches heard in the unison',
  'quantity.unisonLineCount.short': 'Lines',
  'quantity.unisonLineCount.howTo': 'How many pitches can be told apart in the note: one for a clean unison.',
  'quantity.unisonLineCount.mistakes': 'The number of strings noted instead of the pitches.',
  'quantity.inharmonicityB.name': 'Inharmonicity, measured',
  'quantity.inharmonicityB.short': 'B measured',
  'quantity.inharmonicityB.howTo': 'B of f_n = n·f₀·√(1 + B·n²), from a recording of one string. On wound strings it depends on which partials were used; say which in the remark.',
  'quantity.inharmonicityB.mistakes': 'A figure of the whole unison with the strings out of tune; a score of another kind taken for B.',
} as const;
