import { must } from './run.mjs';
import { hashOf, isStamped, stamp } from './stamp.mjs';

const STAMP = 'node_modules/.installed-from';

/** Installs the packages of the lock file, unless exactly these stand already. */
export async function ensureInstalled() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) throw new Error(`Wrestplank needs Node 20.19 or newer; this is ${process.version}`);
  const hash = await hashOf(['package-lock.json', 'package.json', '.npmrc']);
  if (await isStamped(STAMP, hash)) return;
  await must('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  await stamp(STAMP, hash);
}
