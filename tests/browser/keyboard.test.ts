import { PDFDocument } from '@cantoo/pdf-lib';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bytesOf, drop, field, heard, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** Stops of the Tab key between two things that somebody uses one after the other, at most. */
const FAR = 45;

/** Hands on the keys only: nothing is clicked, and nothing is given the focus but by a key. */
class Keys {
  readonly #page: Page;
  /** Every key that went down: each one of a chord, each character, Shift once for what it is held down for. */
  pressed = 0;
  constructor(page: Page) {
    this.#page = page;
  }

  async press(...chords: string[]): Promise<void> {
    for (const chord of chords) {
      this.pressed += chord.split('+').length;
      await this.#page.keyboard.press(chord);
    }
  }

  async type(text: string): Promise<void> {
    this.pressed += text.length + (/[A-Z]/.test(text) ? 1 : 0);
    await this.#page.keyboard.type(text);
  }

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

  /** Types over what stands in a field; it is taken when the next key leads on. */
  async fill(label: string, text: string): Promise<void> {
    await this.reach(field(this.#page, label));
    await this.type(text);
  }

  /** Goes round the regions of the bench until the focus is in one. */
  async region(selector: string): Promise<void> {
    const inside = () =>
      this.#page.locator(selector).evaluate((region) => region.contains(document.activeElement));
    for (let i = 0; i < 6 && !(await inside()); i++) await this.press('F6');
    expect(await inside()).toBe(true);
  }

  /** Opens a step by its number; the keys are in its pane then. */
  async step(number: number, name: string): Promise<void> {
    await this.region('.rail');
    await this.press(String(number));
    await expect.poll(() => this.#at(this.#page.getByRole('tabpanel', { name }))).toBe(true);
  }

  /** Adds a part from wherever the keys are, by the first letters of its kind; they are at its first measure then. */
  async add(kind: string, letters: string, name = kind): Promise<void> {
    await this.press('Insert');
    await this.type(letters);
    const item = this.#page.getByRole('menuitem', { name: kind, exact: true });
    await item.and(this.#page.locator(':focus')).waitFor();
    await this.press('Enter');
    const panel = this.#page.getByRole('tabpanel', { name });
    await panel.getByLabel('From the left', { exact: true }).and(this.#page.locator(':focus')).waitFor();
  }
}

describe('by keyboard alone', () => {
  it('goes from nothing to a finished kiosk with its sign and pages, in 120 presses', async () => {
    const { page, errors } = await visit(await context({ acceptDownloads: true }));
    const keys = new Keys(page);
    const counts: string[] = [];
    let before = 0;
    const counted = (what: string) => {
      counts.push(`${what} ${keys.pressed - before}`);
      before = keys.pressed;
    };
    await keys.region('.first-cards');
    await keys.push(page.getByRole('button', { name: /^Empty bed/ }));
    await expect.poll(() => page.locator('.pane-body:focus').count()).toBe(1);
    counted('bed');

    // A frame of four boards of 3 1/2 in on the edges of the face.
    await keys.step(2, 'Layout');
    await keys.push(page.locator('summary', { hasText: 'Divide a space' }));
    await keys.fill('From, at the left', 'T');
    for (const side of ['From, at the left', 'To, at the right', 'From, below', 'To, above'])
      expect(await field(page, side).inputValue()).toBe('face');
    await keys.fill('Columns', '1');
    await keys.fill('Rows', '1');
    await keys.reach(field(page, 'Uprights of'));
    await keys.press('ArrowDown');
    for (const wood of ['Uprights of', 'Rails of'])
      expect(await field(page, wood).locator('option:checked').textContent()).toBe('Pine 1 x 4');
    await keys.push(page.getByRole('button', { name: 'Divide it' }));
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(4);
    counted('frame');

    // Nine battens: 34 1/2 in less 9 of 1 1/2 in leaves 21 in for ten gaps of 2.1 in.
    await keys.add('Row', 'r', 'Battens');
    await keys.fill('From the left', '3 1/2');
    await keys.fill('From the bottom', '3 1/2');
    await keys.fill('Width', '34 1/2');
    await keys.fill('Height', '24');
    await keys.reach(field(page, 'How many'));
    await expect.poll(() => heard(page)).toMatch(/^Battens: 34 1\/2 inches wide, 24 inches high$/m);
    await keys.type('9');
    await keys.reach(field(page, 'Stock'));
    await keys.press('Home');
    expect(await field(page, 'Stock').locator('option:checked').textContent()).toBe('Pine 1 x 2');
    await page.getByRole('button', { name: '2 1/8 inches: gap between the parts of' }).waitFor();
    counted('row of nine');

    await keys.add('Panel', 'p');
    await keys.fill('From the left', '5');
    await keys.fill('From the bottom', '34');
    await keys.fill('Width', '31 1/2');
    await keys.fill('Height', '20');
    counted('panel');

    await keys.add('Sign', 'si');
    await keys.fill('From the bottom', '60');
    await keys.fill('Width', '31 1/2');
    await keys.fill('Height', '9');
    await keys.fill('Lettering', 'HARBOR');
    await keys.press('Control+e');
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('5"');
    await page.locator('.rule-item').waitFor();
    counted('sign');

    await keys.step(3, 'Checks');
    await page.getByText('No problems found. Checked:').waitFor({ timeout: 60_000 });
    await page.getByText('15 parts, on the face').waitFor();
    counted('checks');

    await keys.step(8, 'Pages');
    await page.getByText(/^\d+ pages, on Letter$/).waitFor();
    const pages = await page.locator('.thumb').count();
    counted('pages');

    const printed = async (letter: string, name: string) => {
      await keys.press('Control+p');
      await keys.type(letter);
      await page.getByRole('menuitem', { name }).and(page.locator(':focus')).waitFor();
      const [file] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
      return (await PDFDocument.load(await bytesOf(file))).getPageCount();
    };
    expect(await printed('s', 'Shop packet (PDF)')).toBeGreaterThan(8);
    counted('packet');
    process.stdout.write(`${keys.pressed} keys pressed: ${counts.join(', ')}\n`);
    expect(keys.pressed).toBeLessThanOrEqual(120);

    // A cover tells how they are printed and taped.
    expect(await printed('f', 'Full-size patterns (PDF)')).toBe(pages + 1);
    expect(pages).toBeGreaterThan(4);

    await keys.region('.pane');
    await keys.push(page.getByRole('button', { name: 'Enlarge page 1 of Sign' }));
    await page.getByRole('dialog').waitFor();
    await keys.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
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
    await page.getByRole('treeitem', { name: /sign/i }).waitFor();
    await keys.press('Enter');
    await page.locator('.letter-field:focus').waitFor();
    await keys.type('FISH');
    await keys.press('Control+Enter');
    await expect.poll(() => field(page, 'Lettering').inputValue()).toBe('FISH');
    await page.locator('.canvas:focus').waitFor();

    // Taken away from the part list, the focus stays in it, on the neighbor.
    await keys.reach(page.getByRole('treeitem', { name: /sign/i }), 'Shift+Tab');
    await keys.press('Delete');
    await page.locator('[role=treeitem]:focus', { hasText: 'Door panel' }).waitFor();
    await keys.press('Enter');
    await page.getByRole('tabpanel', { name: 'Door panel' }).and(page.locator(':focus')).waitFor();

    // A press that takes its own button away leads on: a stock becomes a strip, whose fields come forward.
    await keys.step(2, 'Layout');
    await keys.reach(page.getByRole('button', { name: /^Pine 1 x 2/ }));
    await keys.press('ArrowDown');
    await keys.press('Enter');
    await page.getByRole('tabpanel', { name: /rail$/i }).and(page.locator(':focus')).waitFor();
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
