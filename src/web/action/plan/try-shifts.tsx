import { explainIssue } from '#text';
import { type UnitId, unitSign } from '#units';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import { type ShiftName, shiftFields, stepped, topShiftFields } from './shift-draft.ts';
import type { ShiftDesk } from './use-plan.ts';
import '../../ui/stepped.css';
import './plan.css';

interface TryShiftsProps {
  readonly desk: ShiftDesk;
  readonly isPastCentre: boolean;
  /** Keeps what is tried in the terms; absent for an earlier stay. */
  readonly onState?: (() => void) | undefined;
}

/** Tries shifts on every key alike: typed or stepped, everything on the page moves with them, nothing is written until they are stated. */
export function TryShifts({ desk, isPastCentre, onState }: TryShiftsProps) {
  const say = useSay();
  const { draft, read, isChanged, drop } = desk;
  const hasTop = topShiftFields.some(([name]) => draft[name] !== '');
  return (
    <section className="panel plan-try" aria-labelledby="plan-try">
      <h2 id="plan-try">{say('plan.try')}</h2>
      <p className="soft small">{say('plan.try.about')}</p>
      <div className="what-if-fields">
        {shiftFields.map(([name, unit, step]) => <ShiftField key={name} name={name} unit={unit} step={step} desk={desk} />)}
      </div>
      <details open={hasTop}>
        <summary>{say('plan.try.tops')}</summary>
        <p className="soft small">{say('plan.try.tops.about')}</p>
        <div className="what-if-fields">
          {topShiftFields.map(([name, unit, step]) => <ShiftField key={name} name={name} unit={unit} step={step} desk={desk} />)}
        </div>
      </details>
      {isPastCentre && <p className="field-error" role="alert">{say('plan.try.pastCentre')}</p>}
      {isChanged && (
        <div className="row">
          {onState !== undefined && <button type="button" className="button button-main" disabled={read.issues.length > 0} onClick={onState}>{say('plan.try.state')}</button>}
          <button type="button" className="button" onClick={drop}>{say('plan.try.drop')}</button>
        </div>
      )}
    </section>
  );
}

function ShiftField({ name, unit, step, desk: { draft, read, set } }: { readonly name: ShiftName; readonly unit: UnitId; readonly step: number; readonly desk: ShiftDesk }) {
  const say = useSay();
  const locale = useLocale();
  const label = say(`actionTerms.field.${name}`);
  const issues = read.issues.filter(({ path }) => path === name);
  const move = (direction: 1 | -1) => (): void => { set({ ...draft, [name]: stepped(draft[name], { unit, step }, direction, locale) }); };
  return (
    <div className={draft[name] === '' ? 'size-field' : 'size-field is-tried'}>
      <Field
        label={unitSign[unit] === '' ? label : `${label} (${unitSign[unit]})`} inputMode="decimal" value={draft[name]} onChange={(typed) => { set({ ...draft, [name]: typed }); }}
        error={issues.length === 0 ? undefined : issues.map((issue) => explainIssue(say, issue, locale)).join(' ')}
      />
      <div className="size-steps">
        <button type="button" className="button" aria-label={say('plan.try.less', { name: label })} onClick={move(-1)}>−</button>
        <button type="button" className="button" aria-label={say('plan.try.more', { name: label })} onClick={move(1)}>+</button>
      </div>
    </div>
  );
}
