import { type ScaleTerms, type ScaleTermsDraft, type ShopWire, scaleTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { type UnitId, parseMeasure } from '#units';
import { wholeNumber } from '../readings/grid/grid-block.ts';

/** One wire of the shop, as typed. */
export interface WireForm {
  readonly name: string;
  readonly use: ShopWire['use'];
  readonly metal: ShopWire['metal'];
  readonly shape: ShopWire['shape'];
  readonly diameterMm: string;
  readonly certificateMPa: string;
  readonly testBreakN: string;
}

/** The terms of the strings, as typed; an empty text is not stated. */
export interface TermsForm {
  readonly strengthModel: NonNullable<ScaleTerms['strengthModel']> | '';
  readonly wrapMetal: NonNullable<ScaleTerms['wrapMetal']> | '';
  readonly wireSeries: NonNullable<ScaleTerms['wireSeries']> | '';
  readonly wrapPacking: string;
  readonly lengthUncertaintyMm: string;
  readonly diameterUncertaintyMm: string;
  readonly leastBreakingPct: string;
  readonly mostBreakingPct: string;
  readonly wires: readonly WireForm[];
  readonly remark: string;
}

export const emptyWire: WireForm = { name: '', use: 'plain', metal: 'steel', shape: 'round', diameterMm: '', certificateMPa: '', testBreakN: '' };

/** The figures of the form, with the unit each is typed in. */
export const termFigures = [
  ['leastBreakingPct', 'pct'], ['mostBreakingPct', 'pct'], ['lengthUncertaintyMm', 'mm'], ['diameterUncertaintyMm', 'mm'], ['wrapPacking', '1'],
] as const satisfies readonly (readonly [keyof TermsForm, UnitId])[];

/** The form that shows these terms, figures in the reader's locale. */
export function formOf(terms: ScaleTerms | null, locale: string): TermsForm {
  const show = (value: number | null | undefined): string => (value == null ? '' : wholeNumber(value, locale));
  const figures = Object.fromEntries(termFigures.map(([name]) => [name, show(terms?.[name])])) as Pick<TermsForm, (typeof termFigures)[number][0]>;
  return {
    strengthModel: terms?.strengthModel ?? '', wrapMetal: terms?.wrapMetal ?? '', wireSeries: terms?.wireSeries ?? '', ...figures,
    wires: (terms?.wires ?? []).map(({ certificateMPa, testBreakN, diameterMm, ...wire }) => ({ ...wire, diameterMm: show(diameterMm), certificateMPa: show(certificateMPa), testBreakN: show(testBreakN) })),
    remark: terms?.remark ?? '',
  };
}

/** The terms a form states, over what stands of the bearing; or which fields are wrong. */
export function termsOf(form: TermsForm, standing: ScaleTerms | null, locale: string): Result<ScaleTermsDraft> {
  const issues: Issue[] = [];
  const figure = (typed: string, path: string, unit: UnitId): number | null => {
    if (typed.trim() === '') return null;
    const parsed = parseMeasure(typed, { unit, path, locale });
    if (parsed.ok) return parsed.value.value;
    issues.push(...parsed.issues);
    return null;
  };
  const wires = form.wires.map((wire, index) => {
    const path = `wires[${String(index)}]`;
    if (wire.diameterMm.trim() === '') issues.push({ code: 'required', path: `${path}.diameterMm`, given: wire.diameterMm, allowed: 'a diameter', params: { kind: 'number' } });
    return {
      ...wire, diameterMm: figure(wire.diameterMm, `${path}.diameterMm`, 'mm') ?? 1,
      certificateMPa: figure(wire.certificateMPa, `${path}.certificateMPa`, '1'), testBreakN: figure(wire.testBreakN, `${path}.testBreakN`, 'N'),
    };
  });
  const figures = Object.fromEntries(termFigures.map(([name, unit]) => [name, figure(form[name], name, unit)]));
  if (issues.length > 0) return { ok: false, issues };
  const draft: ScaleTermsDraft = {
    ...(standing ?? {}), strengthModel: form.strengthModel || null, wrapMetal: form.wrapMetal || null, wireSeries: form.wireSeries || null, ...figures, wires, remark: form.remark,
  };
  const checked = checkInput(scaleTermsSchema, draft);
  return checked.ok ? ok(draft) : checked;
}
