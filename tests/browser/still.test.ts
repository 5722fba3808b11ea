import { describe, expect, it } from 'vitest';
import { drop, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

interface Watched {
  shifts: string[];
  widths: number[];
}

describe('what the person did not move', () => {
  it('stands still in every pane while edits are followed, and no pane changes its width', async () => {
    const { page, errors } = await visit(await context({ serviceWorkers: 'allow' }));
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    for (const step of ['Wood', 'Checks', 'Paint', 'Fastening', 'Pages']) {
      await openStep(page, step);
      // What a step brings has come, its fonts included, before anything is watched.
      await page.evaluate(async () => {
        await document.fonts.ready;
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        const watched: Watched = { shifts: [], widths: [] };
        Object.assign(window, { watched });
        new PerformanceObserver((list) => {
          // Shifts soon after an input count too: that is when the plan follows. The drawing moves by the person's hand.
          for (const entry of list.getEntries() as (PerformanceEntry & {
            sources: readonly { node: Node | null }[];
          })[]) {
            for (const { node } of entry.sources) {
              const element = node instanceof Element ? node : node?.parentElement;
              if (!element || element.closest('.drawing')) continue;
              watched.shifts.push(
                `${element.className || element.tagName}: ${element.textContent?.slice(0, 40)}`,
              );
            }
          }
        }).observe({ type: 'layout-shift' });
        const pane = document.querySelector('.pane');
        if (pane) {
          new ResizeObserver((found) => {
            for (const { contentRect } of found) watched.widths.push(contentRect.width);
          }).observe(pane);
        }
      });
      await page.locator('.canvas').focus();
      for (let n = 0; n < 3; n++) {
        await page.keyboard.press('ArrowRight');
        await page.locator('.job-pane[aria-busy="false"]').waitFor();
      }
      const watched = await page.evaluate(
        () =>
          new Promise<Watched>((done) =>
            requestAnimationFrame(() =>
              requestAnimationFrame(() => done((window as unknown as { watched: Watched }).watched)),
            ),
          ),
      );
      expect(watched.shifts, step).toEqual([]);
      expect(new Set(watched.widths).size, step).toBe(1);
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
