import { type BenchTask, stockLevels } from '#workshop';
import { useState } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { MoveDialog } from '../parts/move-dialog.tsx';
import { useShopBook } from '../shop/shop-queries.ts';
import { decimalsFor } from '../story/say-event.ts';
import { AppDialog } from '../ui/app-dialog.tsx';

interface TakeDialogProps {
  readonly task: BenchTask;
  readonly onClose: () => void;
}

/** Takes material from stock for a card of the board: first what, then how much. */
export function TakeDialog({ task: { piano, items }, onClose }: TakeDialogProps) {
  const say = useSay();
  const figure = useFigures();
  const [chosen, setChosen] = useState<string>();
  const { book } = useShopBook({ kinds: ['stock', 'stockMove', 'purchase'] });
  const levels = stockLevels(book?.cards ?? []).filter(({ stock }) => stock.workshopId === piano.instrument.workshopId);
  const level = levels.find(({ stock }) => stock.id === chosen);
  if (level !== undefined && book !== undefined) return <MoveDialog level={level} how="take" book={book} known={{ pianoId: piano.instrument.id, work: items[0].id }} onClose={onClose} />;
  return (
    <AppDialog title={say('bench.card.take')} isOpen onClose={onClose}>
      {book === undefined ? <p className="soft">{say('shell.loading')}</p> : levels.length === 0 ? <p>{say('parts.stock.empty')}</p> : (
        <ul className="take-list">
          {levels.map(({ stock, level: there }) => (
            <li key={stock.id}>
              <button type="button" className="button" onClick={() => { setChosen(stock.id); }}>
                {[stock.name, ...(stock.sizeMm === null ? [] : [figure(stock.sizeMm, decimalsFor(stock.sizeMm, 3), 'mm')])].join(', ')} · {say('parts.amount', { amount: figure(there, decimalsFor(there, 3)), unit: stock.unit })}
              </button>
            </li>
          ))}
        </ul>
      )}
    </AppDialog>
  );
}
