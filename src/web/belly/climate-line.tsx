import { type QuantityName, type State, quantitiesOf, quantityOf } from '#instrument';
import { useReadings } from '../api/use-readings.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';

const ofRoom = quantitiesOf('belly', 'instrument');

/** The climate and the crown that stand with the bearing of a state; what nobody stated is said to be so. */
export function ClimateLine({ state }: { readonly state: State }) {
  const say = useSay();
  const figure = useFigures();
  const readings = useReadings(state);
  const standing = (quantity: QuantityName): string => {
    for (const reading of readings.values()) {
      if (reading.quantity === quantity && reading.value !== null) return figure(reading.value, decimalsFor(reading.value, quantityOf(quantity).decimals), quantityOf(quantity).unit);
    }
    return say('story.notStated');
  };
  return (
    <dl className="climate-line">
      {ofRoom.map((quantity) => (
        <div key={quantity}>
          <dt>{say(`quantity.${quantity}.name`)}</dt>
          <dd>{standing(quantity)}</dd>
        </div>
      ))}
    </dl>
  );
}
