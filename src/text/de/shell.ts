import type { shell as english } from '../en/shell.ts';

/** German: shell. ICU MessageFormat. */
export const shell: Readonly<Record<keyof typeof english, string>> = {
  'shell.name': 'Wrestplank',
};
