import { createHash, randomUUID } from 'node:crypto';
import { readFileSync, readlinkSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { type Server, connect, createServer } from 'node:net';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { StoreFailure } from '../bench-store.ts';

/** What the lock file says of the owner. `beats` grows while it lives, for those who cannot see its socket. */
interface Owner {
  readonly process: number;
  readonly machine: string;
  readonly token: string;
  readonly beats: number;
}

const BEAT_MS = 2000;
/** For how many beats another machine's lock is watched before it counts as left behind. */
const WATCHED_BEATS = 3;

/**
 * Makes this process the only owner of a data folder until it lets go or ends, however it ends.
 * On one machine a socket named after the folder decides: the system takes it back with the process.
 * A lock file with a beating count covers folders shared between machines or containers, where sockets are not seen.
 */
export async function ownFolder(folder: string, beatMs = BEAT_MS): Promise<() => Promise<void>> {
  const file = join(folder, 'owner.json');
  const token = randomUUID();
  const socket = await listenAlone(realpathSync(folder), token, () => inUse(folder, file));
  const owner: Owner = { process: process.pid, machine: machineOf(), token, beats: 0 };
  try {
    await watchForeign(file, owner.machine, beatMs, () => inUse(folder, file));
  } catch (error) {
    socket.close();
    throw error;
  }
  const beat = keepBeating(file, owner, beatMs);
  return async () => {
    clearInterval(beat);
    if (readOwner(file)?.token === token) rmSync(file, { force: true });
    await new Promise((resolve) => socket.close(resolve));
  };
}

function inUse(folder: string, file: string): StoreFailure {
  const owner = readOwner(file);
  const who = owner === undefined ? '' : ` (process ${String(owner.process)}${owner.machine === machineOf() ? '' : ' on another machine or in another container'})`;
  return new StoreFailure('inUse', `The data folder ${folder} is already open in another Wrestplank${who}. Use that one, or end it first, or name another folder.`);
}

/** Where process numbers and sockets are shared: one boot of one machine, one network namespace. */
function machineOf(): string {
  try {
    return `${readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()} ${readlinkSync('/proc/self/ns/net')}`;
  } catch {
    return hostname();
  }
}

function readOwner(file: string): Owner | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Owner;
  } catch {
    return undefined;
  }
}

/** A lock left by another machine is believed while its count still grows. */
async function watchForeign(file: string, machine: string, beatMs: number, refuse: () => StoreFailure): Promise<void> {
  const before = readOwner(file);
  if (before === undefined || before.machine === machine) return;
  await wait(WATCHED_BEATS * beatMs);
  const after = readOwner(file);
  if (after !== undefined && (after.token !== before.token || after.beats !== before.beats)) throw refuse();
}

function keepBeating(file: string, owner: Owner, beatMs: number): NodeJS.Timeout {
  let beats = 0;
  const beat = (): void => {
    const fresh = `${file}.${owner.token}`;
    beats += 1;
    try {
      writeFileSync(fresh, JSON.stringify({ ...owner, beats }));
      renameSync(fresh, file);
    } catch {
      // A full disk stops the writes that matter soon enough, and says so there.
    }
  };
  beat();
  return setInterval(beat, beatMs).unref();
}

/** Listens under a name only this folder has; another listener means another owner. */
async function listenAlone(realPath: string, token: string, refuse: () => StoreFailure): Promise<Server> {
  const name = `wrestplank-${createHash('sha256').update(realPath).digest('hex').slice(0, 32)}`;
  if (process.platform === 'linux') return await listen(`\0${name}`, token, refuse);
  if (process.platform === 'win32') return await listen(`\\\\.\\pipe\\${name}`, token, refuse);
  return await listenOnFile(join(tmpdir(), `${name.slice(0, 24)}.sock`), token, refuse);
}

function listen(path: string, token: string, refuse: () => StoreFailure): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer((peer) => peer.on('error', () => undefined).end(token));
    server.once('error', (error: NodeJS.ErrnoException) => { reject(error.code === 'EADDRINUSE' ? refuse() : error); });
    server.listen(path, () => { resolve(server.unref()); });
  });
}

/** A socket file outlives its owner: one that nobody answers at is removed, and afterwards the answer must be our own. */
async function listenOnFile(path: string, token: string, refuse: () => StoreFailure): Promise<Server> {
  if ((await tokenAt(path)) !== undefined) throw refuse();
  rmSync(path, { force: true });
  const server = await listen(path, token, refuse);
  await wait(200);
  if ((await tokenAt(path)) === token) return server;
  server.close();
  throw refuse();
}

/** The token of whoever listens at a socket file, or nothing. */
function tokenAt(path: string): Promise<string | undefined> {
  return new Promise((resolve) => {
    let heard = '';
    connect(path)
      .on('data', (bytes) => (heard += bytes.toString()))
      .on('error', () => { resolve(undefined); })
      .on('end', () => { resolve(heard); });
  });
}
