import { PDFDocument } from '@cantoo/pdf-lib';
import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/measure/units.ts';
import { bytesOf, drop, field, onPage, openBrowser, plainDesign, visit } from './bench.ts';
import { Fingers } from './fingers.ts';

const { context } = openBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

describe('by touch on a phone', () => {
  it('goes from nothing to a finished kiosk with its sign and pages', async () => {
    const phone = await context({ ...PHONE, acceptDownloads: true });
    const { page, errors } = await visit(phone);
    const fingers = await Fingers.on(phone, page);
    const spot = (x: number, y: number) => onPage(page, inches(x), inches(y));
    const step = (name: string) => page.getByRole('navigation').getByRole('button', { name }).tap();
    const tool = (name: string) => page.getByRole('radio', { name }).tap();
    const fold = () => page.getByRole('button', { name: 'Fold the pane down' }).tap();
    const type = async (label: string, text: string) => {
      await field(page, label).tap();
      await field(page, label).fill(text);
      await field(page, label).press('Enter');
    };
    const scale = () => page.locator('.canvas').getAttribute('data-scale').then(Number);

    await page.getByRole('button', { name: /^Empty bed/ }).tap();
    await page.locator('.canvas canvas').first().waitFor();

    // A stile drawn with the finger, measured, and its mirror image.
    await step('Layout');
    await page.getByRole('button', { name: 'Strip', exact: true }).tap();
    await page.getByRole('tab', { name: 'Layout' }).waitFor();
    await fingers.carry(await spot(1.6, 3), await spot(1.6, 74));
    await page.getByRole('tab', { name: 'Left stile' }).tap();
    await type('From the left', '0');
    await type('From the bottom', '0');
    await type('Height', '78');
    await page.getByRole('button', { name: 'Mirror copy to the other side' }).tap();
    // 41 1/2 less a dressed 1 x 3 of 2 1/2 in (PS 20).
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('39"');

    // A rail carried from the stock onto the face: the finger rests until it lifts.
    await page.getByRole('tab', { name: 'Layout' }).tap();
    const stock = page.getByRole('button', { name: /^Pine 1 x 4/ });
    await stock.scrollIntoViewIfNeeded();
    const box = await stock.boundingBox();
    if (!box) throw new Error('the stock is not on the page');
    const rail = { x: box.x + 60, y: box.y + box.height / 2 };
    await fingers.carry(rail, await spot(20, 40), page.locator('[data-lifted]'));
    await page.getByRole('tab', { name: 'Middle rail' }).waitFor();
    await type('From the left', '2 1/2');
    await type('Width', '36 1/2');
    await type('From the bottom', '0');
    await page.getByRole('button', { name: 'Mirror copy above or below' }).tap();
    await expect.poll(() => field(page, 'From the bottom').inputValue()).toBe('74 1/2"');

    // Even battens: drawn, then their number typed on the drawing.
    await fold();
    await tool('Draw a row of strips');
    await fingers.carry(await spot(6, 6), await spot(35, 28));
    await page.getByRole('tab', { name: 'Bottom battens' }).waitFor();
    await page.getByRole('button', { name: /gap between the parts of/ }).tap();
    await page.locator('.canvas-field input').fill('9');
    await page.locator('.canvas-field input').press('Enter');
    await page.getByRole('tab', { name: 'Bottom battens' }).tap();
    await expect.poll(() => field(page, 'How many').inputValue()).toBe('9');
    await fold();

    await tool('Draw a panel');
    await fingers.carry(await spot(8, 34), await spot(33, 52));
    await page.getByRole('tab', { name: 'Center panel' }).waitFor();
    await page
      .getByRole('button', { name: /Change it$/ })
      .first()
      .tap();
    await page.locator('.canvas-field input').fill('24');
    await page.locator('.canvas-field input').press('Enter');
    await page.getByRole('button', { name: /^24 inches: / }).waitFor();

    // A sign set down by a tap, lettered where it stands by two.
    await tool('Draw a sign');
    const sign = await spot(20, 63);
    await fingers.tap(sign);
    await page.getByRole('tab', { name: 'Top sign' }).waitFor();
    await fingers.twoTaps(sign);
    await page.locator('.letter-field').fill('HARBOR');
    await page.locator('.letter-field').press('Control+Enter');

    // A finger that rests opens the menu of the panel, which is selected too by it; both are centered by one press, and
    // two fingers look closer.
    const before = await scale();
    const too = page.getByRole('menuitem', { name: 'Select it too' });
    await fingers.rest(await spot(20, 44), too);
    await too.tap();
    await page.getByRole('tab', { name: '2 selected' }).tap();
    await page.getByRole('button', { name: 'Centered across' }).tap();

    // Both are kept as a building part, carried from the shelf onto the face by a finger, and taken back.
    await page.getByRole('button', { name: 'Keep as a building part' }).first().tap();
    await page.getByRole('tab', { name: 'Layout' }).tap();
    const own = page.locator('.own').getByRole('button', { name: 'My building part', exact: true });
    await own.scrollIntoViewIfNeeded();
    const card = await own.boundingBox();
    if (!card) throw new Error('the building part is not on the page');
    const middle = { x: card.x + card.width / 2, y: card.y + card.height / 2 };
    await fingers.carry(middle, await spot(20, 12), page.locator('[data-lifted]'));
    await page.getByRole('tab', { name: /^My building part 1/ }).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).first().tap();
    await page.getByRole('tab', { name: /^My building part 1/ }).waitFor({ state: 'detached' });
    await fold();
    // The face takes the room that the pane left, as it did before.
    await expect.poll(scale).toBe(before);
    await fingers.pinch(await spot(20, 44), 40, 80);
    await expect.poll(async () => (await scale()) / before).toBeCloseTo(2, 1);
    await page.getByRole('button', { name: 'Fit the whole face' }).tap();

    await step('Checks');
    await page.getByText('No problems found. Checked:').waitFor({ timeout: 60_000 });
    await page.getByText('15 parts, on the face').waitFor();
    await step('Pages');
    await page.getByText(/^\d+ pages, on Letter$/).waitFor();
    const pages = await page.locator('.thumb').count();
    await page.getByRole('button', { name: 'Enlarge page 1 of Top sign' }).tap();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
    await page.getByRole('button', { name: 'Print & export' }).tap();
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('menuitem', { name: 'Full-size patterns (PDF)' }).tap(),
    ]);
    const printed = await PDFDocument.load(await bytesOf(file));
    // A cover tells how they are printed and taped.
    expect(printed.getPageCount()).toBe(pages + 1);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(errors).toEqual([]);
    await phone.close();
  });

  it('keeps a field and its message in sight while the keyboard is up', async () => {
    const phone = await context(PHONE);
    // A device tells of its keyboard by what is left to be seen; here the test does.
    await phone.addInitScript(() => {
      const seen = Object.assign(new EventTarget(), { height: 844, width: 390, scale: 1, offsetTop: 0 });
      Object.defineProperty(window, 'visualViewport', { value: seen });
    });
    const { page } = await visit(phone);
    const show = (height: number, offsetTop: number) =>
      page.evaluate(
        (now) => {
          Object.assign(window.visualViewport ?? {}, now);
          window.visualViewport?.dispatchEvent(new Event('resize'));
        },
        { height, offsetTop },
      );
    await drop(page, plainDesign());
    await page.getByRole('tab', { name: 'Parts' }).tap();
    await page.getByRole('treeitem', { name: /Door panel/ }).tap();
    await page.getByRole('tab', { name: 'Door panel' }).tap();
    const inSight = async (what: Locator, top: number, bottom: number) => {
      const box = await what.boundingBox();
      expect(box?.y, what.toString()).toBeGreaterThanOrEqual(top);
      expect((box?.y ?? 0) + (box?.height ?? 0), what.toString()).toBeLessThanOrEqual(bottom);
    };
    // An upright phone whose keyboard takes two fifths, and one that is small and was pushed up by it.
    for (const [height, top] of [
      [508, 0],
      [330, 90],
    ] as const) {
      await field(page, 'Height').tap();
      await show(height, top);
      await inSight(field(page, 'Height'), top, top + height);
      await field(page, 'Height').fill('twenty');
      await field(page, 'Height').press('Enter');
      const message = page.getByRole('alert').filter({ hasText: /twenty|expected|read/i });
      await message.waitFor();
      await inSight(message, top, top + height);
      await inSight(field(page, 'Height'), top, top + height);
      await field(page, 'Height').press('Escape');
      await show(844, 0);
    }
    await page.getByRole('navigation').waitFor();
    await phone.close();
  });

  it('chooses several parts in the list', async () => {
    const phone = await context(PHONE);
    const { page } = await visit(phone);
    await drop(page, plainDesign());
    await page.getByRole('tab', { name: 'Parts' }).tap();
    await page.getByRole('button', { name: 'Choose several' }).tap();
    const row = (name: RegExp) => page.getByRole('treeitem', { name });
    await row(/Left stile/).tap();
    await row(/Right stile/).tap();
    await row(/Door panel/).tap();
    await page.getByRole('tab', { name: '3 selected' }).waitFor();
    await row(/Door panel/).tap();
    await page.getByRole('tab', { name: '2 selected' }).waitFor();
    expect(await row(/Door panel/).getAttribute('aria-selected')).toBe('false');
    await page.getByRole('button', { name: 'Choose several' }).tap();
    await row(/Door panel/).tap();
    await page.getByRole('tab', { name: 'Door panel' }).waitFor();
    await phone.close();
  });

  it('opens a starter without a field that would bring up the keyboard', async () => {
    const phone = await context(PHONE);
    const { page } = await visit(phone);
    await page.getByRole('button', { name: /^Harbor ticket kiosk/ }).tap();
    await page.locator('.canvas canvas').first().waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toMatch(/drawing|canvas/);
    await phone.close();
  });
});
