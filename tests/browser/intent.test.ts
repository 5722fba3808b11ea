import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { stocksOf } from '../../src/editor/state/tables.ts';
import { kindOf } from '../editor/intent/hand.ts';
import { faults, type Gesture, laterFaults, scenes } from '../editor/intent/scene.ts';
import { bytesOf, drop, onPage, openBrowser, visit } from './bench.ts';

const { context } = openBrowser();

const TOOLS: Readonly<Record<string, string>> = {
  strip: 'Draw a strip',
  panel: 'Draw a panel',
  frame: 'Draw a frame of molding',
  sign: 'Draw a sign',
  painted: 'Paint a shape',
  row: 'Draw a row of strips',
};

/** Sets the zoom by the wheel, so that the middle of a way stands in the middle of the drawing. */
async function zoomTo(page: Page, scale: number, [x, y]: readonly [number, number]): Promise<void> {
  const canvas = page.locator('.canvas');
  const box = await canvas.boundingBox();
  if (!box) throw new Error('no drawing');
  const now = Number(await canvas.getAttribute('data-scale'));
  const at = await onPage(page, x, y);
  await page.mouse.move(at.x, at.y);
  // The editor zooms by e to the power of the wheel's way by 0.0016.
  await page.mouse.wheel(0, -Math.log(scale / now) / 0.0016);
  await expect.poll(() => canvas.getAttribute('data-scale').then(Number)).toBeCloseTo(scale, 2);
  const there = await onPage(page, x, y);
  await page.mouse.move(there.x, there.y);
  const from = { x: there.x, y: there.y };
  const to = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(to.x + (there.x - from.x), to.y, { steps: 2 });
  await page.mouse.up({ button: 'middle' });
}

/** The design as saving it to a file writes it. */
async function saved(page: Page): Promise<Design> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  const opened = openDesign((await bytesOf(file)).toString('utf8'));
  if (!opened.ok) throw new Error('what was saved does not open');
  return opened.design;
}

async function perform(page: Page, design: Design, gesture: Gesture, name: string): Promise<void> {
  const { pixels_per_mm: scale, from_mm: from, to_mm: to, jitter_px: miss } = gesture;
  if (gesture.part) {
    await page
      .getByRole('treeitem', { name: new RegExp(`^${name}`) })
      .first()
      .click();
  }
  const kind = kindOf(gesture.tool);
  const stock = gesture.stock === undefined ? undefined : stocksOf(design).get(gesture.stock);
  if (kind) {
    await page.getByRole('tab', { name: 'Layout' }).click();
    await page.getByRole('radio', { name: TOOLS[gesture.tool] ?? gesture.tool }).click();
    if (stock) {
      await page.getByLabel('Kind of stock', { exact: true }).selectOption(stock.form);
      const button = page.locator('button.stock', { hasText: stock.name }).first();
      if ((await button.getAttribute('aria-pressed')) !== 'true') await button.click();
    }
  }
  await zoomTo(page, scale, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
  const a = await onPage(page, from[0], from[1]);
  const b = await onPage(page, to[0], to[1]);
  if (gesture.modifier === 'free') await page.keyboard.down('Alt');
  await page.mouse.move(a.x + miss[0], a.y - miss[1]);
  await page.mouse.down();
  await page.mouse.move(b.x + miss[2], b.y - miss[3], { steps: 6 });
  await page.mouse.up();
  if (gesture.modifier === 'free') await page.keyboard.up('Alt');
}

/** A strip that ends at an arch is cut to it by a rule that does not stand yet. */
const all = scenes().filter(({ file }) => !file.startsWith('s16'));

describe.skipIf(all.length === 0)('what a hand means, in the editor (left out without ../shared)', () => {
  it.each(all.map((scene) => [scene.file, scene] as const))('%s', async (_, scene) => {
    const { page, errors } = await visit(
      await context({ viewport: { width: 1900, height: 1500 }, acceptDownloads: true }),
    );
    await page.addInitScript(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
    await page.reload();
    await page.locator('.first, .bench').first().waitFor();
    await drop(page, scene.design);
    const ids = new Map<string, string>();
    let design = scene.design;
    for (const { gesture, after } of scene.steps) {
      const part = ids.get(gesture.part ?? '') ?? gesture.part;
      const name = design.parts.find((p) => p.id === part)?.name ?? '';
      if (gesture.tool === 'mirror-copy') {
        await page.getByRole('treeitem', { name: new RegExp(`^${name}`) }).click();
        await page.getByRole('button', { name: 'Mirror copy to the other side' }).click();
      } else await perform(page, design, gesture, name);
      const before = new Set(design.parts.map((p) => p.id));
      design = await saved(page);
      const made = design.parts.find((p) => !before.has(p.id));
      if (gesture.makes && made) ids.set(gesture.makes, made.id);
      expect(faults(scene, design, after, ids)).toEqual([]);
    }
    expect(laterFaults(scene, design, ids)).toEqual([]);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
