import { type StockLevel, sumOfAmounts } from '#workshop';
import { useFigures, useSay } from '../language/use-say.ts';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { useCardTelling } from '../shop/use-card-telling.ts';
import { decimalsFor } from '../story/say-event.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { useNewest } from '../ui/use-newest.tsx';

interface MovesDialogProps {
  readonly level: StockLevel;
  readonly book: ShopBook;
  readonly onClose: () => void;
}

/** How there came to be so much of something in stock: all that was put in, taken out and counted, in the order it was noted, newest on top. */
export function MovesDialog({ level: { stock, level }, book, onClose }: MovesDialogProps) {
  const say = useSay();
  const figure = useFigures();
  const { day } = useCardTelling(book);
  const moves = cardsOfKind(book.cards, 'stockMove').filter((move) => move.stock === stock.id).toSorted((a, b) => a.at.localeCompare(b.at));
  const steps = moves.map((move, index) => ({ move, there: sumOfAmounts(moves.slice(0, index + 1).map(({ amount }) => amount)) }));
  const { shown, older } = useNewest(steps);
  const amount = (value: number): string => say('parts.amount', { amount: figure(value, decimalsFor(value, 3)), unit: stock.unit });
  return (
    <AppDialog title={say('parts.moves.title', { name: stock.name, amount: amount(level) })} isOpen onClose={onClose} form="wide">
      {steps.length === 0 ? <p>{say('parts.moves.none')}</p> : (
        <ScrollTable label={say('parts.moves')} corner={say('parts.moves.on')} columns={(['what', 'amount', 'there', 'for'] as const).map((key) => ({ key, head: say(`parts.moves.${key}`) }))}>
          {shown.map(({ move, there }) => (
            <tr key={move.id}>
              <th scope="row">{day(move.on)}</th>
              <td>{say(`parts.moves.reason.${move.reason}`)}</td>
              <td>{move.amount > 0 ? '+' : ''}{amount(move.amount)}</td>
              <td>{amount(there)}</td>
              <td>{[move.pianoId === null ? undefined : book.pianos.get(move.pianoId), move.details?.words].filter((part) => part !== undefined && part !== '').join(' · ') || '–'}</td>
            </tr>
          ))}
        </ScrollTable>
      )}
      {older}
    </AppDialog>
  );
}
