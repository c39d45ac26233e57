import { type CareDraft, type CareOf, careDraftSchema } from '#workshop';
import { checkInput } from '#operation';
import { type Result, ok } from '#result';
import { unitSign } from '#units';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import { usePiano } from '../api/piano.tsx';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useDraftForm } from '../terms/use-draft-form.ts';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { useCaring } from './care-queries.ts';

const figures = [['temperatureC', 'degC'], ['humidityPct', 'pct'], ['pitchCt', 'ct'], ['bearingDeg', 'deg'], ['moisturePct', 'pct']] as const;
type Form = Readonly<Record<'at' | 'remark' | (typeof figures)[number][0], string>>;

/** A reading of the air by hand, new or to be corrected, with what of the piano was read beside it. Half-filled it stays on the device. */
export function AirForm({ reading, onClose }: { readonly reading?: CareOf<'air'> | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  const caring = useCaring();
  const { draft, set, errorOf, submit } = useDraftForm({
    name: `care.air.${reading?.id ?? id}`,
    base: () => airFormOf(reading, locale),
    stated: (typed) => airOf(typed, locale),
    onState: (stated, drop) => {
      const onKept = (): void => { drop(); onClose(); };
      caring.mutate(reading === undefined ? { kind: 'add', draft: stated, onKept } : { kind: 'change', id: reading.id, change: stated, onKept });
    },
  });
  const { typed: form } = draft;
  return (
    <form onSubmit={submit} noValidate aria-labelledby="care-air-form" className="care-form">
      <h3 id="care-air-form">{say(reading === undefined ? 'care.air.form' : 'care.air.correct')}</h3>
      {draft.isTakenUp && <TakenUp />}
      <p className="soft small">{say('care.air.form.hint')}</p>
      <div className="fields">
        <DayField hasClock label={say('care.field.at')} value={form.at} hint={say('care.hint.at')} error={errorOf('at')} onChange={(at) => { set({ at }); }} />
        {figures.map(([name, unit]) => <Field key={name} label={`${say(`care.field.${name}`)} (${unitSign[unit]})`} value={form[name]} error={errorOf(name)} onChange={(value) => { set({ [name]: value }); }} />)}
      </div>
      <Field label={say('care.field.remark')} value={form.remark} lines={2} maxLength={2000} error={errorOf('remark')} onChange={(remark) => { set({ remark }); }} />
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={caring.isPending}>{say('care.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('care.cancel')}</button>
      </div>
    </form>
  );
}

/** The form of a reading that stands, or of one taken now. */
function airFormOf(reading: CareOf<'air'> | undefined, locale: string): Form {
  const shown = Object.fromEntries(figures.map(([name]) => [name, shownFigure(reading?.[name], locale)])) as Readonly<Record<(typeof figures)[number][0], string>>;
  return { ...shown, at: reading?.at ?? new Date().toLocaleString('sv-SE').slice(0, 16).replace(' ', 'T'), remark: reading?.remark ?? '' };
}

/** The reading a form states, or which fields are wrong. */
function airOf({ at, remark, ...typed }: Form, locale: string): Result<Extract<CareDraft, { kind: 'air' }>> {
  const reader = figureReader(locale);
  const [temperatureC, humidityPct, pitchCt, bearingDeg, moisturePct] = figures.map(([name, unit]) => reader.read(typed[name], name, unit));
  const missing = typed.humidityPct.trim() === '' ? [{ code: 'required', path: 'humidityPct', given: '', allowed: 'a humidity', params: { kind: 'number' } } as const] : [];
  const issues = [...reader.issues, ...missing];
  if (issues.length > 0) return { ok: false, issues };
  const draft: Extract<CareDraft, { kind: 'air' }> = { kind: 'air', at: at.slice(0, 16), temperatureC: temperatureC ?? null, humidityPct: humidityPct ?? 0, pitchCt: pitchCt ?? null, bearingDeg: bearingDeg ?? null, moisturePct: moisturePct ?? null, remark };
  const checked = checkInput(careDraftSchema, draft);
  return checked.ok ? ok(draft) : checked;
}
