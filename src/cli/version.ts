import { readFileSync } from 'node:fs';

/** The version of the package this file belongs to. */
export const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { readonly version: string };
