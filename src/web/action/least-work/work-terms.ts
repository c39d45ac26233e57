import { type ActionTerms, type ActionTermsDraft, type BenchOperation, type BenchSetUp, type Instrument, benchOperations, benchSetUps } from '#instrument';
import type { Issue, Result } from '#result';
import { usualMinutes, usualSetUpMinutes } from '#workshop';
import { type TypedFigures, figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** Minutes and what else the least work hangs on, as typed. */
export interface WorkForm {
  readonly minutes: TypedFigures<BenchOperation>;
  readonly setUps: TypedFigures<BenchSetUp>;
  readonly excessSits: NonNullable<ActionTerms['excessSits']> | '';
  readonly frictionLimit: NonNullable<ActionTerms['frictionLimit']> | '';
  readonly workRoom: NonNullable<ActionTerms['workRoom']> | '';
}

/** No job takes longer than this at one key, no set-up at all; as the terms allow. */
const MOST_MINUTES = 2000;

/** The form that shows these terms, figures in the reader's locale. */
export function workFormOf(terms: ActionTerms | null, locale: string): WorkForm {
  const of = <Name extends string>(names: readonly Name[], minutesOf: (name: Name) => number | undefined): TypedFigures<Name> =>
    Object.fromEntries(names.map((name) => [name, shownFigure(minutesOf(name), locale)])) as TypedFigures<Name>;
  return {
    minutes: of(benchOperations, (name) => terms?.operationMinutes.find(({ operation }) => operation === name)?.minutes),
    setUps: of(benchSetUps, (name) => terms?.setUpMinutes.find(({ setUp }) => setUp === name)?.minutes),
    excessSits: terms?.excessSits ?? '', frictionLimit: terms?.frictionLimit ?? '', workRoom: terms?.workRoom ?? '',
  };
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. */
export function workTermsOf(form: WorkForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const outOfRange: Issue[] = [];
  const read = (typed: string, path: string): number | null => {
    const minutes = reader.read(typed, path, '1');
    if (minutes === null || (minutes >= 0 && minutes <= MOST_MINUTES)) return minutes;
    outOfRange.push({ code: 'range', path, given: typed, allowed: `0 to ${String(MOST_MINUTES)} minutes`, params: { min: 0, max: MOST_MINUTES } });
    return null;
  };
  const operationMinutes = benchOperations.flatMap((operation) => {
    const minutes = read(form.minutes[operation], `minutes.${operation}`);
    return minutes === null ? [] : [{ operation, minutes }];
  });
  const setUpMinutes = benchSetUps.flatMap((setUp) => {
    const minutes = read(form.setUps[setUp], `setUps.${setUp}`);
    return minutes === null ? [] : [{ setUp, minutes }];
  });
  const rest = { excessSits: form.excessSits || null, frictionLimit: form.frictionLimit || null, workRoom: form.workRoom || null } as const;
  return statedOver(standing, { operationMinutes, setUpMinutes, ...rest }, [...reader.issues, ...outOfRange]);
}

/** Empty fields filled with usual minutes; nothing typed is touched. */
export function withUsualMinutes(form: WorkForm, jobs: readonly BenchOperation[], setUps: readonly BenchSetUp[], locale: string): WorkForm {
  const filled = <Name extends string>(typed: TypedFigures<Name>, usual: Readonly<Record<Name, number>>, names: readonly Name[]): TypedFigures<Name> =>
    ({ ...typed, ...Object.fromEntries(names.filter((name) => typed[name].trim() === '').map((name) => [name, shownFigure(usual[name], locale)])) });
  return { ...form, minutes: filled(form.minutes, usualMinutes, jobs), setUps: filled(form.setUps, usualSetUpMinutes, setUps) };
}
