import { type Compass, type TouchIntent, keyCountOf, noteNameOf } from '#instrument';
import { type Issue, type Result, all, ok, refuse } from '#result';
import { type UnitId, formatMeasure, parseMeasure } from '#units';
import { keyTyped } from '../keys/key-typed.ts';

export interface AnchorDraft {
  readonly key: string;
  readonly weight: string;
}

/** What is to be even, as typed. */
export interface IntentDraft {
  readonly even: TouchIntent['even'] | null;
  readonly target: string;
  readonly anchors: readonly AnchorDraft[];
  readonly tolerance: string;
  readonly upWeightMin: string;
}

export const emptyIntentDraft: IntentDraft = { even: null, target: '', anchors: [{ key: '', weight: '' }, { key: '', weight: '' }], tolerance: '', upWeightMin: '' };

/** The draft that would give this intent, figures in the reader's locale. */
export function draftOf(intent: TouchIntent | null, compass: Compass, locale: string): IntentDraft {
  if (intent === null) return emptyIntentDraft;
  const show = (value: number): string => formatMeasure(value, { locale, decimals: Number.isInteger(value) ? 0 : 1 });
  return {
    even: intent.even,
    target: intent.even === 'curve' ? '' : show(intent.targetG),
    anchors: intent.even === 'curve' ? intent.anchors.map(({ key, downWeightG }) => ({ key: noteNameOf(compass, key), weight: show(downWeightG) })) : emptyIntentDraft.anchors,
    tolerance: show(intent.toleranceG),
    upWeightMin: intent.upWeightMinG === 0 ? '' : show(intent.upWeightMinG),
  };
}

/** The intent a draft states, or what is still missing or cannot be, by field. An empty least up weight asks for none. */
export function intentOf(draft: IntentDraft, compass: Compass, locale: string): Result<TouchIntent> {
  const { even } = draft;
  if (even === null) return refuse({ code: 'required', path: 'even', given: null, allowed: 'one of downWeight, balanceWeight, curve' });
  const grams = (path: string, typed: string, min: number, max: number): Result<number> => figureIn(path, typed, { unit: 'g', min, max, locale });
  const limits = all([grams('tolerance', draft.tolerance, 0.1, 50), draft.upWeightMin.trim() === '' ? ok(0) : grams('upWeightMin', draft.upWeightMin, 0, 100)]);
  if (even === 'curve') {
    const anchors = all(draft.anchors.map((anchor, index) => anchorOf(anchor, `anchors[${String(index)}]`, compass, grams)));
    const order = anchors.ok ? orderOf(anchors.value) : [];
    const issues = [...(anchors.ok ? order : anchors.issues), ...(limits.ok ? [] : limits.issues)];
    if (issues.length > 0 || !anchors.ok || !limits.ok) return { ok: false, issues };
    const [toleranceG = 0, upWeightMinG = 0] = limits.value;
    return ok({ even, anchors: [...anchors.value], toleranceG, upWeightMinG });
  }
  const figures = all([grams('target', draft.target, even === 'downWeight' ? 10 : 5, 150), ...(limits.ok ? limits.value.map(ok) : [limits])]);
  if (!figures.ok) return figures;
  const [targetG = 0, toleranceG = 0, upWeightMinG = 0] = figures.value;
  return ok({ even, targetG, toleranceG, upWeightMinG });
}

function figureIn(path: string, typed: string, { unit, min, max, locale }: { unit: UnitId; min: number; max: number; locale: string }): Result<number> {
  const parsed = parseMeasure(typed, { unit, path, locale });
  if (!parsed.ok) return parsed;
  const { value } = parsed.value;
  if (value >= min && value <= max) return ok(value);
  return refuse({ code: 'range', path, given: typed, allowed: `${String(min)} to ${String(max)} ${unit}`, params: { given: typed, min, max } });
}

function anchorOf({ key, weight }: AnchorDraft, path: string, compass: Compass, grams: (path: string, typed: string, min: number, max: number) => Result<number>): Result<{ key: number; downWeightG: number }> {
  const number = keyTyped(key, compass);
  const figure = grams(`${path}.weight`, weight, 10, 150);
  const issues: Issue[] = [
    ...(number === undefined ? [{ code: 'choice' as const, path: `${path}.key`, given: key, allowed: `a key 1 to ${String(keyCountOf(compass))} or a note`, params: { min: 1, max: keyCountOf(compass) } }] : []),
    ...(figure.ok ? [] : figure.issues),
  ];
  return number !== undefined && figure.ok ? ok({ key: number, downWeightG: figure.value }) : { ok: false, issues };
}

/** Anchors run up the keyboard, each key once. */
function orderOf(anchors: readonly { readonly key: number }[]): readonly Issue[] {
  return anchors.flatMap(({ key }, index) => {
    const before = anchors[index - 1]?.key;
    return before === undefined || key > before ? [] : [{ code: 'order' as const, path: `anchors[${String(index)}].key`, given: key, allowed: `a key above ${String(before)}`, params: { min: before } }];
  });
}
