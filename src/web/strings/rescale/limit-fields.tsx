import { useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import type { PartProps } from './part-props.ts';

/** What must hold: the share of breaking of every string, and what all strings may pull together. */
export function LimitFields({ draft, onChange, errorOf }: PartProps) {
  const say = useSay();
  return (
    <fieldset className="rescale-part">
      <legend>{say('rescale.limits')}</legend>
      <div className="rescale-fields">
        {(['leastPct', 'mostPct'] as const).map((path) => (
          <Field key={path} label={say(`rescale.${path}`)} inputMode="decimal" value={draft[path]} error={errorOf(path)} hint={say('rescale.pct.hint')} onChange={(text) => { onChange({ [path]: text }); }} />
        ))}
      </div>
      <Choice label={say('rescale.total')} value={draft.total} options={(['free', 'hold', 'cap'] as const).map((value) => ({ value, label: say(`rescale.total.${value}`) }))} onChange={(total) => { onChange({ total }); }} />
      {draft.total !== 'free' && <Field label={say('rescale.totalKN')} inputMode="decimal" value={draft.totalKN} error={errorOf('totalKN')} onChange={(totalKN) => { onChange({ totalKN }); }} />}
    </fieldset>
  );
}
