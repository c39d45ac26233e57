import { rename, rm, writeFile } from 'node:fs/promises';
import type { Paper } from '#files';
import { refused } from './failure.ts';
import { locale as shellLocale } from './language.ts';
import { fileIssue } from './named-file.ts';

/** The language a document is asked for in, as a BCP 47 tag; the shell's where none is named, refused where it is none. */
export function localeAsked(lang: string | undefined): string {
  try {
    return lang === undefined ? shellLocale : (Intl.getCanonicalLocales(lang)[0] ?? shellLocale);
  } catch {
    throw refused([{ code: 'format', path: '--lang', given: lang, allowed: 'a language tag such as en, de or en-US' }]);
  }
}

/** The paper named, else Letter where it is usual, else A4. */
export function paperFor(named: Paper | undefined, locale: string): Paper {
  return named ?? (/-(?:US|CA|MX)\b/u.test(locale) ? 'letter' : 'a4');
}

/** Writes beside the file and moves it there in one step: what stood there stays whole until the new document is. */
export async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const beside = `${file}.${String(process.pid)}.part`;
  try {
    await writeFile(beside, bytes);
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw refused([fileIssue(file, error, 'write', '--out')]);
  }
}
