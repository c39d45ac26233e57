import type { CardOf, WorkWait } from '#workshop';
import { useMoments, useSay } from '../language/use-say.ts';
import { useCardTelling } from '../shop/use-card-telling.ts';

interface WaitToldProps {
  readonly wait: WorkWait;
  readonly isOver: boolean;
  readonly orders: ReadonlyMap<string, CardOf<'purchase'>>;
}

const nobody = { contacts: new Map(), pianos: new Map() };

/** What a job waits for and until when, and how its order stands; or that the wait is over. */
export function WaitTold({ wait: { for: reason, until, purchase }, isOver, orders }: WaitToldProps) {
  const say = useSay();
  const moment = useMoments();
  const { day } = useCardTelling(nobody);
  if (isOver) return <p className="board-over"><span aria-hidden="true">✓ </span>{say('bench.wait.over', { for: reason })}</p>;
  const order = purchase === null ? undefined : orders.get(purchase);
  const standing = order === undefined ? say('bench.wait.order.none') : say(`bench.wait.order.${order.status}`, { day: order.expectedOn === null ? 'none' : day(order.expectedOn) });
  return <p className="board-wait">{say('bench.wait.told', { for: reason, until: until === null ? 'none' : moment(until) })}{purchase === null ? '' : ` · ${standing}`}</p>;
}
