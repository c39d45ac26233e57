import { type Issue, type Result, ok, refuse } from '#result';
import { parseMeasure, unitSign } from '#units';
import { type Compass, keyCountOf } from './compass.ts';
import { type Scope, isQuantityName, quantityNames, quantityOf } from './quantity.ts';

/**
 * Where a figure belongs. `index` is the key number for scope `key`, 0 for naturals and 1 for sharps for scope `colour`,
 * 0 for the instrument. `repeat` counts weighings of the same thing in one session, from 1.
 */
export interface Place {
  readonly scope: Scope;
  readonly index: number;
  readonly repeat: number;
}

/** Checks that a place exists: the quantity's own scope, a key of the compass, a repeat from 1. */
export function checkPlace(quantity: string, place: Place, compass: Compass, path: string): Result<Place> {
  const issues: Issue[] = [];
  if (!isQuantityName(quantity)) return refuse({ code: 'choice', path, given: quantity, allowed: `one of ${quantityNames.join(', ')}` });
  const { scope } = quantityOf(quantity);
  if (place.scope !== scope) issues.push({ code: 'choice', path, given: place.scope, allowed: `scope ${scope}` });
  const [first, last] = scope === 'key' ? [1, keyCountOf(compass)] : scope === 'colour' ? [0, 1] : [0, 0];
  if (!Number.isInteger(place.index) || place.index < first || place.index > last) {
    issues.push({ code: 'range', path, given: place.index, allowed: `${scope} ${String(first)} to ${String(last)}`, params: { min: first, max: last } });
  }
  if (!Number.isInteger(place.repeat) || place.repeat < 1) issues.push({ code: 'range', path, given: place.repeat, allowed: 'repeat 1 or more' });
  return issues.length > 0 ? { ok: false, issues } : ok(place);
}

/** A figure understood from what was typed; `warning` when it is possible but not plausible. */
export interface UnderstoodFigure {
  readonly value: number;
  readonly converted: boolean;
  readonly warning?: Issue;
}

/** Understands a typed figure of a quantity: refuses what cannot be, warns of what is unlikely. */
export function understandFigure(quantity: string, typed: string, options: { readonly path: string; readonly locale?: string }): Result<UnderstoodFigure> {
  const { path } = options;
  if (!isQuantityName(quantity)) return refuse({ code: 'choice', path, given: quantity, allowed: `one of ${quantityNames.join(', ')}` });
  const { unit, possible, plausible, whole = false } = quantityOf(quantity);
  const parsed = parseMeasure(typed, { unit, ...options });
  if (!parsed.ok) return parsed;
  const { value, converted } = parsed.value;
  const outside = ([min, max]: readonly [number, number]): Issue | undefined =>
    value < min || value > max ? { code: 'range', path, given: typed, allowed: `${String(min)} to ${String(max)} ${unit}`, params: { min, max, given: typed, unit: unitSign[unit] } } : undefined;
  if (whole && !Number.isInteger(value)) return refuse({ code: 'type', path, given: typed, allowed: 'a whole number', params: { kind: 'int' } });
  const refusal = outside(possible);
  if (refusal !== undefined) return refuse(refusal);
  const warning = outside(plausible);
  return ok({ value, converted, ...(warning === undefined ? {} : { warning }) });
}
