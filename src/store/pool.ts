import { Pool, type PoolConfig } from 'pg';

/**
 * A pool whose lost connections do not end the program: whoever was asking is told by the failed question,
 * and nobody else needs to know. Without listeners each loss would be an uncaught error.
 */
export function quietPool(config: PoolConfig): Pool {
  const pool = new Pool(config);
  const ignore = (): void => undefined;
  pool.on('error', ignore);
  pool.on('connect', (client) => client.on('error', ignore));
  return pool;
}
