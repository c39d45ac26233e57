import { type PushReading, type PushTest, pushTestOf } from '#belly';
import { type Result, all, andThen, map, ok, refuse } from '#result';
import { type UnitId, millimetres, newtons, parseMeasure } from '#units';

/** One push, as typed: the load and how far the board went down. */
export interface PushLine {
  readonly force: string;
  readonly deflection: string;
}

export interface PushDraft {
  readonly lines: readonly PushLine[];
}

export const emptyPushLine: PushLine = { force: '', deflection: '' };
export const emptyPushDraft: PushDraft = { lines: [emptyPushLine, emptyPushLine, emptyPushLine] };

/** The stiffness behind the pushes; lines left wholly empty are passed over. `undefined` while nothing is typed. */
export function pushOf(draft: PushDraft, locale: string): Result<PushTest> | undefined {
  const readings = readingsOf(draft, locale);
  return readings.ok && readings.value.length === 0 ? undefined : andThen(readings, pushTestOf);
}

/** What the operation `push-test` is given. */
export function pushInputOf(draft: PushDraft, locale: string): { readonly readings: readonly PushReading[] } {
  const readings = readingsOf(draft, locale);
  return { readings: readings.ok ? readings.value : [] };
}

function readingsOf({ lines }: PushDraft, locale: string): Result<readonly PushReading[]> {
  const typed = lines.map((line, index) => ({ line, index })).filter(({ line }) => line.force.trim() !== '' || line.deflection.trim() !== '');
  return all(typed.map(({ line, index }): Result<PushReading> => {
    const path = `readings[${String(index)}]`;
    const force = figureOf(line.force, `${path}.forceN`, { unit: 'N', locale });
    const deflection = figureOf(line.deflection, `${path}.deflectionMm`, { unit: 'mm', locale });
    if (!force.ok || !deflection.ok) return refuse(...(force.ok ? [] : force.issues), ...(deflection.ok ? [] : deflection.issues));
    return ok({ forceN: newtons(force.value), deflectionMm: millimetres(deflection.value) });
  }));
}

function figureOf(text: string, path: string, { unit, locale }: { readonly unit: UnitId; readonly locale: string }): Result<number> {
  if (text.trim() === '') return refuse({ code: 'required', path, given: text, allowed: 'a number', params: { kind: 'number' } });
  return map(parseMeasure(text, { unit, path, locale }), ({ value }) => value);
}
