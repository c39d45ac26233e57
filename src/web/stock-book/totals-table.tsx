import { numberName, spanWords } from '#estimate';
import type { StockBook } from '#workshop';
import { useLocale, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { useAmount } from './line-card.tsx';

const SUMS = ['purchaseMinor', 'saleMinor', 'gainMinor', 'lossMinor', 'taxMinor'] as const;
const HEADS = { purchaseMinor: 'purchases', saleMinor: 'sales', gainMinor: 'gains', lossMinor: 'losses', taxMinor: 'tax' } as const;

/** What was sold under the margin scheme, by tax period; what is in no total is named. */
export function TotalsTable({ stock: { totals, period, leftOut } }: { readonly stock: StockBook }) {
  const say = useSay();
  const locale = useLocale();
  const amount = useAmount();
  const columns = [{ key: 'count', head: say('stockBook.column.count') }, ...SUMS.map((sum) => ({ key: sum, head: say(`stockBook.column.${HEADS[sum]}`) }))];
  return (
    <>
      {totals.length === 0 ? <p>{say('stockBook.totals.none')}</p> : (
        <ScrollTable label={say('stockBook.totals.table')} corner={say(`stockBook.period.${period}`)} columns={columns}>
          {totals.map((total) => (
            <tr key={`${total.from} ${total.currency}`} data-period={total.from} data-currency={total.currency}>
              <th scope="row">{spanWords(total, locale)}</th>
              <td>{total.count}</td>
              {SUMS.map((sum) => <td key={sum} data-sum={sum}>{amount(total[sum], total.currency)}</td>)}
            </tr>
          ))}
        </ScrollTable>
      )}
      {leftOut.length > 0 && <Note tone="warn" role="note"><p>{say('stockBook.leftOut', { count: leftOut.length, numbers: leftOut.map((number) => numberName(number, say)).join(', ') })}</p></Note>}
    </>
  );
}
