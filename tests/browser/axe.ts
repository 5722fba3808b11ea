import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { misnamed } from './names.ts';

const SOURCE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

declare global {
  interface Window {
    axe?: { run: (context: unknown, options: RunOptions) => Promise<AxeResults> };
  }
}

/** What is looked at and what is left out, by selectors. */
interface Within {
  readonly include: string[];
  readonly exclude: string[];
}

/**
 * What the access checker finds against the page as it stands, or against a part of it. Contrast takes four fifths of
 * the time and is left out where the same colors are looked at elsewhere. The checker comes into a page with the first
 * look. What is seen of a control has to be in its name, too, which the checker does not look for.
 */
export async function violations(page: Page, within?: Within, contrast = true): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(SOURCE);
  const options: RunOptions = {
    resultTypes: ['violations'],
    rules: { 'color-contrast': { enabled: contrast } },
  };
  const found = await page.evaluate(
    async ([context, wanted]) => (await window.axe?.run(context ?? document, wanted))?.violations,
    [within ?? null, options] as const,
  );
  if (!found) throw new Error('The access checker did not come into the page.');
  const names = await misnamed(page, within?.include[0]);
  return [...found.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`), ...names];
}
