import { StoreFailure } from './bench-store.ts';

/** What the operating system and PostgreSQL answer when the database is not there or not for us. */
const AWAY = new Set(['ECONNREFUSED', 'ECONNRESET', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'EHOSTUNREACH', 'ENETUNREACH', 'EPIPE', 'ENOENT', 'EACCES', '28000', '28P01', '3D000', '53300', '57P01', '57P02', '57P03']);
const GONE = /^(Connection terminated|timeout exceeded when trying to connect|Client has encountered a connection error|Cannot use a pool after calling end)/u;

/** Runs a piece of work on the database; when it is away, says so without saying how we sign in there. */
export async function guarded<T>(where: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreFailure) throw error;
    const away = causes(error).find((cause) => AWAY.has(codeOf(cause)) || codeOf(cause).startsWith('08') || GONE.test(cause.message));
    if (away === undefined) throw error;
    throw new StoreFailure('unavailable', `${where} does not answer${codeOf(away) === '' ? '' : ` (${codeOf(away)})`}. Nothing was written. Try again when it does.`);
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
