import { readdir } from 'node:fs/promises';
import type { RunningServer } from '#server';
import type { BenchStore } from '#store';
import type { CommandModule } from 'yargs';
import { type StorePlace, storePlaceOf } from '../data-folder.ts';
import { failed, refused } from '../failure.ts';
import { say } from '../language.ts';
import { note, print } from '../output.ts';
import { version } from '../version.ts';
import { dataOption, failureOfStore, openStoreAt } from '../with-store.ts';

const DEFAULT_PORT = 4949;

interface ServeArguments {
  readonly port?: string;
  readonly data?: string;
  readonly open: boolean;
  readonly demo: boolean;
}

/** `serve`: the bench book in the browser, for this machine alone, until Ctrl-C. */
export const serve: CommandModule<object, ServeArguments> = {
  command: 'serve',
  describe: say('cli.serve'),
  builder: (yargs) =>
    yargs
      .option('port', { type: 'string', requiresArg: true, describe: say('cli.serve.port', { port: String(DEFAULT_PORT) }) })
      .options(dataOption)
      .option('open', { type: 'boolean', default: false, describe: say('cli.serve.open') })
      .option('demo', { type: 'boolean', default: false, describe: say('cli.serve.demo') }),
  handler: async ({ port, data, open, demo }) => {
    const place = storePlaceOf(data);
    const isNew = 'databaseUrl' in place || (await isEmptyFolder(place.dataDir));
    let server: RunningServer | undefined = undefined;
    const prepare = async (): Promise<BenchStore> => {
      const store = await openStoreAt(place);
      await announce(server?.url ?? '', place, open);
      if (demo && isNew) await seedFirst(store);
      return store;
    };
    server = await listen(portOf(port), prepare);
    if (!server.hasPages) note(say('cli.serve.noPages'));
    const running = server;
    await Promise.all([running.store, untilAskedToEnd(running)]).catch(async (error: unknown) => {
      await running.close();
      throw await explained(error, place, portOf(port) ?? DEFAULT_PORT);
    });
  },
};

async function listen(port: number | undefined, openStore: () => Promise<BenchStore>): Promise<RunningServer> {
  const [{ startServer }, { operations }] = await Promise.all([import('#server'), import('#catalogue')]);
  try {
    return await startServer({ openStore, version, operations, ...(port === undefined ? {} : { port }), onFailure: (error) => { note(error instanceof Error ? (error.stack ?? error.message) : String(error)); } });
  } catch (error) {
    if (error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES')) throw failed(say('cli.serve.portTaken', { port: String(port ?? DEFAULT_PORT) }), 'unavailable');
    throw error;
  }
}

function portOf(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const port = Number(typed);
  if (!/^\d{1,5}$/u.test(typed) || port > 65_535) throw refused([{ code: 'range', path: '--port', given: typed, allowed: '0 to 65535', params: { min: 0, max: 65_535 } }]);
  return port;
}

async function announce(url: string, place: StorePlace, open: boolean): Promise<void> {
  await print(`${say('cli.serve.at', { url })}\n`);
  note('databaseUrl' in place ? say('cli.serve.server') : say('cli.serve.data', { place: place.dataDir }));
  if (!open) return;
  const { default: openInBrowser } = await import('open');
  await openInBrowser(url).catch(() => undefined);
}

/** The demonstration comes once, into a book that is still empty: removed, it stays away. */
async function seedFirst(store: BenchStore): Promise<void> {
  const { seedDemo } = await import('#server');
  if ((await store.countPianos()).total === 0) await seedDemo(store);
}

async function isEmptyFolder(folder: string): Promise<boolean> {
  return (await readdir(folder).catch(() => [])).length === 0;
}

/** Waits for Ctrl-C or an end by the system, then closes in order; asked a second time, ends at once. */
function untilAskedToEnd(server: RunningServer): Promise<void> {
  return new Promise((resolve, reject) => {
    let asked = false;
    const end = (): void => {
      if (asked) process.exit(130);
      asked = true;
      note(say('cli.serve.closing'));
      server.close().then(resolve, reject);
    };
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
  });
}

/** Where the folder is taken because the bench book is open already, its address is what the person wants to hear. */
async function explained(error: unknown, place: StorePlace, port: number): Promise<unknown> {
  const failure = failureOfStore(error, place);
  if (!(error instanceof Error && 'reason' in error && error.reason === 'inUse')) return failure;
  const url = `http://127.0.0.1:${String(port)}`;
  const open = await fetch(`${url}/api/health`, { signal: AbortSignal.timeout(1500) }).then((response) => response.ok, () => false);
  if (open) note(say('cli.serve.already', { url }));
  return failure;
}
