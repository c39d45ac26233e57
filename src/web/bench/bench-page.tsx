import { bookOf } from '#workshop';
import { useMemo } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { undoInShop } from '../shop/shop-undo.ts';
import { useBenchBook } from './bench-queries.ts';
import { Board } from './board.tsx';
import { ClockPanel } from './clock-panel.tsx';
import { HoursPanel } from './hours-panel.tsx';
import { TodayList } from './today-list.tsx';
import '../shop/shop.css';
import './bench.css';

/** What to do today, across all pianos of the shop: the clock, today's visits, the board, the hours. */
export function BenchPage() {
  const say = useSay();
  const { bench, error, refetch } = useBenchBook();
  const chains = useMemo(() => ['shop', 'demo'].map(bookOf).concat(bench?.pianos.map(({ instrument }) => instrument.id) ?? []), [bench]);
  const commands = useMemo((): readonly Command[] => [{ id: 'undo', label: 'command.undo.shop', group: 'command.group.shop', shortcut: 'mod+z', perform: () => { undoInShop(chains); } }], [chains]);
  useCommands(commands);
  return (
    <section className="page bench">
      <h1>{say('shell.nav.bench')}</h1>
      {error !== null && <ProblemNote problem={error} onRetry={refetch} />}
      {error === null && bench === undefined && <p className="soft">{say('shell.loading')}</p>}
      {bench !== undefined && (
        <>
          <div className="bench-top"><ClockPanel bench={bench} /><TodayList book={bench.book} /></div>
          <Board bench={bench} />
          <HoursPanel bench={bench} />
        </>
      )}
    </section>
  );
}
