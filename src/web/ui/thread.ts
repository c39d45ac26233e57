/** What a thread is told: an order, or that the order of this number is to stop. */
export type ThreadTold<Order> = { readonly type: 'run'; readonly id: number; readonly order: Order } | { readonly type: 'stop'; readonly id: number };

/** What a thread says: news of the order of this number, or that it is done. */
export type ThreadSaid<News> = { readonly type: 'news'; readonly id: number; readonly news: News } | { readonly type: 'done'; readonly id: number };

/** How long work is watched and stopped, and how it lets messages that came meanwhile be heard. */
export interface ThreadWatch<News> {
  readonly onNews: (news: News) => void;
  readonly shouldStop: () => boolean;
  /** Waits until messages that came meanwhile have been heard. */
  readonly pause: () => Promise<void>;
  readonly nowMs: () => number;
}

/** Work on an order, which tells its news to whoever watches. */
export interface ThreadWork<Order, News> {
  (order: Order, watch: ThreadWatch<News>): Promise<void>;
}

/** Makes a worker's file a thread that works on orders and tells how they go; what the work throws is an error of the worker. */
export function serveOrders<Order, News>(work: ThreadWork<Order, News>): void {
  const stopped = new Set<number>();
  const say = (said: ThreadSaid<News>): void => { self.postMessage(said); };
  self.addEventListener('message', ({ data }: MessageEvent<ThreadTold<Order>>) => {
    const { id } = data;
    if (data.type === 'stop') {
      stopped.add(id);
      return;
    }
    const watch: ThreadWatch<News> = {
      onNews: (news) => { say({ type: 'news', id, news }); },
      shouldStop: () => stopped.has(id),
      pause: () => new Promise((resolve) => { setTimeout(resolve, 0); }),
      nowMs: () => performance.now(),
    };
    work(data.order, watch).then(() => { say({ type: 'done', id }); }, (error: unknown) => { reportError(error); });
  });
}
