import { type Part, quantitiesOf } from '#instrument';
import type { ReactNode } from 'react';
import { useSay } from '../../language/use-say.ts';
import { ArmField } from './arm-field.tsx';
import { ArmHead } from './arm-head.tsx';
import './arms.css';

const colours = ['natural', 'sharp'] as const;

interface ArmsTableProps {
  readonly part: Part;
  /** A figure that follows for each colour, under what was measured of it. */
  readonly following?: { readonly name: string; readonly of: (index: number, title: string) => ReactNode };
}

/** Whether a part has anything that goes for all naturals, for all sharps, or for the whole instrument. */
export const hasArms = (part: Part): boolean => quantitiesOf(part, 'colour').length + quantitiesOf(part, 'instrument').length > 0;

/** What of a part goes for all naturals, for all sharps, or for the whole instrument. */
export function ArmsTable({ part, following }: ArmsTableProps) {
  const say = useSay();
  const byColour = quantitiesOf(part, 'colour');
  return (
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
        {following !== undefined && (
          <tr>
            <th scope="row">{following.name}</th>
            {colours.map((colour, index) => <td key={colour}>{following.of(index, `${following.name}, ${say(`colour.${colour}`)}`)}</td>)}
          </tr>
        )}
        {quantitiesOf(part, 'instrument').map((name) => (
          <tr key={name}>
            <ArmHead name={name} />
            <td colSpan={2}><ArmField quantity={name} scope="instrument" index={0} label={say(`quantity.${name}.name`)} /></td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
