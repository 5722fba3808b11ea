import type { Locator, Page } from 'playwright-core';
import { inches } from '../../src/measure/units.ts';
import { field, onPage } from './bench.ts';
import type { Fingers } from './fingers.ts';

/** A place of the face in inches from its lower left. */
export type Spot = readonly [number, number];

/** What a hand does with the page, whatever it does it with. */
export interface Hand {
  readonly press: (target: Locator) => Promise<void>;
  readonly pull: (from: { x: number; y: number }, to: { x: number; y: number }) => Promise<void>;
  readonly twice: (at: { x: number; y: number }) => Promise<void>;
  /** Asks for the menu of what is there, until an entry of it stands. */
  readonly ask: (at: { x: number; y: number }, entry: Locator) => Promise<void>;
}

export const mouseOn = (page: Page): Hand => ({
  press: (target) => target.click(),
  pull: async (from, to) => {
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.mouse.up();
  },
  twice: (at) => page.mouse.dblclick(at.x, at.y),
  ask: async (at, entry) => {
    await page.mouse.click(at.x, at.y, { button: 'right' });
    await entry.waitFor();
  },
});

export const fingerOn = (fingers: Fingers): Hand => ({
  press: (target) => target.tap(),
  pull: (from, to) => fingers.carry(from, to),
  twice: (at) => fingers.twoTaps(at),
  ask: (at, entry) => fingers.rest(at, entry),
});

/** A person at the page: a click, a drag, a value typed, an entry chosen of a list are one act each. */
export class Person {
  readonly #page: Page;
  readonly #hand: Hand;
  readonly #done: string[] = [];

  constructor(page: Page, hand: Hand) {
    this.#page = page;
    this.#hand = hand;
  }

  get acts(): readonly string[] {
    return this.#done;
  }

  #act(what: string): void {
    this.#done.push(what);
  }

  async press(name: string, target: Locator): Promise<void> {
    this.#act(`press ${name}`);
    await this.#hand.press(target);
  }

  button = (name: string | RegExp) =>
    this.press(String(name), this.#page.getByRole('button', { name }).first());

  tool = (name: string) => this.press(name, this.#page.getByRole('radio', { name }));

  step = (name: string) => this.press(name, this.#page.getByRole('navigation').getByRole('button', { name }));

  /** Misses both places by some pixels, as hands do. */
  async pull([ax, ay]: Spot, [bx, by]: Spot, what = 'pull'): Promise<void> {
    this.#act(`${what} from ${ax}, ${ay} to ${bx}, ${by}`);
    const from = await onPage(this.#page, inches(ax), inches(ay));
    const to = await onPage(this.#page, inches(bx), inches(by));
    await this.#hand.pull({ x: from.x + 2, y: from.y - 1 }, { x: to.x - 2, y: to.y + 1 });
  }

  /** Carries something out of its list to a place of the face. */
  async carry(what: Locator, [x, y]: Spot, name: string): Promise<void> {
    this.#act(`${name} carried to ${x}, ${y}`);
    await what.scrollIntoViewIfNeeded();
    const box = await what.boundingBox();
    if (!box) throw new Error(`${name} is not seen`);
    const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await this.#hand.pull(from, await onPage(this.#page, inches(x), inches(y)));
  }

  async twice([x, y]: Spot): Promise<void> {
    this.#act(`press twice at ${x}, ${y}`);
    await this.#hand.twice(await onPage(this.#page, inches(x), inches(y)));
  }

  /** Asks for the menu of a part and chooses of it: two acts. */
  async ask([x, y]: Spot, entry: RegExp): Promise<void> {
    this.#act(`ask for the menu at ${x}, ${y}`);
    const item = this.#page.getByRole('menuitem', { name: entry });
    await this.#hand.ask(await onPage(this.#page, inches(x), inches(y)), item);
    await this.press(String(entry), item);
  }

  /** Types into a field, and ends with Enter. */
  async type(label: string, text: string, within: Page | Locator = this.#page): Promise<void> {
    this.#act(`type ${text} into ${label}`);
    const input = field(within as Page, label).first();
    await input.fill(text);
    await input.press('Enter');
  }

  async choose(label: string, entry: string): Promise<void> {
    this.#act(`choose ${entry} of ${label}`);
    const list = field(this.#page, label);
    // A long list is made when the focus comes to it.
    await list.focus();
    await list.selectOption({ label: entry });
  }

  /** Types where the keys go. */
  async keys(text: string, end: string): Promise<void> {
    this.#act(`type ${text}`);
    await this.#page.keyboard.type(text);
    await this.#page.keyboard.press(end);
  }
}
