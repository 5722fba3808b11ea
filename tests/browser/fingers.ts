import type { BrowserContext, CDPSession, Page } from 'playwright-core';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Moves between press and release of a drag. */
const STEPS = 8;

/** Fingers on the glass, at points of the page. */
export class Fingers {
  readonly #page: Page;
  readonly #cdp: CDPSession;
  private constructor(page: Page, cdp: CDPSession) {
    this.#page = page;
    this.#cdp = cdp;
  }

  static async on(context: BrowserContext, page: Page): Promise<Fingers> {
    return new Fingers(page, await context.newCDPSession(page));
  }

  #send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...spots: readonly Spot[]) =>
    this.#cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
    });

  async tap(at: Spot): Promise<void> {
    await this.#send('touchStart', at);
    await this.#send('touchEnd');
  }

  async twoTaps(at: Spot): Promise<void> {
    await this.tap(at);
    await this.#page.waitForTimeout(60);
    await this.tap(at);
  }

  /** Stays for longer than the editor takes for a rest. */
  async rest(at: Spot): Promise<void> {
    await this.#send('touchStart', at);
    await this.#page.waitForTimeout(700);
    await this.#send('touchEnd');
  }

  /** Carries from here to there, after a rest where it is asked for, and stops before it lets go: no flick. */
  async carry(from: Spot, to: Spot, restedFor = 0): Promise<void> {
    await this.#send('touchStart', from);
    if (restedFor > 0) await this.#page.waitForTimeout(restedFor);
    for (let i = 1; i <= STEPS; i++) {
      const share = i / STEPS;
      await this.#send('touchMove', {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
      });
    }
    await this.#page.waitForTimeout(120);
    await this.#send('touchMove', to);
    await this.#send('touchEnd');
  }

  /** Two fingers about a point, this far from it at first and at last. */
  async pinch(about: Spot, first: number, last: number): Promise<void> {
    const pair = (away: number): [Spot, Spot] => [
      { x: about.x - away, y: about.y },
      { x: about.x + away, y: about.y },
    ];
    await this.#send('touchStart', ...pair(first));
    await this.#send('touchMove', ...pair(last));
    await this.#send('touchEnd');
  }
}
