import { askedFacts, factKindOf } from '#law';
import { factWord } from '#report';
import { Fragment } from 'react';
import { sayMaybe } from '../language/say-maybe.ts';
import { useSay } from '../language/use-say.ts';
import { CheckGroup } from '../ui/check-group.tsx';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { FormPart } from './fields-dialog.tsx';
import { type ConditionTyped, type OwnRuleForm, innerOf, placeOf, testsOf } from './own-rule-form.ts';

const NEW: ConditionTyped = { fact: '', test: 'yes', value: '', words: [] };
const MOST = 20;

/** What a rule hangs on: conditions of one part or several, all of them or any; without one it holds always. */
export function ConditionFields({ typed: { joined, conditions }, change, errorOf }: FormPart<OwnRuleForm>) {
  const say = useSay();
  const joins = innerOf(joined) === 'any' ? 'or' : 'and';
  const turn = (index: number, to: (parts: readonly ConditionTyped[]) => readonly ConditionTyped[]): void => {
    change((now) => ({ ...now, conditions: now.conditions.map((parts, at) => (at === index ? to(parts) : parts)).filter((parts) => parts.length > 0) }));
  };
  return (
    <fieldset className="papers-group">
      <legend>{say('papers.own.conditions')}</legend>
      <p className="soft small">{say('papers.own.byFile')}</p>
      {conditions.length === 0 && <p>{say('papers.own.fact.none')}</p>}
      {conditions.length > 1 && <Choice label={say('papers.own.joined')} value={joined} options={(['all', 'any'] as const).map((value) => ({ value, label: say(`papers.own.joined.${value}`) }))} onChange={(to) => { change((now) => ({ ...now, joined: to })); }} />}
      {conditions.map((parts, index) => {
        const number = index + 1;
        return (
          <div className="papers-group" role="group" aria-label={say('papers.own.condition', { number })} key={index}>
            {parts.map((part, inner) => (
              <Fragment key={inner}>
                {inner > 0 && <p>{say(`papers.own.${joins}`)}</p>}
                <PartFields
                  part={part} label={parts.length > 1 ? say('papers.own.part', { part: inner + 1, number }) : undefined} dropLabel={parts.length > 1 ? say('papers.own.dropPart', { part: inner + 1, number }) : say('papers.own.dropCondition', { number })}
                  errorOf={(path) => errorOf(`${placeOf(index, inner)}.${path}`)} onChange={(to) => { turn(index, (now) => now.map((one, at) => (at === inner ? { ...one, ...to } : one))); }} onDrop={() => { turn(index, (now) => now.filter((_, at) => at !== inner)); }}
                />
              </Fragment>
            ))}
            {parts.length < MOST && <div><button type="button" className="button button-quiet" aria-label={say(joins === 'or' ? 'papers.own.addOrTo' : 'papers.own.addAndTo', { number })} onClick={() => { turn(index, (now) => [...now, NEW]); }}>{say(joins === 'or' ? 'papers.own.addOr' : 'papers.own.addAnd')}</button></div>}
          </div>
        );
      })}
      {conditions.length < MOST && <div><button type="button" className="button" onClick={() => { change((now) => ({ ...now, conditions: [...now.conditions, [NEW]] })); }}>{say('papers.own.addCondition')}</button></div>}
    </fieldset>
  );
}

interface PartFieldsProps {
  readonly part: ConditionTyped;
  /** What the part is called among others; nothing where it stands alone. */
  readonly label: string | undefined;
  readonly dropLabel: string;
  readonly errorOf: (path: 'fact' | 'value' | 'words') => string | undefined;
  readonly onChange: (to: Partial<ConditionTyped>) => void;
  readonly onDrop: () => void;
}

/** One fact, held against yes or no, some words, or a number, as it can be. */
function PartFields({ part: { fact, test, value, words }, label, dropLabel, errorOf, onChange, onDrop }: PartFieldsProps) {
  const say = useSay();
  const asked = askedFacts.find((one) => one === fact);
  const kind = asked === undefined ? 'truth' : factKindOf(asked);
  return (
    <div className="fields" {...(label === undefined ? {} : { role: 'group', 'aria-label': label })}>
      <SelectField label={say('papers.own.fact')} value={fact} error={errorOf('fact')} options={['', ...askedFacts].map((one) => ({ value: one, label: one === '' ? say('papers.own.fact.choose') : sayMaybe(say, `field.${one}`) }))} onChange={(to) => { onChange({ fact: to, ...(testsOf(to).some((one) => one === test) ? {} : { test: testsOf(to)[0] ?? 'yes' }) }); }} />
      <SelectField label={say('papers.own.test')} value={test} options={testsOf(fact).map((one) => ({ value: one, label: say(`papers.own.test.${one}`) }))} onChange={(to) => { onChange({ test: to }); }} />
      {kind === 'number' && <Field label={say('papers.own.value')} value={value} inputMode="decimal" error={errorOf('value')} onChange={(to) => { onChange({ value: to }); }} />}
      {typeof kind !== 'string' && <CheckGroup label={say('papers.own.words')} chosen={words} options={kind.map((word) => ({ value: word, label: factWord(word, { say }) }))} error={errorOf('words')} onChange={(chosen) => { onChange({ words: chosen }); }} />}
      <div><button type="button" className="button button-quiet" aria-label={dropLabel} onClick={onDrop}>{say('papers.own.drop')}</button></div>
    </div>
  );
}
