import { StoreFailure } from './bench-store.ts';

/** What the operating system and PostgreSQL answer when the database is not there or not for us. */
const AWAY = new Set(['ECONNREFUSED', 'ECONNRESET', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'EHOSTUNREACH', 'ENETUNREACH', 'EPIPE', 'ENOENT', 'EACCES', '28000', '28P01', '3D000', '53300', '57P01', '57P02', '57P03']);
const GONE = /^(Connection terminated|timeout exceeded when trying to connect|Client has encountered a connection error|Cannot use a pool after calling end)/u;

/** Says that a database is away, given the code of what happened, if there is one. */
export type SayAway = (code: string) => string;

export const sayEmbeddedAway: SayAway = () =>
  'The embedded database has stopped. What was acknowledged is kept, what was not may be missing. Make room if the disk is full, and start Wrestplank again.';

/** Names the server by `where`, which holds nothing one signs in with. */
export function sayServerAway(where: string): SayAway {
  return (code) => `The PostgreSQL server${where} does not answer${code === '' ? '' : ` (${code})`}. What was acknowledged is kept, what was not may be missing. Try again when it does.`;
}

/** Runs a piece of work on the database; when it is away, says so without saying how we sign in there. */
export async function guarded<T>(sayAway: SayAway, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreFailure) throw error;
    const away = causes(error).find((cause) => AWAY.has(codeOf(cause)) || codeOf(cause).startsWith('08') || GONE.test(cause.message));
    if (away === undefined) throw error;
    throw new StoreFailure('unavailable', sayAway(codeOf(away)));
  }
}

/** An error and what it was caused by. */
function causes(error: unknown): readonly Error[] {
  if (!(error instanceof Error)) return [];
  const inner = error instanceof AggregateError ? error.errors.flatMap(causes) : [];
  return [error, ...inner, ...causes(error.cause)];
}

function codeOf(error: Error): string {
  return 'code' in error && typeof error.code === 'string' ? error.code : '';
}
