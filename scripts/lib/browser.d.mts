/** Path of a browser that stands ready, or undefined. */
export function findBrowser(): Promise<string | undefined>;
/** Path of a browser, installed if need be. */
export function ensureBrowser(): Promise<string>;
