import { useCallback, useEffect, useRef, useState } from 'react';
import type { ThreadSaid, ThreadTold } from './thread.ts';

/** A kind of long work: the worker that does it, and how what is known of it grows with its news. The same object at each render. */
export interface ThreadKind<Order, News, Known> {
  /** Makes the worker; its file calls `serveOrders`. */
  readonly make: () => Worker;
  readonly nothing: Known;
  readonly heard: (known: Known, news: News, order: Order) => Known;
}

export interface ThreadState<Order, Known> {
  readonly order: Order | undefined;
  readonly isRunning: boolean;
  readonly known: Known;
  /** True when it was given up by `end` before it was done. */
  readonly wasEnded: boolean;
  /** True when the worker itself failed. */
  readonly hasFailed: boolean;
}

/** Long work beside the page. */
export interface Thread<Order, Known> {
  readonly state: ThreadState<Order, Known>;
  /** Starts an order on a new thread; one that still runs is given up. */
  readonly start: (order: Order) => void;
  /** Asks the work to stop where it is; it tells the best so far and is done. */
  readonly stop: () => void;
  /** Gives the work up at once; what is known stays. */
  readonly end: () => void;
}

/** Long work on a thread of its own: started, watched, stopped. It ends with the page that started it. */
export function useThread<Order, News, Known>({ make, nothing, heard }: ThreadKind<Order, News, Known>): Thread<Order, Known> {
  const [state, setState] = useState<ThreadState<Order, Known>>({ order: undefined, isRunning: false, known: nothing, wasEnded: false, hasFailed: false });
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const letGo = useCallback((): void => {
    worker.current?.terminate();
    worker.current = undefined;
  }, []);
  useEffect(() => letGo, [letGo]);
  const start = useCallback((order: Order): void => {
    letGo();
    number.current += 1;
    const id = number.current;
    const made = make();
    worker.current = made;
    setState({ order, isRunning: true, known: nothing, wasEnded: false, hasFailed: false });
    made.addEventListener('message', ({ data }: MessageEvent<ThreadSaid<News>>) => {
      if (data.id !== number.current) return;
      setState((before) => (data.type === 'done' ? { ...before, isRunning: false } : { ...before, known: heard(before.known, data.news, order) }));
      if (data.type === 'done') letGo();
    });
    made.addEventListener('error', () => {
      if (id !== number.current) return;
      setState((before) => ({ ...before, isRunning: false, hasFailed: true }));
      letGo();
    });
    made.postMessage({ type: 'run', id, order } satisfies ThreadTold<Order>);
  }, [make, nothing, heard, letGo]);
  const stop = useCallback((): void => {
    worker.current?.postMessage({ type: 'stop', id: number.current } satisfies ThreadTold<Order>);
  }, []);
  const end = useCallback((): void => {
    letGo();
    setState((before) => ({ ...before, wasEnded: before.isRunning, isRunning: false }));
  }, [letGo]);
  return { state, start, stop, end };
}
