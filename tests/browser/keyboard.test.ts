import { PDFDocument } from '@cantoo/pdf-lib';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bytesOf, drop, field, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** Stops of the Tab key between two things that somebody uses one after the other, at most. */
const FAR = 45;

/** Hands on the keys only: nothing is clicked, and nothing is given the focus but by a key. */
class Keys {
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }

  press = (key: string) => this.#page.keyboard.press(key);

  #at = (target: Locator) =>
    target.evaluateAll((found) => found.some((one) => one === document.activeElement));

  /** Presses a key until the focus stands on what is meant. */
  async reach(target: Locator, key = 'Tab'): Promise<void> {
    await target.first().waitFor();
    for (let i = 0; i < FAR; i++) {
      if (await this.#at(target)) return;
      await this.press(key);
    }
    throw new Error(`${FAR} times ${key} do not lead to ${target.toString()}`);
  }

  async push(target: Locator): Promise<void> {
    await this.reach(target);
    await this.press('Enter');
  }

  async type(label: string, text: string): Promise<void> {
    await this.reach(field(this.#page, label));
    await this.#page.keyboard.type(text);
    await this.press('Enter');
  }

  async choose(label: string, option: string): Promise<void> {
    await this.reach(field(this.#page, label));
    await this.#page.keyboard.type(option);
  }

  /** Goes round the regions of the bench until the focus is in one. */
  async region(selector: string): Promise<void> {
    const inside = () =>
      this.#page.locator(selector).evaluate((region) => region.contains(document.activeElement));
    for (let i = 0; i < 6 && !(await inside()); i++) await this.press('F6');
    expect(await inside()).toBe(true);
  }

  /** Opens a step; the keys are in its pane then. */
  async step(name: string): Promise<void> {
    await this.region('.rail');
    for (let i = 0; i < 8; i++) await this.press('Shift+Tab');
    await this.region('.rail');
    const step = this.#page.getByRole('navigation').getByRole('button', { name });
    for (let i = 0; i < 8 && !(await this.#at(step)); i++) await this.press('Tab');
    await this.push(step);
    await expect.poll(() => this.#at(this.#page.getByRole('tabpanel', { name }))).toBe(true);
  }

  /** Adds a part from the part list; the keys are in its fields then. */
  async add(kind: string): Promise<void> {
    await this.region('.parts-side');
    await this.reach(this.#page.getByRole('button', { name: 'Add a part' }), 'Shift+Tab');
    await this.press('Enter');
    const item = this.#page.getByRole('menuitem', { name: kind, exact: true });
    await this.reach(item, 'ArrowDown');
    await this.press('Enter');
    await expect.poll(() => this.#at(this.#page.getByRole('tabpanel', { name: `${kind} 1` }))).toBe(true);
  }
}

const told = async (page: Page) =>
  (await page.locator('.hidden-text[role=status]').allTextContents()).join('');

describe('by keyboard alone', () => {
  it('goes from nothing to a finished kiosk with its sign and pages', async () => {
    const { page, errors } = await visit(await context({ acceptDownloads: true }));
    const keys = new Keys(page);
    await keys.push(page.getByRole('button', { name: /^Empty bed/ }));
    await expect.poll(() => page.locator('.pane-body:focus').count()).toBe(1);

    // A frame of four boards of 3 1/2 in on the edges of the face.
    await keys.step('Layout');
    await keys.push(page.locator('summary', { hasText: 'Divide a space' }));
    for (const side of ['From, at the left', 'To, at the right', 'From, below', 'To, above'])
      await keys.choose(side, 'The face');
    await keys.type('Columns', '1');
    await keys.type('Rows', '1');
    await keys.choose('Uprights of', 'Pine 1 x 4');
    await keys.choose('Rails of', 'Pine 1 x 4');
    await keys.push(page.getByRole('button', { name: 'Divide it' }));
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(4);

    // Nine battens: 34 1/2 in less 9 of 1 1/2 in leaves 21 in for ten gaps of 2.1 in.
    await keys.add('Row');
    await keys.type('From the left', '3 1/2');
    await keys.type('From the bottom', '3 1/2');
    await keys.type('Width', '41 1/2 - 2*3 1/2');
    await keys.type('Height', '24');
    expect(await told(page)).toBe('Row 1: 34 1/2 inches wide, 24 inches high');
    await keys.choose('Stock', 'Pine 1 x 2');
    await keys.type('How many', '9');
    await page.getByRole('button', { name: '2 1/8 inches: gap between the parts of' }).waitFor();

    await keys.add('Panel');
    await keys.type('From the left', '5');
    await keys.type('From the bottom', '34');
    await keys.type('Width', '31 1/2');
    await keys.type('Height', '20');

    await keys.add('Sign');
    await keys.type('From the bottom', '60');
    await keys.type('Width', '31 1/2');
    await keys.type('Height', '9');
    await keys.reach(field(page, 'Lettering'));
    await page.keyboard.type('HARBOR');
    await keys.push(page.getByRole('button', { name: 'Centered across' }));
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('5"');
    await page.locator('.rule-item').waitFor();

    await keys.step('Checks');
    await page.getByText('Nothing to mend. What was looked at:').waitFor({ timeout: 60_000 });
    await page.getByText('Parts: 15.').waitFor();

    await keys.step('Pages');
    await page.getByText(/^Pages: \d+, on Letter$/).waitFor();
    const pages = await page.locator('.thumb').count();
    await keys.push(page.getByRole('button', { name: 'Enlarge page A1 of Sign 1' }));
    await page.getByRole('dialog').waitFor();
    await keys.press('Escape');

    await keys.region('.title-block');
    await keys.push(page.getByRole('button', { name: 'Print & export' }));
    await keys.reach(page.getByRole('menuitem', { name: 'Full-size patterns (PDF)' }), 'ArrowDown');
    const [file] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
    const printed = await PDFDocument.load(await bytesOf(file));
    expect(printed.getPageCount()).toBe(pages);
    expect(pages).toBeGreaterThan(4);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('draws with Enter, letters a sign where it stands, and never loses its place', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, plainDesign());
    const keys = new Keys(page);
    await keys.region('.drawing');
    await keys.reach(page.getByRole('radio', { name: 'Select and move' }));
    await keys.reach(page.getByRole('radio', { name: 'Draw a sign' }), 'ArrowRight');
    await keys.press('Enter');
    await keys.reach(page.locator('.canvas'), 'Shift+Tab');
    await keys.press('Enter');
    await page.getByRole('treeitem', { name: /Sign 1/ }).waitFor();
    await keys.press('Enter');
    await page.locator('.letter-field:focus').waitFor();
    await page.keyboard.type('FISH');
    await keys.press('Control+Enter');
    await expect.poll(() => field(page, 'Lettering').inputValue()).toBe('FISH');
    await page.locator('.canvas:focus').waitFor();

    // Taken away from the part list, the focus stays in it, on the neighbor.
    await keys.reach(page.getByRole('treeitem', { name: /Sign 1/ }), 'Shift+Tab');
    await keys.press('Delete');
    await page.locator('[role=treeitem]:focus', { hasText: 'Door panel' }).waitFor();
    await keys.press('Enter');
    await page.getByRole('tabpanel', { name: 'Door panel' }).and(page.locator(':focus')).waitFor();

    // A press that takes its own button away leads on: a stock becomes a strip, whose fields come forward.
    await keys.step('Layout');
    await keys.reach(page.getByRole('button', { name: /^Pine 1 x 2/ }));
    await keys.press('ArrowDown');
    await keys.press('Enter');
    await page.getByRole('tabpanel', { name: 'Strip 1' }).and(page.locator(':focus')).waitFor();
    // A dressed 1 x 3 is 2 1/2 in wide (PS 20).
    expect(await field(page, 'Height').inputValue()).toBe('2 1/2"');

    // Single keys count on the drawing alone.
    await keys.press('Shift+F6');
    await page.locator('.canvas:focus').waitFor();
    await keys.press('?');
    await page.getByRole('dialog', { name: 'Keys, mouse and fingers' }).waitFor();
    await keys.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
