/** A bell that rings when there may be work; a ring between looking and listening is heard too. */
export interface Bell {
  readonly ring: () => void;
  /** How often it has rung. */
  rings(): number;
  /** Waits for the ring after so many, for so long at most, or until called off. */
  next(since: number, mostMs: number, signal: AbortSignal): Promise<void>;
}

/** A bell nobody has rung yet. */
export function newBell(): Bell {
  let count = 0;
  const listening = new Set<() => void>();
  return {
    ring: () => {
      count += 1;
      for (const hear of listening) hear();
    },
    rings: () => count,
    next: (since, mostMs, signal) => new Promise((resolve) => {
      const done = (): void => {
        clearTimeout(late);
        listening.delete(done);
        signal.removeEventListener('abort', done);
        resolve();
      };
      const late = setTimeout(done, mostMs);
      listening.add(done);
      signal.addEventListener('abort', done);
      if (signal.aborted || count !== since) done();
    }),
  };
}
