import { quantitiesOf } from '#instrument';
import { unitSign } from '#units';
import { quantityOf } from '#instrument';
import { useSay } from '../language/use-say.ts';
import { FieldHelp } from '../leaves/field-help.tsx';
import { ArmField } from '../readings/arms/arm-field.tsx';

const ofRoom = quantitiesOf('belly', 'instrument');

/** Climate and crown at the time of the bearing: wood moves with damp, and heights with it. */
export function Climate() {
  const say = useSay();
  return (
    <section className="panel climate" aria-labelledby="belly-climate">
      <h2 id="belly-climate">{say('belly.climate')}</h2>
      <p className="soft small">{say('belly.climate.why')}</p>
      <div className="climate-fields">
        {ofRoom.map((quantity) => (
          <div key={quantity} className="climate-field">
            <span>{say(`quantity.${quantity}.name`)} <span className="soft">{unitSign[quantityOf(quantity).unit]}</span> <FieldHelp quantity={quantity} /></span>
            <ArmField quantity={quantity} scope="instrument" index={0} label={say(`quantity.${quantity}.name`)} />
          </div>
        ))}
      </div>
    </section>
  );
}
