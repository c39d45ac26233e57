import { type QuantityName, quantityOf } from '#instrument';
import { unitSign } from '#units';
import { useSay } from '../../language/use-say.ts';
import { FieldHelp } from '../../leaves/field-help.tsx';

/** Head of the row of a quantity that stands once for a colour or the whole instrument: its name, unit and help. */
export function ArmHead({ name }: { readonly name: QuantityName }) {
  const say = useSay();
  return (
    <th scope="row">
      <span className="arms-name">{say(`quantity.${name}.name`)}, {unitSign[quantityOf(name).unit]} <FieldHelp quantity={name} /></span>
    </th>
  );
}
