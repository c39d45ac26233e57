/** English: the Tone page. ICU MessageFormat. */
export const tone = {
  'tone.title': 'Tone',
  'tone.view': 'What to look at',
  'tone.view.recordings': 'Recordings',
  'tone.view.compass': 'Compass',
  'tone.none': 'Nothing is recorded of this stay yet. Record the notes before the first string or hammer is touched: what was heard then cannot be heard again. Same microphone, same place, same room before and after.',
} as const;
