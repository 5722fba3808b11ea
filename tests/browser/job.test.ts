import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { packDesign } from '../../src/editor/saw/transfer.ts';
import { inches } from '../../src/measure/units.ts';
import { violations } from './axe.ts';
import { drop, openBrowser, openStep, plainDesign, stored, visit, wish } from './bench.ts';

const { context } = openBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const DESK = { viewport: { width: 1440, height: 900 } } as const;
const ID = '0f8a2c1e-1111-4222-8333-444455556666';

/** Two stiles, a panel, and three short rails, so that half of it can be cut. */
function railed(): Design {
  const plain = plainDesign();
  const rail = (n: number) =>
    newPart('strip', {
      ...{ id: `rail-${n}`, name: `Rail ${n}`, stock: 'pine-1x3', finish: 'trim' },
      box: { x: inches(9), y: inches(6 + 7 * n), w: inches(20), h: inches(2.5) },
    });
  return { ...plain, parts: [...plain.parts, rail(0), rail(1), rail(2)] };
}

async function atSaw(on: BrowserContext, design = railed()): Promise<Page> {
  const { digits } = await packDesign(design);
  const page = await on.newPage();
  await page.goto(`${inject('app')}#bench&i=${ID}&d=${digits}`);
  await page.locator('.saw-card').waitFor({ timeout: 60_000 });
  return page;
}

/** How many of how many things at the saw are done. */
async function count(page: Page): Promise<{ done: number; all: number }> {
  const [, done, all] =
    /(\d+) of (\d+) cut/.exec((await page.locator('.saw-progress').textContent()) ?? '') ?? [];
  return { done: Number(done), all: Number(all) };
}

async function cutNext(page: Page): Promise<void> {
  const { done } = await count(page);
  await page.getByRole('button', { name: /^Mark as cut/ }).click();
  await expect.poll(async () => (await count(page)).done).toBeGreaterThan(done);
}

