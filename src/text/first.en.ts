import { command } from './en/command.ts';
import { issues } from './en/issues.ts';
import { pianos } from './en/pianos.ts';
import { quantities } from './en/quantities.ts';
import { settings } from './en/settings.ts';
import { shell } from './en/shell.ts';

/** The English messages the first page, its dialogs and the frame around every page need; the rest may come after. */
export const first = {
  ...shell,
  ...pianos,
  ...quantities,
  ...command,
  ...settings,
  ...issues,
} as const;
