import { type Compass, type Observation, type ObservationDraft, type Photo, type State, keyCountOf, noteNameOf, observationDraftSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, refuse } from '#result';
import { parseMeasure } from '#units';
import { keyTyped } from '../../keys/key-typed.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** An observation as typed; an empty text is not stated. */
export interface ObservationForm {
  readonly part: Observation['part'];
  readonly fault: Observation['fault'];
  readonly severity: NonNullable<Observation['severity']> | 'none';
  readonly fromKey: string;
  readonly toKey: string;
  readonly length: string;
  readonly remark: string;
  readonly photos: readonly Photo[];
}

export const emptyObservation: ObservationForm = { part: 'soundboard', fault: 'crack', severity: 'none', fromKey: '', toKey: '', length: '', remark: '', photos: [] };

/** The form that shows an observation, keys by their notes. */
export function observationFormOf({ part, fault, severity, fromKey, toKey, lengthMm, remark, photos }: Observation, compass: Compass, locale: string): ObservationForm {
  const key = (number: number | null): string => (number === null ? '' : noteNameOf(compass, number));
  return { part, fault, severity: severity ?? 'none', fromKey: key(fromKey), toKey: key(toKey), length: lengthMm === null ? '' : wholeNumber(lengthMm, locale), remark, photos };
}

interface Where {
  readonly compass: Compass;
  readonly locale: string;
  readonly cycle: number;
  readonly state: State;
}

/** The observation a form states, or which fields are wrong. */
export function observationOf(form: ObservationForm, { compass, locale, cycle, state }: Where): Result<ObservationDraft> {
  const issues: Issue[] = [];
  const key = (typed: string, path: string): number | null => {
    if (typed.trim() === '') return null;
    const found = keyTyped(typed, compass);
    if (found === undefined) issues.push({ code: 'range', path, given: typed, allowed: `1 to ${String(keyCountOf(compass))}, or the name of a note`, params: { min: 1, max: keyCountOf(compass) } });
    return found ?? null;
  };
  const [fromKey, toKey] = [key(form.fromKey, 'fromKey'), key(form.toKey, 'toKey')];
  if (fromKey !== null && toKey !== null && fromKey > toKey) issues.push({ code: 'range', path: 'toKey', given: toKey, allowed: `at least ${String(fromKey)}`, params: { min: fromKey, max: keyCountOf(compass) } });
  const length = form.length.trim() === '' ? undefined : parseMeasure(form.length, { unit: 'mm', path: 'lengthMm', locale });
  if (length?.ok === false) issues.push(...length.issues);
  if (issues.length > 0) return refuse(...issues);
  const { part, fault, severity, remark, photos } = form;
  return checkInput(observationDraftSchema, { cycle, state, part, fault, severity: severity === 'none' ? null : severity, fromKey, toKey, lengthMm: length?.ok === true ? length.value.value : null, remark, photos: [...photos] });
}
