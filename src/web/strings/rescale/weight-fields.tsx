import { useId } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { type Level, TRADE_STEPS, levels, weightsAt } from './rescale-draft.ts';
import type { PartProps } from './part-props.ts';

/** What matters how much, in words, with the numbers behind them. */
export function WeightFields({ draft, onChange, errorOf }: PartProps) {
  const say = useSay();
  const figure = useFigures();
  const id = useId();
  const weights = weightsAt(draft.trade, draft);
  const weight = (value = 0): string => figure(value, value === 0 ? 0 : value >= 0.095 ? 2 : 4);
  const described = say('rescale.trade.value', { point: draft.trade + 1, of: TRADE_STEPS, tension: figure(weights.tensionSmoothness ?? 0, 4), inharmonicity: figure(weights.inharmonicitySmoothness ?? 0, 4) });
  const level = (name: 'sizeChange' | 'nearTarget', value: number | undefined) => (
    <SelectField<Level> label={say(`rescale.${name}`)} value={draft[name]} options={levels.map((one) => ({ value: one, label: say(`rescale.level.${one}`) }))} hint={say('rescale.weight', { value: weight(value) })} onChange={(chosen) => { onChange({ [name]: chosen }); }} />
  );
  return (
    <fieldset className="rescale-part">
      <legend>{say('rescale.weights')}</legend>
      <div className="field">
        <div className="field-head"><label htmlFor={id}>{say('rescale.trade')}</label></div>
        <input id={id} type="range" className="size-drag" min={0} max={TRADE_STEPS - 1} step={1} value={draft.trade} aria-valuetext={described} onChange={(event) => { onChange({ trade: Number(event.target.value) }); }} />
        <div className="row row-between small soft" aria-hidden="true"><span>{say('rescale.trade.tension')}</span><span>{say('rescale.trade.inharmonicity')}</span></div>
        <p className="field-said">{described}</p>
      </div>
      <div className="rescale-fields">
        {level('sizeChange', weights.sizeChange)}
        {level('nearTarget', weights.tensionDeviation)}
      </div>
      {draft.nearTarget !== 'none' && (
        <>
          <Choice label={say('rescale.target')} value={draft.target} options={(['standing', 'line'] as const).map((value) => ({ value, label: say(`rescale.target.${value}`) }))} onChange={(target) => { onChange({ target }); }} />
          {draft.target === 'line' && (
            <div className="rescale-fields">
              {(['lowestN', 'highestN'] as const).map((path) => <Field key={path} label={say(`rescale.${path}`)} inputMode="decimal" value={draft[path]} error={errorOf(path)} onChange={(text) => { onChange({ [path]: text }); }} />)}
            </div>
          )}
        </>
      )}
      <label className="rescale-check">
        <input type="checkbox" checked={draft.acrossBreaks} onChange={(event) => { onChange({ acrossBreaks: event.target.checked }); }} />
        <span>{say('rescale.acrossBreaks')} <span className="soft small">{say('rescale.acrossBreaks.hint')}</span></span>
      </label>
    </fieldset>
  );
}
