import { type Compass, type KeyNumber, noteNameOf } from '#instrument';
import { millimetres } from '#units';
import { type CardOf, receiptCheckOf } from '#workshop';
import { useDays, useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import type { OrderedWound } from './ordered-wound.ts';

interface ReceiptTableProps {
  readonly receipt: CardOf<'receipt'>;
  readonly ordered: ReadonlyMap<KeyNumber, OrderedWound>;
  readonly compass: Compass;
}

/** The measured sample note by note: what was ordered, what came, and what that makes in newtons and cents. */
export function ReceiptTable({ receipt: { on, samples }, ordered, compass }: ReceiptTableProps) {
  const say = useSay();
  const figure = useFigures();
  const day = useDays();
  const size = (value: number): string => figure(value, decimalsFor(value, 3));
  return (
    <ScrollTable
      label={say('parts.receipt.of', { day: day(on) })} corner={say('parts.receipt.of', { day: day(on) })}
      columns={[{ key: 'core', head: say('parts.receipt.core') }, { key: 'overall', head: say('parts.receipt.overall') }, { key: 'n', head: say('parts.receipt.tension') }, { key: 'dn', head: say('parts.receipt.newtons') }, { key: 'ct', head: say('parts.receipt.cents') }]}
    >
      {samples.map(({ key, coreDiameterMm, overallDiameterMm }, index) => {
        const note = ordered.get(key);
        const check = note === undefined ? undefined : receiptCheckOf(note, { coreDiameterMm: millimetres(coreDiameterMm), overallDiameterMm: millimetres(overallDiameterMm) });
        const wire = note?.wire;
        return (
          <tr key={index}>
            <th scope="row">{noteNameOf(compass, key)}</th>
            <td>{size(coreDiameterMm)}{wire !== undefined && <span className="soft small"> ({size(wire.coreDiameterMm)})</span>}</td>
            <td>{size(overallDiameterMm)}</td>
            {check?.ok === true
              ? <><td>{figure(check.value.orderedN, 1, 'N')}</td><td>{figure(check.value.deviationN, 1, 'N', true)}</td><td>{figure(check.value.deviationCt, 1, 'ct', true)}</td></>
              : <td colSpan={3}>{say('parts.receipt.noPlanNow')}</td>}
          </tr>
        );
      })}
    </ScrollTable>
  );
}