describe('a job, from the first cut to the last', () => {
  it.each([
    ['a phone', PHONE],
    ['a desk', DESK],
  ])(
    'on %s: half is cut, one comes out short, the rest is planned again and finished',
    async (_, options) => {
      const device = await context(options);
      const page = await atSaw(device);
      const errors: string[] = [];
      page.on('pageerror', (e) => errors.push(e.message));
      const { all } = await count(page);
      while ((await count(page)).done < 2) await cutNext(page);
      const label = await page.locator('.saw-label').textContent();
      const cut = (await count(page)).done;
      await page.getByRole('button', { name: 'Something went wrong' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('It measures now').fill('12');
      await dialog.getByLabel('It measures now').press('Tab');
      await dialog.getByRole('button', { name: 'Plan the rest again' }).click();
      await page.getByText(/^Planned again from what is left/).waitFor();
      // What is cut stays cut, and the piece is still to be cut.
      expect((await count(page)).done).toBe(cut);
      await page.getByRole('button', { name: 'All pieces' }).click();
      expect(await page.locator('.saw-row', { hasText: label ?? '' }).count()).toBeGreaterThan(0);
      await page.locator('.work').getByText('Next', { exact: true }).waitFor();
      await page.getByRole('button', { name: 'All pieces' }).click();
      for (let n = 0; n < all + 6 && (await count(page)).done < (await count(page)).all; n++)
        await cutNext(page);
      await page.getByText('Everything is cut.').waitFor();
      // Kept with the job: nothing is forgotten when the page is opened again.
      const end = await count(page);
      await stored(page, 'design:', (text) => (text.match(/"is":"(cut|sawn)"/g)?.length ?? 0) >= end.done);
      await page.reload();
      await page.locator('.saw-card').waitFor({ timeout: 60_000 });
      expect(await count(page)).toEqual(end);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(options.viewport.width);
      expect(errors).toEqual([]);
      await device.close();
    },
  );

  it('says what went wrong in figures: a split, a board of another length, and why what is said cannot be', async () => {
    const device = await context(PHONE);
    const page = await atSaw(device);
    const dialog = page.getByRole('dialog');
    const open = () => page.getByRole('button', { name: 'Something went wrong' }).click();
    await open();
    await dialog.getByLabel('It measures now').fill('90');
    await dialog.getByLabel('It measures now').press('Tab');
    await dialog.getByText('That is no shorter than it should be').waitFor();
    expect(await dialog.getByRole('button', { name: 'Plan the rest again' }).isDisabled()).toBe(true);
    await dialog.getByLabel('The board has another length').check();
    await dialog.getByLabel('The tape reads').fill('95 1/4');
    await dialog.getByLabel('The tape reads').press('Tab');
    for (const colorScheme of ['light', 'dark'] as const) {
      await wish(page, { colorScheme });
      expect(await violations(page)).toEqual([]);
    }
    await dialog.getByRole('button', { name: 'Plan the rest again' }).click();
    await expect.poll(() => page.locator('.saw-from').first().textContent()).toContain('95 1/4');
    await device.close();
  });

  it('is put together of what two devices say', async () => {
    const [one, two] = [await context(PHONE), await context(DESK)];
    const [phone, desk] = [await atSaw(one), await atSaw(two)];
    await cutNext(phone);
    await desk.getByRole('button', { name: 'Next' }).click();
    await cutNext(desk);
    expect(await count(phone)).toEqual(await count(desk));
    const link = async (page: Page) => {
      await page.getByRole('button', { name: 'To a phone' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('Network address').fill('http://192.168.1.20:4173');
      await dialog.getByLabel('Only what is done').check();
      await dialog.getByText('Read it with the device that has this design too').waitFor();
      await dialog.locator('summary', { hasText: 'The link as text' }).click();
      const text = await dialog.getByLabel('The link as text').inputValue();
      await dialog.getByRole('button', { name: 'Close' }).click();
      return text;
    };
    const put = async (page: Page, text: string) => {
      await page.getByRole('button', { name: 'To a phone' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.locator('summary', { hasText: 'A link from the other device' }).click();
      await dialog.getByLabel('A link from the other device').fill(text);
      await dialog.getByRole('button', { name: 'Put together' }).click();
      await dialog.waitFor({ state: 'detached' });
    };
    const [said, heard] = [await link(phone), await link(desk)];
    await put(desk, said);
    await put(phone, heard);
    await expect.poll(async () => (await count(desk)).done).toBe(2);
    await expect.poll(async () => (await count(phone)).done).toBe(2);
    // Once more says nothing new.
    await put(desk, said);
    expect((await count(desk)).done).toBe(2);
    for (const device of [one, two]) await device.close();
  });

  it('asks what is to become of what is fastened before a change takes it away', async () => {
    const { page, errors } = await visit(await context(DESK));
    await drop(page, railed());
    await openStep(page, 'Fastening');
    const order = page.getByRole('region', { name: /Order of work/ });
    const boxes = order.getByRole('checkbox');
    await boxes.first().waitFor();
    const fix = order.locator('.step', { hasText: /Glue and fasten.*Rail 1/ }).first();
    await fix.getByRole('checkbox').check();
    await expect.poll(() => order.locator('.work-counts').textContent()).toMatch(/Fastened[1-9]/);
    await openStep(page, 'Layout');
    await page.getByRole('treeitem', { name: /Rail 1/ }).click();
    await page.keyboard.press('Delete');
    const dialog = page.getByRole('dialog', { name: 'This touches what is done' });
    await dialog.getByText('Rail 1 is made already').waitFor();
    expect(await violations(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Leave everything as it is' }).click();
    expect(await page.getByRole('treeitem', { name: /Rail 1/ }).count()).toBe(1);
    await page.keyboard.press('Delete');
    await dialog.getByText(/to spend|Costs nothing more/).waitFor({ timeout: 60_000 });
    await dialog.getByRole('button', { name: 'Delete all the same' }).click();
    await expect.poll(() => page.getByRole('treeitem', { name: /Rail 1/ }).count()).toBe(0);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
