import { keyCountOf, noteNameOf } from '#instrument';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { FieldHelp } from '../../leaves/field-help.tsx';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import { keyQuantities } from '../grid/grid-columns.ts';
import { type WalkChoice, keyOf } from './walk-choice.ts';

interface WalkSetupProps {
  readonly choice: WalkChoice;
  readonly onChoose: (choice: WalkChoice) => void;
}

/** What the walk asks for at each key, and in what order the keys come up. */
export function WalkSetup({ choice, onChoose }: WalkSetupProps) {
  const say = useSay();
  const { compass } = usePiano();
  const [from, setFrom] = useState(() => String(choice.fromKey));
  const [every, setEvery] = useState(() => String(choice.everyNth));
  const fromKey = keyOf(from, compass);
  const nth = Number(every);
  return (
    <details className="walk-setup">
      <summary>
        {say('readings.walk.setup')}: {choice.quantities.map((name) => say(`quantity.${name}.short`)).join(', ')} · {say(`readings.walk.order.${choice.order}`)}
        {choice.fromKey > 1 && ` · ${say('readings.walk.from')} ${noteNameOf(compass, choice.fromKey)}`}
      </summary>
      <div className="walk-setup-body">
        <fieldset className="choice">
          <legend>{say('readings.walk.quantities')}</legend>
          <div className="choice-row">
            {keyQuantities.map((name) => (
              <span key={name} className="walk-quantity">
                <label className="check">
                  <input
                    type="checkbox"
                    checked={choice.quantities.includes(name)}
                    disabled={choice.quantities.length === 1 && choice.quantities.includes(name)}
                    onChange={(event) => { onChoose({ ...choice, quantities: keyQuantities.filter((other) => (other === name ? event.target.checked : choice.quantities.includes(other))) }); }}
                  />
                  {say(`quantity.${name}.name`)}
                </label>
                <FieldHelp quantity={name} />
              </span>
            ))}
          </div>
        </fieldset>
        <Choice
          label={say('readings.walk.order')}
          value={choice.order}
          options={(['chromatic', 'naturalsThenSharps', 'sample'] as const).map((value) => ({ value, label: say(`readings.walk.order.${value}`) }))}
          onChange={(order) => { onChoose({ ...choice, order }); }}
        />
        <div className="fields">
          <Field
            label={say('readings.walk.from')}
            value={from}
            error={fromKey === undefined ? say('readings.walk.from.wrong', { last: keyCountOf(compass) }) : undefined}
            echo={fromKey === undefined ? undefined : noteNameOf(compass, fromKey)}
            onChange={(typed) => {
              setFrom(typed);
              const key = keyOf(typed, compass);
              if (key !== undefined) onChoose({ ...choice, fromKey: key });
            }}
          />
          {choice.order === 'sample' && (
            <Field
              label={say('readings.walk.every')}
              value={every}
              inputMode="numeric"
              error={Number.isInteger(nth) && nth >= 1 && nth <= 88 ? undefined : say('readings.allowed', { low: 1, high: 88 })}
              onChange={(typed) => {
                setEvery(typed);
                const value = Number(typed);
                if (Number.isInteger(value) && value >= 1 && value <= 88) onChoose({ ...choice, everyNth: value });
              }}
            />
          )}
        </div>
      </div>
    </details>
  );
}
