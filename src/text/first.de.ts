import { command } from './de/command.ts';
import { issues } from './de/issues.ts';
import { pianos } from './de/pianos.ts';
import { quantities } from './de/quantities.ts';
import { settings } from './de/settings.ts';
import { shell } from './de/shell.ts';

/** The German messages the first page, its dialogs and the frame around every page need; the rest may come after. */
export const first = {
  ...shell,
  ...pianos,
  ...quantities,
  ...command,
  ...settings,
  ...issues,
} as const;
