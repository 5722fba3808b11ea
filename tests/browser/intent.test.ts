import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { stocksOf } from '../../src/editor/shipped/tables.ts';
import { kindOf } from '../editor/intent/hand.ts';
import { faults, type Gesture, laterFaults, type Scene, scenes } from '../editor/intent/scene.ts';
import { bytesOf, drop, field, onPage, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const TOOLS: Readonly<Record<string, string>> = {
  strip: 'Draw a strip',
  panel: 'Draw a panel',
  frame: 'Draw a trim frame',
  sign: 'Draw a sign',
  painted: 'Paint a shape',
  row: 'Draw a row of strips',
};

/** Sets the zoom by the wheel, and pushes the drawing so that a place of the face is in its middle. */
async function zoomTo(page: Page, scale: number, [x, y]: readonly [number, number]): Promise<void> {
  const canvas = page.locator('.canvas');
  const box = await canvas.boundingBox();
  if (!box) throw new Error('no drawing');
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const now = Number(await canvas.getAttribute('data-scale'));
  await page.mouse.move(middle.x, middle.y);
  // The editor zooms by e to the power of the wheel's way by 0.0016.
  await page.mouse.wheel(0, -Math.log(scale / now) / 0.0016);
  await expect.poll(() => canvas.getAttribute('data-scale').then(Number)).toBeCloseTo(scale, 2);
  const there = await onPage(page, x, y);
  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(2 * middle.x - there.x, 2 * middle.y - there.y, { steps: 2 });
  await page.mouse.up({ button: 'middle' });
}

/** The design as saving it to a file writes it. */
async function saved(page: Page): Promise<Design> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  const opened = openDesign((await bytesOf(file)).toString('utf8'));
  if (!opened.ok) throw new Error('what was saved does not open');
  return opened.design;
}

/** Does a gesture of a scene with the mouse: chooses what it is about, then presses, goes straight and releases. */
async function perform(
  page: Page,
  design: Design,
  gesture: Gesture,
  part: string | undefined,
): Promise<void> {
  const { pixels_per_mm: scale, from_mm: from, to_mm: to, jitter_px: miss } = gesture;
  if (part !== undefined) await page.locator(`[data-row="${part}"]`).click();
  if (gesture.tool === 'mirror-copy') {
    await page.getByRole('button', { name: 'Mirror copy to the other side' }).click();
    return;
  }
  const stock = gesture.stock === undefined ? undefined : stocksOf(design).get(gesture.stock);
  if (kindOf(gesture.tool)) {
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

/** What is not as a scene has it, once its gestures were done in the editor. */
async function play(page: Page, scene: Scene): Promise<string[]> {
  await drop(page, { ...scene.design, name: scene.file });
  await page.getByRole('application', { name: scene.file }).waitFor();
  const ids = new Map<string, string>();
  const found: string[] = [];
  let design = scene.design;
  for (const { gesture, after } of scene.steps) {
    await perform(page, design, gesture, ids.get(gesture.part ?? '') ?? gesture.part);
    const before = new Set(design.parts.map((p) => p.id));
    design = await saved(page);
    const made = design.parts.find((p) => !before.has(p.id));
    if (gesture.makes && made) ids.set(gesture.makes, made.id);
    found.push(...faults(scene, design, after, ids));
  }
  return [...found, ...laterFaults(scene, design, ids)].map((fault) => `${scene.file}: ${fault}`);
}

describe('what a hand means, in the editor', () => {
  it('is what the scenes say, by the mouse at their zoom, with their misses', async () => {
    const device = await context({ viewport: { width: 1900, height: 1500 }, acceptDownloads: true });
    await device.addInitScript(() =>
      Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }),
    );
    const { page, errors } = await visit(device);
    const found: string[] = [];
    for (const scene of scenes()) found.push(...(await play(page, scene)));
    expect(found).toEqual([]);
    expect(errors).toEqual([]);
    await device.close();
  });

  it('is told beside the part, and is another reading by a digit or a click until the next act', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, plainDesign());
    const bar = page.getByRole('region', { name: 'What holds it now' });
    const left = () => field(page, 'From the left').inputValue();
    await page.getByRole('radio', { name: 'Draw a panel' }).click();
    // From the right edge of the left stile, 7 1/2 in, to the left edge of the right one, 31 in.
    const a = await onPage(page, 7.5 * 25.4, 10 * 25.4);
    const b = await onPage(page, 31 * 25.4, 20 * 25.4);
    await page.mouse.move(a.x + 2, a.y);
    await page.mouse.down();
    await page.mouse.move(b.x - 2, b.y, { steps: 5 });
    await page.mouse.up();
    await bar.getByRole('button', { name: 'right edge of Left stile', exact: true }).waitFor();
    await expect.poll(left).toBe('7 1/2"');
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('23 1/2"');

    // The far edge of the stile, by its word: 33 1/2 in.
    await bar.getByRole('button', { name: 'left edge of Right stile', exact: true }).click();
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('26"');
    await page.locator('.canvas').press('0');
    await bar.getByText('Nothing holds it').waitFor();
    await expect.poll(() => page.locator('.rule-item').count()).toBe(0);
    await page.locator('.canvas').press('1');
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('26"');
    await page.keyboard.press('Control+z');
    await bar.waitFor({ state: 'detached' });
    await page.getByRole('treeitem', { name: /^Bottom panel/ }).waitFor({ state: 'detached' });
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
