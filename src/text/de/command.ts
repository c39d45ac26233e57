import type { command as english } from '../en/command.ts';

/** German: command. ICU MessageFormat. */
export const command: Readonly<Record<keyof typeof english, string>> = {
};
