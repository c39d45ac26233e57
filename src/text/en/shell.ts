/** English: shell. ICU MessageFormat. */
export const shell = {
  'shell.name': 'Wrestplank',
} as const;
