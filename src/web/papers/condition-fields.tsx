import { sayMaybe } from '../language/say-maybe.ts';
import { useSay } from '../language/use-say.ts';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { FormPart } from './fields-dialog.tsx';
import { type ConditionTyped, type OwnRuleForm, factTests, plainFacts } from './own-rule-form.ts';

const NEW: ConditionTyped = { fact: '', test: 'yes', value: '' };
const MOST = 20;

/** What a rule hangs on: one fact a row, all of them or any; without a row it holds always. */
export function ConditionFields({ typed: { joined, conditions }, change, errorOf }: FormPart<OwnRuleForm>) {
  const say = useSay();
  const set = (index: number, part: Partial<ConditionTyped>): void => { change((now) => ({ ...now, conditions: now.conditions.map((one, at) => (at === index ? { ...one, ...part } : one)) })); };
  return (
    <fieldset className="papers-group">
      <legend>{say('papers.own.conditions')}</legend>
      {conditions.length === 0 && <p>{say('papers.own.fact.none')}</p>}
      {conditions.length > 1 && <Choice label={say('papers.own.joined')} value={joined} options={(['all', 'any'] as const).map((value) => ({ value, label: say(`papers.own.joined.${value}`) }))} onChange={(to) => { change((now) => ({ ...now, joined: to })); }} />}
      {conditions.map(({ fact, test, value }, index) => {
        const [at, number] = [`conditions[${String(index)}]`, index + 1];
        return (
          <div className="fields" role="group" aria-label={say('papers.own.condition', { number })} key={index}>
            <SelectField label={say('papers.own.fact')} value={fact} error={errorOf(`${at}.fact`)} options={['', ...plainFacts].map((one) => ({ value: one, label: one === '' ? say('papers.own.fact.choose') : sayMaybe(say, `field.${one}`) }))} onChange={(to) => { set(index, { fact: to }); }} />
            <SelectField label={say('papers.own.test')} value={test} options={factTests.map((one) => ({ value: one, label: say(`papers.own.test.${one}`) }))} onChange={(to) => { set(index, { test: to }); }} />
            {(test === 'below' || test === 'atLeast') && <Field label={say('papers.own.value')} value={value} inputMode="decimal" error={errorOf(`${at}.value`)} onChange={(to) => { set(index, { value: to }); }} />}
            <div><button type="button" className="button button-quiet" aria-label={say('papers.own.dropCondition', { number })} onClick={() => { change((now) => ({ ...now, conditions: now.conditions.filter((_, other) => other !== index) })); }}>{say('papers.own.drop')}</button></div>
          </div>
        );
      })}
      {conditions.length < MOST && <div><button type="button" className="button" onClick={() => { change((now) => ({ ...now, conditions: [...now.conditions, NEW] })); }}>{say('papers.own.addCondition')}</button></div>}
    </fieldset>
  );
}
