import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { languages, loadCatalogue } from '#text';
import { describe, expect, it } from 'vitest';

const web = path.resolve(fileURLToPath(import.meta.url), '../../src/web');

/** A full name for those who do not see the screen, and what stands on the button. */
const NAMED = /aria-label=\{say\('(?<full>[\w.]+)'[^<\n]*?>\{say\('(?<shown>[\w.]+)'\)\}<\/(?:button|a|Link)>/gu;

const pairs = readdirSync(web, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tsx')).flatMap((name) =>
  [...readFileSync(path.join(web, name), 'utf8').matchAll(NAMED)].map(({ groups }) => ({ name, full: String(groups?.['full']), shown: String(groups?.['shown']) })));

describe('the full name of a button (WCAG 2.2, 2.5.3)', () => {
  it('is told of many', () => { expect(pairs.length).toBeGreaterThan(30); });

  it.each(languages)('holds what stands on it, so that it can be spoken: %s', async (language) => {
    const words: Readonly<Record<string, string>> = await loadCatalogue(language);
    const of = (key: string): string => String(words[key]).toLowerCase();
    expect(pairs.filter(({ full, shown }) => !of(full).includes(of(shown)))).toEqual([]);
  });
});
