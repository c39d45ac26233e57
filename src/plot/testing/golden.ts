import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/**
 * Compares text with a kept file. On a mismatch the new text is left beside it as `NAME-changed.EXT` to look at;
 * once looked at, it is renamed over the kept file by hand. A missing file fails likewise: goldens are never made unseen.
 */
export function expectGolden(folder: URL, name: string, text: string): void {
  const kept = new URL(name, folder);
  const changed = new URL(name.replace(/(\.\w+)$/u, '-changed$1'), folder);
  const expected = existsSync(kept) ? readFileSync(kept, 'utf8') : '';
  if (expected === text) {
    rmSync(changed, { force: true });
    return;
  }
  writeFileSync(changed, text);
  expect.fail(`${name} differs from its golden file: compare ${changed.pathname}`);
}
