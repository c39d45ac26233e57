import { checkInput } from '#operation';
import { type Result, ok, refuse } from '#result';
import { type CareDraft, type CareOf, type PartLife, type WornPart, careDraftSchema, careIssues, usualPlan, wornParts } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';

/** Figures of the plan as typed, with the unit a bare number is read in. */
export const planFigures = [['hoursPerWeek', '1'], ['intensity', '1'], ['lowPct', '1'], ['highPct', '1'], ['dayChangePct', '1'], ['boardMm', 'mm'], ['blockMm', 'mm']] as const;

/** The life of one part as typed. */
export interface LifeForm {
  readonly by: PartLife['by'];
  readonly from: string;
  readonly to: string;
  readonly since: string;
}

export type PlanForm = Readonly<Record<'strungOn' | 'lastTunedOn' | 'visitsFirstYear' | 'visitsLater' | 'remark' | (typeof planFigures)[number][0], string>> & { readonly lives: Readonly<Record<WornPart, LifeForm>> };

type Plan = Omit<CareOf<'plan'>, 'id' | 'madeAt'>;

/** The form of a plan that stands, or of the usual one. */
export function planFormOf(plan: Plan | undefined, locale: string): PlanForm {
  const given = plan ?? usualPlan;
  const lives = Object.fromEntries(wornParts.map((part) => {
    const life = given.lives.find((one) => one.part === part);
    const usual = usualPlan.lives.find((one) => one.part === part);
    return [part, { by: life?.by ?? usual?.by ?? 'years', from: shownFigure(life?.from, locale), to: shownFigure(life?.to, locale), since: life?.since ?? '' }];
  })) as unknown as PlanForm['lives'];
  const shown = Object.fromEntries(planFigures.map(([name]) => [name, shownFigure(given[name], locale)])) as Readonly<Record<(typeof planFigures)[number][0], string>>;
  return { ...shown, strungOn: given.strungOn ?? '', lastTunedOn: given.lastTunedOn ?? '', visitsFirstYear: String(given.visitsFirstYear), visitsLater: String(given.visitsLater), remark: given.remark, lives };
}

const OPTIONAL: ReadonlySet<string> = new Set(['boardMm', 'blockMm']);

/** The plan a form states, or which fields are wrong. A part with neither end of its life is not watched. */
export function planOf(form: PlanForm, locale: string): Result<Extract<CareDraft, { kind: 'plan' }>> {
  const reader = figureReader(locale);
  const figures = Object.fromEntries(planFigures.map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  const missing = planFigures.filter(([name]) => !OPTIONAL.has(name) && form[name].trim() === '').map(([name]) => need(name));
  const typed = wornParts.filter((part) => form.lives[part].from.trim() !== '' || form.lives[part].to.trim() !== '');
  const lives = typed.map((part) => { const { by, from, to, since } = form.lives[part]; return { part, by, from: reader.read(from, `${part}.from`, '1'), to: reader.read(to, `${part}.to`, '1'), since: since === '' ? null : since }; });
  const halves = typed.flatMap((part) => (['from', 'to'] as const).filter((end) => form.lives[part][end].trim() === '').map((end) => need(`${part}.${end}`)));
  const issues = [...reader.issues, ...missing, ...halves];
  if (issues.length > 0) return refuse(...issues);
  const draft = { kind: 'plan', ...figures, strungOn: form.strungOn === '' ? null : form.strungOn, lastTunedOn: form.lastTunedOn === '' ? null : form.lastTunedOn, visitsFirstYear: Number(form.visitsFirstYear), visitsLater: Number(form.visitsLater), remark: form.remark, lives };
  const checked = checkInput(careDraftSchema, draft);
  const named = (path: string): string => path.replace(/^lives\[(\d+)\]/u, (_, index: string) => typed[Number(index)] ?? '');
  if (!checked.ok) return refuse(...checked.issues.map((issue) => ({ ...issue, path: named(issue.path) })));
  const wrong = careIssues(checked.value).map((issue) => ({ ...issue, path: named(issue.path) }));
  return wrong.length > 0 ? refuse(...wrong) : ok(draft as Extract<CareDraft, { kind: 'plan' }>);
}

function need(path: string) {
  return { code: 'required', path, given: '', allowed: 'a number', params: { kind: 'number' } } as const;
}
