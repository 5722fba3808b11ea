import type { BrowserContext, CDPSession, Locator, Page } from 'playwright-core';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Moves between press and release of a drag. */
const STEPS = 8;

/** Fingers on the glass, at points of the page. */
export class Fingers {
  readonly #cdp: CDPSession;
  private constructor(cdp: CDPSession) {
    this.#cdp = cdp;
  }

  static async on(context: BrowserContext, page: Page): Promise<Fingers> {
    return new Fingers(await context.newCDPSession(page));
  }

  /** Time of the last event, in seconds. Fingers are timed by what each event says, not by how long the sending takes. */
  #now = Date.now() / 1000;

  #send = (
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    spots: readonly Spot[] = [],
    laterMs = 8,
  ): Promise<unknown> => {
    this.#now = Math.max(Date.now() / 1000, this.#now + laterMs / 1000);
    return this.#cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
      timestamp: this.#now,
    });
  };

  async tap(at: Spot): Promise<void> {
    await this.#send('touchStart', [at]);
    await this.#send('touchEnd');
  }

  async twoTaps(at: Spot): Promise<void> {
    await this.tap(at);
    await this.#send('touchStart', [at], 60);
    await this.#send('touchEnd');
  }

  /** Stays until the page shows that it took it for a rest. */
  async rest(at: Spot, taken: Locator): Promise<void> {
    await this.#send('touchStart', [at]);
    await taken.waitFor();
    await this.#send('touchEnd');
  }

  /** Carries from here to there, after a rest until the page shows that it lifted it, and stops before it lets go: no flick. */
  async carry(from: Spot, to: Spot, lifted?: Locator): Promise<void> {
    await this.#send('touchStart', [from]);
    await lifted?.waitFor();
    for (let i = 1; i <= STEPS; i++) {
      const share = i / STEPS;
      await this.#send('touchMove', [
        { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
      ]);
    }
    await this.#send('touchMove', [to], 120);
    await this.#send('touchEnd');
  }

  /** Two fingers about a point, this far from it at first and at last. */
  async pinch(about: Spot, first: number, last: number): Promise<void> {
    const pair = (away: number): [Spot, Spot] => [
      { x: about.x - away, y: about.y },
      { x: about.x + away, y: about.y },
    ];
    await this.#send('touchStart', pair(first));
    await this.#send('touchMove', pair(last));
    await this.#send('touchEnd');
  }
}
