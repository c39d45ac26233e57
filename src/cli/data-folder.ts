import { homedir } from 'node:os';
import path from 'node:path';

/** Where the bench book is kept: in a folder of this machine, or on a PostgreSQL server with photos, recordings and logger files in folders here. */
export type StorePlace = { readonly dataDir: string } | { readonly databaseUrl: string; readonly photosDir: string; readonly recordingsDir: string; readonly loggersDir: string };

/** `--data` wins, then the server of WRESTPLANK_DATABASE_URL, then WRESTPLANK_DATA, then the user's own folder. */
export function storePlaceOf(data: string | undefined, environment: Readonly<Record<string, string | undefined>> = process.env): StorePlace {
  const { WRESTPLANK_DATABASE_URL: databaseUrl, WRESTPLANK_DATA: dataDir } = environment;
  if (data !== undefined && data !== '') return { dataDir: path.resolve(data) };
  const folder = dataDir !== undefined && dataDir !== '' ? path.resolve(dataDir) : userFolder(process.platform, environment);
  return databaseUrl !== undefined && databaseUrl !== '' ? { databaseUrl, photosDir: path.join(folder, 'photos'), recordingsDir: path.join(folder, 'recordings'), loggersDir: path.join(folder, 'loggers') } : { dataDir: folder };
}

/** The folder each system keeps a user's program data in. */
function userFolder(platform: NodeJS.Platform, environment: Readonly<Record<string, string | undefined>>): string {
  const home = homedir();
  switch (platform) {
    case 'win32':
      return path.join(environment['LOCALAPPDATA'] ?? path.join(home, 'AppData', 'Local'), 'Wrestplank');
    case 'darwin':
      return path.join(home, 'Library', 'Application Support', 'Wrestplank');
    default:
      return path.join(environment['XDG_DATA_HOME'] ?? path.join(home, '.local', 'share'), 'wrestplank');
  }
}
