import { type ActionTerms, type ActionTermsDraft, type BenchOperation, type BenchSetUp, actionTermsSchema, benchParts, benchSetUps } from '#instrument';
import type { Say } from '#text';
import { benchJobs, jobsOf, needsOf } from '#workshop';
import { useEffect } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { useActionForm } from '../terms/use-action-form.ts';
import { stageKinds } from './say-work.ts';
import { type WorkForm, withUsualMinutes, workFormOf, workTermsOf } from './work-terms.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';

interface WorkTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  /** What is typed, at every stroke; undefined where it cannot be read. */
  readonly onTyped: (terms: ActionTerms | undefined) => void;
  readonly onClose: () => void;
}

/** The shop's minutes for each job and set-up, and what the work is to keep to. The answer follows while it is typed. */
export function WorkTermsForm({ isBusy, onState, onTyped, onClose }: WorkTermsFormProps) {
  const say = useSay();
  const locale = useLocale();
  const { instrument: { kind }, action } = usePiano();
  const fields = useActionForm({ name: 'work', formOf: workFormOf, termsOf: workTermsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  useEffect(() => {
    const result = workTermsOf(form, action, locale);
    onTyped(result.ok ? actionTermsSchema.parse(result.value) : undefined);
  }, [form, action, locale, onTyped]);
  const jobs = jobsOf(kind);
  const setUps = benchSetUps.filter((setUp) => jobs.some((operation) => needsOf(operation, kind).includes(setUp)));
  return (
    <TermsFrame id="work-terms" title={say('leastWork.terms')} fields={fields} isBusy={isBusy} onClose={onClose} className="panel work-terms">
      <p className="soft small">{say('leastWork.terms.about')}</p>
      <MinuteFields form={form} jobs={jobs} setUps={setUps} errorOf={errorOf} onChange={change} />
      <div className="row">
        <button type="button" className="button" onClick={() => { change((now) => withUsualMinutes(now, jobs, setUps, locale)); }}>{say('leastWork.terms.usual')}</button>
        <span className="soft small">{say('leastWork.terms.usualSource')}</span>
      </div>
      <PriceFields form={form} jobs={jobs} errorOf={errorOf} onChange={change} />
      <Limits form={form} isGrand={kind === 'grand'} onChange={change} />
    </TermsFrame>
  );
}

type Change = (turn: (form: WorkForm) => WorkForm) => void;

interface MinuteFieldsProps {
  readonly form: WorkForm;
  readonly jobs: readonly BenchOperation[];
  readonly setUps: readonly BenchSetUp[];
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: Change;
}

function MinuteFields({ form, jobs, setUps, errorOf, onChange }: MinuteFieldsProps) {
  const say = useSay();
  const { instrument: { kind } } = usePiano();
  return (
    <div className="work-fields">
      <p className="work-caption">{say('leastWork.terms.jobs')}</p>
      {stageKinds.map((changes) => (
        <fieldset key={changes} className="work-group">
          <legend>{say(`leastWork.stage.${changes}`)}</legend>
          {jobs.filter((name) => benchJobs[name].changes === changes).map((name) => (
            <Field
              key={name} label={say(`actionTerms.operation.${name}`)} inputMode="decimal" value={form.minutes[name]} hint={needsSaid(say, needsOf(name, kind))} error={errorOf(`minutes.${name}`)}
              onChange={(value) => { onChange((now) => ({ ...now, minutes: { ...now.minutes, [name]: value } })); }}
            />
          ))}
        </fieldset>
      ))}
      <fieldset className="work-group work-set-ups">
        <legend>{say('leastWork.terms.setUps')}</legend>
        {setUps.map((name) => (
          <Field key={name} label={say(`actionTerms.setUp.${name}`)} inputMode="decimal" value={form.setUps[name]} error={errorOf(`setUps.${name}`)} onChange={(value) => { onChange((now) => ({ ...now, setUps: { ...now.setUps, [name]: value } })); }} />
        ))}
        <p className="field-said">{say('leastWork.terms.setUpsHint')}</p>
      </fieldset>
    </div>
  );
}

/** The shop's own price of each part its jobs use up, and the money it is in. */
function PriceFields({ form, jobs, errorOf, onChange }: Omit<MinuteFieldsProps, 'setUps'>) {
  const say = useSay();
  const parts = benchParts.filter((part) => jobs.some((name) => benchJobs[name].part === part));
  return (
    <fieldset className="work-group work-set-ups">
      <legend>{say('leastWork.terms.prices')}</legend>
      <Field label={say('actionTerms.field.currency')} value={form.currency} hint={say('leastWork.terms.currency.hint')} error={errorOf('currency')} onChange={(currency) => { onChange((now) => ({ ...now, currency })); }} />
      {parts.map((part) => (
        <Field key={part} label={say(`benchPart.${part}.one`)} inputMode="decimal" value={form.prices[part]} error={errorOf(`prices.${part}`)} onChange={(value) => { onChange((now) => ({ ...now, prices: { ...now.prices, [part]: value } })); }} />
      ))}
      <p className="field-said">{say('leastWork.terms.prices.hint')}</p>
    </fieldset>
  );
}

/** What a job needs set up, in a few words; the scale goes without saying. */
function needsSaid(say: Say, needs: readonly BenchSetUp[]): string {
  return say('leastWork.terms.needs', { setUps: needs.flatMap((setUp) => (setUp === 'weighing' ? [] : [say(`leastWork.need.${setUp}`)])).join(', ') });
}

function Limits({ form, isGrand, onChange }: { readonly form: WorkForm; readonly isGrand: boolean; readonly onChange: Change }) {
  const say = useSay();
  const places = isGrand ? (['key', 'centres', 'roller'] as const) : (['key', 'centres'] as const);
  return (
    <>
      <SelectField<WorkForm['excessSits']>
        label={say('actionTerms.field.excessSits')} value={form.excessSits}
        options={[{ value: '', label: say('leastWork.terms.excess.none') }, ...places.map((value) => ({ value, label: say(`actionTerms.excessSits.${value}`) }))]}
        onChange={(excessSits) => { onChange((now) => ({ ...now, excessSits })); }}
      />
      {isGrand && (
        <Choice<WorkForm['frictionLimit']>
          label={say('actionTerms.field.frictionLimit')} value={form.frictionLimit} hint={say('leastWork.terms.limit.hint')}
          options={(['', 'usual', 'planned'] as const).map((value) => ({ value, label: say(`leastWork.terms.limit.${value === '' ? 'none' : value}`) }))}
          onChange={(frictionLimit) => { onChange((now) => ({ ...now, frictionLimit })); }}
        />
      )}
      <Choice<WorkForm['workRoom']>
        label={say('actionTerms.field.workRoom')} value={form.workRoom}
        options={[{ value: '', label: say('leastWork.terms.room.none') }, { value: 'doubt', label: say('leastWork.terms.room.doubt') }]}
        onChange={(workRoom) => { onChange((now) => ({ ...now, workRoom })); }}
      />
    </>
  );
}
