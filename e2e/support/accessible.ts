import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Holds the page as it stands to WCAG 2.2 AA, as far as a program can tell. */
export async function expectAccessible(page: Page): Promise<void> {
  // The page's own policy forbids strange scripts, so the checker comes in by the debugger's door.
  const hasAxe = await page.evaluate(() => 'axe' in window);
  if (!hasAxe) await page.evaluate(await readAxe());
  // From the top: what has been scrolled halfway under the head of the page is no smaller for it.
  const scrolledTo = await page.evaluate(() => {
    const from = scrollY;
    scrollTo(0, 0);
    return from;
  });
  const results = await page.evaluate(
    (values) => (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({ runOnly: { type: 'tag', values }, resultTypes: ['violations'] }),
    RULES,
  );
  await page.evaluate((from) => { scrollTo(0, from); }, scrolledTo);
  const wrong = results.violations.map(({ id, help, nodes }) => `${id}: ${help}\n${nodes.slice(0, 4).map(({ html, failureSummary }) => `  ${html.slice(0, 200)}\n  ${(failureSummary ?? '').replaceAll('\n', ' ')}`).join('\n')}`);
  expect(wrong, `accessibility of ${page.url()}`).toEqual([]);
}

let axe: string | undefined;
async function readAxe(): Promise<string> {
  axe ??= await readFile(axePath, 'utf8');
  return axe;
}

/** No page scrolls sideways. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => {
    const root = document.documentElement;
    if (root.scrollWidth <= root.clientWidth) return '';
    const widest = [...document.querySelectorAll('body *')].find((element) => element.getBoundingClientRect().right > root.clientWidth + 1);
    return `${String(root.scrollWidth - root.clientWidth)} px over, by ${widest?.outerHTML.slice(0, 160) ?? '?'}`;
  });
  expect(over, `sideways scroll at ${page.url()}`).toBe('');
}
