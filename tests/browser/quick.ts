import type { BrowserContext, CDPSession, Page } from 'playwright-core';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Virtual key codes of keys without a letter (UI Events KeyboardEvent key Values). */
const CODES: Readonly<Record<string, number>> = {
  Backspace: 8,
  Tab: 9,
  Enter: 13,
  Escape: 27,
  ' ': 32,
  End: 35,
  Home: 36,
  ArrowLeft: 37,
  ArrowUp: 38,
  ArrowRight: 39,
  ArrowDown: 40,
  Delete: 46,
  F2: 113,
};

/** How the page is kept from its events: busy with something else when they come, or on a slow processor throughout. */
export interface Slow {
  readonly name: string;
  readonly busyMs: number;
  readonly rate: number;
}

export const SLOW: readonly Slow[] = [
  { name: 'to a page that is busy when they come', busyMs: 250, rate: 1 },
  { name: 'on a processor 20 times slower', busyMs: 0, rate: 20 },
];

/** Hands that are quicker than the page: whatever they do is sent at once, none of it waits for what is before it. */
export class QuickHands {
  readonly #page: Page;
  readonly #cdp: CDPSession;
  readonly #slow: Slow;
  private constructor(page: Page, cdp: CDPSession, slow: Slow) {
    this.#page = page;
    this.#cdp = cdp;
    this.#slow = slow;
  }

  static async on(context: BrowserContext, page: Page, slow: Slow): Promise<QuickHands> {
    return new QuickHands(page, await context.newCDPSession(page), slow);
  }

  /** Slow while something is done, as quick as it is while it is looked at. */
  async #slowly(sent: () => readonly Promise<unknown>[]): Promise<void> {
    await this.#cdp.send('Emulation.setCPUThrottlingRate', { rate: this.#slow.rate });
    await this.#page.evaluate((ms) => {
      setTimeout(() => {
        const end = performance.now() + ms;
        while (performance.now() < end);
      });
    }, this.#slow.busyMs);
    await Promise.all(sent());
    await this.#cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  }

  /** Presses keys by their names; a name of one letter types it. */
  keys(...keys: readonly string[]): Promise<void> {
    return this.#slowly(() =>
      keys.flatMap((key) => {
        const letter = key.length === 1;
        const code = CODES[key] ?? key.toUpperCase().charCodeAt(0);
        const text = key === 'Enter' ? '\r' : letter ? key : undefined;
        const event = { key, windowsVirtualKeyCode: code };
        return [
          this.#cdp.send('Input.dispatchKeyEvent', {
            type: text === undefined ? 'rawKeyDown' : 'keyDown',
            ...event,
            ...(text === undefined ? {} : { text }),
          }),
          this.#cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event }),
        ];
      }),
    );
  }

  /** Presses the mouse at the first point and lets go at the last; 1 is Alt (no snapping). */
  drag(...path: readonly Spot[]): Promise<void> {
    const [from, to] = [path[0], path.at(-1)];
    if (!from || !to) throw new Error('nowhere to drag');
    const send = (
      type: 'mousePressed' | 'mouseMoved' | 'mouseReleased',
      { x, y }: Spot,
      held: boolean,
    ): Promise<unknown> =>
      this.#cdp.send('Input.dispatchMouseEvent', {
        type,
        x,
        y,
        button: type === 'mouseMoved' && !held ? 'none' : 'left',
        buttons: held ? 1 : 0,
        clickCount: 1,
        modifiers: 1,
      });
    return this.#slowly(() => [
      send('mouseMoved', from, false),
      send('mousePressed', from, true),
      ...path.slice(1).map((at) => send('mouseMoved', at, true)),
      send('mouseReleased', to, false),
    ]);
  }

  /** One finger along a path, or two when each place holds two. */
  fingers(...path: readonly (readonly Spot[])[]): Promise<void> {
    const points = (spots: readonly Spot[]) => spots.map(({ x, y }, id) => ({ x, y, id }));
    return this.#slowly(() => [
      ...path.map((spots, i) =>
        this.#cdp.send('Input.dispatchTouchEvent', {
          type: i === 0 ? 'touchStart' : 'touchMove',
          touchPoints: points(spots),
        }),
      ),
      this.#cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] }),
    ]);
  }
}
