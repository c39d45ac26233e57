import type { QuantityName } from '#instrument';
import { useSay } from '../../language/use-say.ts';
import { FieldHelp } from '../../leaves/field-help.tsx';

interface ColumnChooserProps {
  readonly quantities: readonly QuantityName[];
  readonly chosen: readonly QuantityName[];
  readonly onChoose: (chosen: readonly QuantityName[]) => void;
}

/** Which quantities stand in the grid, each with its help: how to measure it and what commonly goes wrong. */
export function ColumnChooser({ quantities, chosen, onChoose }: ColumnChooserProps) {
  const say = useSay();
  return (
    <details className="column-chooser">
      <summary className="button">{say('readings.grid.columns')}</summary>
      <ul className="column-list">
        {quantities.map((name) => (
          <li key={name} className="row row-between">
            <label className="check">
              <input
                type="checkbox"
                checked={chosen.includes(name)}
                disabled={chosen.length === 1 && chosen.includes(name)}
                onChange={(event) => { onChoose(quantities.filter((other) => (other === name ? event.target.checked : chosen.includes(other)))); }}
              />
              {say(`quantity.${name}.name`)}
            </label>
            <FieldHelp quantity={name} />
          </li>
        ))}
      </ul>
    </details>
  );
}
