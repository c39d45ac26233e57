/** Sequence numbers of the events this window wrote, newest last, by piano. They outlive a reload, not the window. */
const STORAGE_KEY = 'wrestplank.undo';
const LONGEST = 200;

const listeners = new Set<() => void>();
/** The chains written at, in the order of the hand: the last of them is where the next undo belongs. */
let order: readonly string[] = [];
let stacks: Readonly<Record<string, readonly number[]>> = read();

function read(): Readonly<Record<string, readonly number[]>> {
  try {
    return JSON.parse(sessionStorage.getItem(STORAGE_KEY) ?? '{}') as Readonly<Record<string, readonly number[]>>;
  } catch {
    return {};
  }
}

function write(pianoId: string, seqs: readonly number[]): void {
  stacks = { ...stacks, [pianoId]: seqs.slice(-LONGEST) };
  try {
    sessionStorage.setItem(STORAGE_KEY, JSON.stringify(stacks));
  } catch {
    // Without storage the stack lasts as long as the page; the log keeps every event either way.
  }
  for (const listener of listeners) listener();
}

/** Notes an event of this window as the next to be undone. */
export function acknowledgedSeq(pianoId: string, seq: number): void {
  const seqs = stacks[pianoId] ?? [];
  if (!seqs.includes(seq)) write(pianoId, [...seqs, seq]);
  order = [...order, pianoId].slice(-LONGEST);
}

/** Forgets an event: it was undone, or cannot be. */
export function forgetSeq(pianoId: string, seq: number): void {
  write(pianoId, (stacks[pianoId] ?? []).filter((other) => other !== seq));
  const at = order.lastIndexOf(pianoId);
  order = order.filter((_, index) => index !== at);
}

/** Of some chains the one this window wrote at last and can still undo at; nothing where there is none. */
export function lastChain(among: readonly string[]): string | undefined {
  const undoable = among.filter((chain) => lastSeq(chain) !== undefined);
  return order.findLast((chain) => undoable.includes(chain)) ?? undoable[0];
}

export function lastSeq(pianoId: string): number | undefined {
  return stacks[pianoId]?.at(-1);
}

export function subscribeUndo(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
