import { type Part, quantitiesOf } from '#instrument';
import { useSay } from '../../language/use-say.ts';
import { ArmField } from '../../readings/arms/arm-field.tsx';
import '../../readings/arms/arms.css';
import { ArmHead } from '../../readings/arms/arm-head.tsx';

const colours = ['natural', 'sharp'] as const;

/** What of a part goes for all naturals, for all sharps, or for the whole instrument. Nothing where there is none. */
export function PartFields({ part }: { readonly part: Part }) {
  const say = useSay();
  const byColour = quantitiesOf(part, 'colour');
  const whole = quantitiesOf(part, 'instrument');
  if (byColour.length + whole.length === 0) return null;
  return (
    <div className="panel">
      <table className="arms-table">
        {byColour.length > 0 && (
          <thead>
            <tr>
              <td />
              {colours.map((colour) => <th key={colour} scope="col">{say(`colour.${colour}`)}</th>)}
            </tr>
          </thead>
        )}
        <tbody>
          {byColour.map((name) => (
            <tr key={name}>
              <ArmHead name={name} />
              {colours.map((colour, index) => (
                <td key={colour}><ArmField quantity={name} scope="colour" index={index} label={say('readings.arms.cell', { quantity: say(`quantity.${name}.name`), colour: say(`colour.${colour}`) })} /></td>
              ))}
            </tr>
          ))}
          {whole.map((name) => (
            <tr key={name}>
              <ArmHead name={name} />
              <td colSpan={2}><ArmField quantity={name} scope="instrument" index={0} label={say(`quantity.${name}.name`)} /></td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
