import type { Language } from '#text';
import { setPreferences } from '../theme/preferences.ts';
import { toast } from '../toast/toasts.ts';
import { learn } from './catalogue.ts';
import { sayNow } from './use-say.ts';

/** Turns the whole program to a language once its words are here; without an answer it stays as it is, and says so. */
export async function chooseLanguage(language: Language): Promise<void> {
  try {
    await learn(language);
    setPreferences({ language });
  } catch {
    toast(sayNow()('shell.problem.noAnswer'), { tone: 'bad' });
  }
}
