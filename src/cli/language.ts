import { createSay } from '#text';

/** What the shell asks for in LC_ALL, LC_MESSAGES or LANG, as a BCP 47 tag; English where it asks for none or plain C. */
export function localeOfShell(environment: Readonly<Record<string, string | undefined>>): string {
  const asked = [environment['LC_ALL'], environment['LC_MESSAGES'], environment['LANG']].find((value) => value !== undefined && value !== '') ?? '';
  try {
    return Intl.NumberFormat.supportedLocalesOf(asked.replace(/[.@].*$/u, '').replaceAll('_', '-'))[0] ?? 'en';
  } catch {
    return 'en';
  }
}

/** The language of this run of the command. */
export const locale = localeOfShell(process.env);
export const say = createSay(locale);

/** Name the command is called by, in help and hints. */
export const PROGRAM = 'wrestplank';
