import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';

/** What a first visit brings, packed as a server sends it: bytes, and how many files. */
export interface FirstFrame {
  /** All that was asked for before the first card stood on the page. */
  readonly before: number;
  /** Type that its first frame asks for: the text stands there in another one until it comes. */
  readonly type: number;
  readonly files: number;
}

/**
 * Opens the first page and counts what came before its first card could be clicked. What is asked for once it is there
 * comes while the person looks, however late this looks; the type of that very frame is told by itself.
 */
export async function firstFrame(page: Page, address: string): Promise<FirstFrame> {
  const sizes = new Map<string, Promise<number>>();
  page.on('response', (response) => {
    sizes.set(
      response.url(),
      response.body().then(
        (body) => gzipSync(body).length,
        () => 0,
      ),
    );
  });
  await page.addInitScript(() => {
    const watch = new MutationObserver(() => {
      if (!document.querySelector('.first-card')) return;
      watch.disconnect();
      performance.mark('first card');
    });
    watch.observe(document, { childList: true, subtree: true });
  });
  await page.goto(address);
  await page.locator('.first-card').first().waitFor();
  const { before, type } = await page.evaluate(async () => {
    await document.fonts.ready;
    const usable = performance.getEntriesByName('first card')[0]?.startTime ?? 0;
    const asked = performance.getEntriesByType('resource');
    // No function with a name: what compiles the benches marks those by a helper that the page does not have.
    const before = asked.filter((entry) => entry.startTime < usable).map(({ name }) => name);
    const later = asked.filter((entry) => entry.startTime >= usable).map(({ name }) => name);
    return { before, type: later.filter((name) => name.endsWith('.woff')) };
  });
  const sum = async (urls: readonly string[]) =>
    (await Promise.all(urls.map((url) => sizes.get(url) ?? 0))).reduce((all, size) => all + size, 0);
  const all = [page.url(), ...before];
  return { before: await sum(all), type: await sum(type), files: all.length };
}
