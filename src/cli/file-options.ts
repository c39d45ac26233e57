import { type State, states } from '#instrument';
import type { Options } from 'yargs';
import { refused } from './failure.ts';
import { say } from './language.ts';

/** The options that say which figures of a piano a file holds. */
export const figuresOptions = {
  state: { choices: states, demandOption: true, describe: say('cli.state') },
  cycle: { type: 'string', requiresArg: true, describe: say('cli.cycle') },
  locale: { type: 'string', requiresArg: true, describe: say('cli.locale') },
} as const satisfies Readonly<Record<string, Options>>;

export interface FiguresArguments {
  readonly state: State;
  readonly cycle?: string;
  readonly locale?: string;
}

/** The stay a person names, or the current one; refuses what is no stay of this piano. */
export function cycleOf(typed: string | undefined, current: number): number {
  if (typed === undefined) return current;
  const cycle = /^\d{1,9}$/u.test(typed) ? Number(typed) : 0;
  if (cycle >= 1 && cycle <= current) return cycle;
  throw refused([{ code: 'range', path: '--cycle', given: typed, allowed: `1 to ${String(current)}`, params: { min: 1, max: current } }]);
}

/** The locale a person names, as a BCP 47 tag, or `undefined`; refuses what is none. */
export function localeOption(typed: string | undefined): string | undefined {
  if (typed === undefined) return undefined;
  try {
    return Intl.getCanonicalLocales(typed)[0];
  } catch {
    throw refused([{ code: 'choice', path: '--locale', given: typed, allowed: 'a language tag such as en-GB or de-DE', params: { choices: 'en-GB, de-DE …' } }]);
  }
}
