import { type BenchColumn, type BenchTask, type WorkChange, benchColumns, benchTasksOf } from '#workshop';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { cardsOfKind } from '../shop/shop-queries.ts';
import { type BenchBook, changeJobs } from './bench-queries.ts';
import { BoardCard } from './board-card.tsx';
import { useJobNames } from './job-names.ts';
import { TakeDialog } from './take-dialog.tsx';
import { useNow } from './use-now.ts';
import { WaitDialog } from './wait-dialog.tsx';

type Moved = Exclude<BenchColumn, 'waits'>;

/** What a move to a column changes of the jobs of a card. */
const changeFor: Readonly<Record<Moved, WorkChange>> = {
  toDo: { status: 'open', inHand: false, waits: null },
  inHand: { status: 'open', inHand: true, waits: null },
  done: { status: 'done', inHand: false, waits: null },
};

/** Done cards shown before the rest is folded away. */
const NEAR_DONE = 3;

function latestFirst(tasks: readonly BenchTask[]): readonly BenchTask[] {
  const doneAt = ({ items }: BenchTask): string => items.reduce((last, item) => ((item.doneAt ?? '') > last ? (item.doneAt ?? '') : last), '');
  return tasks.filter(({ column }) => column === 'done').sort((a, b) => doneAt(b).localeCompare(doneAt(a)));
}

/** Jobs of every piano by where they stand; a card is moved by its buttons, by arrow keys and by touch alike. */
export function Board({ bench }: { readonly bench: BenchBook }) {
  const say = useSay();
  const names = useJobNames(bench);
  const now = useNow(60);
  const board = useRef<HTMLDivElement>(null);
  const follow = useRef<string>(undefined);
  const [told, setTold] = useState('');
  const [problem, setProblem] = useState<unknown>();
  const [asking, setAsking] = useState<{ readonly what: 'wait' | 'take'; readonly task: BenchTask }>();
  const orders = useMemo(() => new Map(cardsOfKind(bench.book.cards, 'purchase').map((order) => [order.id, order])), [bench.book.cards]);
  const tasks = useMemo(() => benchTasksOf(bench.pianos, now, orders), [bench.pianos, now, orders]);
  useEffect(() => {
    if (follow.current === undefined) return;
    const moved = board.current?.querySelector<HTMLElement>(`[data-jobs~="${CSS.escape(follow.current)}"] .board-move`);
    moved?.focus();
    follow.current = undefined;
  }, [tasks]);
  const write = (task: BenchTask, change: WorkChange, column: BenchColumn): void => {
    setProblem(undefined);
    follow.current = task.items[0].id;
    changeJobs(task.piano.instrument.id, task.items.map(({ id }) => id), change).then(
      () => { setTold(say('bench.card.moved', { what: names.jobs(task.items), column: say(`bench.column.${column}`) })); }, setProblem,
    );
  };
  const move = (task: BenchTask, column: BenchColumn): void => {
    if (column === 'waits') setAsking({ what: 'wait', task });
    else write(task, changeFor[column], column);
  };
  const close = (): void => { setAsking(undefined); };
  return (
    <section className="panel" aria-labelledby="bench-board">
      <h2 id="bench-board">{say('bench.board')}</h2>
      {tasks.length === 0 ? <p>{say('bench.board.empty')}</p> : <p className="soft small">{say('bench.board.how')}</p>}
      {problem !== undefined && <ProblemNote problem={problem} />}
      <p className="visually-hidden" role="status">{told}</p>
      {tasks.length > 0 && (
        <div className="board" ref={board}>
          {benchColumns.map((column) => {
            const own = column === 'done' ? latestFirst(tasks) : tasks.filter((task) => task.column === column);
            const [near, far] = column === 'done' ? [own.slice(0, NEAR_DONE), own.slice(NEAR_DONE)] : [own, []];
            const listed = (some: readonly BenchTask[]) => (
              <ul>
                {some.map((task) => <BoardCard key={task.id} task={task} bench={bench} orders={orders} onMove={move} onTake={() => { setAsking({ what: 'take', task }); }} />)}
              </ul>
            );
            return (
              <section key={column} className={`board-column board-${column}`} aria-labelledby={`bench-${column}`}>
                <h3 id={`bench-${column}`}>{say(`bench.column.${column}`)} <span className="soft">{own.length}</span></h3>
                {own.length === 0 && <p className="soft small">{say('bench.column.none')}</p>}
                {near.length > 0 && listed(near)}
                {far.length > 0 && <details><summary>{say('bench.board.more', { count: far.length })}</summary>{listed(far)}</details>}
              </section>
            );
          })}
        </div>
      )}
      {asking?.what === 'wait' && <WaitDialog task={asking.task} book={bench.book} onClose={close} onWait={(wait) => { close(); write(asking.task, { status: 'open', waits: wait }, 'waits'); }} />}
      {asking?.what === 'take' && <TakeDialog task={asking.task} onClose={close} />}
    </section>
  );
}
