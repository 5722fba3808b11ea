import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { drop, field, plainDesign } from './bench.ts';
import { ARGS, findBrowser } from './chrome.ts';

/** Kills of a run; the long run is `SHOWFACE_KILLS=50`. */
const KILLS = Number(process.env.SHOWFACE_KILLS ?? 5);
/** An edit this old when the browser dies must have been kept, */
const KEPT_WITHIN_MS = 1000;
/** where the page had the time to take so many more: on a busy machine a second may pass in which it gets none. */
const KEPT_WITHIN_EDITS = 6;
/** Edits that are made before a kill at the least. */
const FIRST = 4;

/** Numbers from 0 to 1 in a fixed sequence (a linear congruential generator, modulus 2^32). */
function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

interface Running {
  readonly process: ChildProcess;
  readonly browser: Browser;
  readonly page: Page;
  /** Ends it as a power cut would, helpers included; settles when it is gone. */
  readonly kill: () => Promise<void>;
}

/** A browser of its own, which lives on a folder as a person's does. */
async function start(executable: string, profile: string): Promise<Running> {
  const child = spawn(
    executable,
    [
      ...ARGS,
      '--headless',
      '--window-size=1440,900',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said);
      if (found?.[1]) resolve(found[1]);
    });
    child.once('exit', () => reject(new Error(`The browser ended by itself: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const page = (await browser.contexts()[0]?.newPage()) ?? (await browser.newPage());
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return {
    process: child,
    browser,
    page,
    kill: async () => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      await gone;
    },
  };
}

interface Edit {
  readonly value: number;
  readonly at: number;
}

interface Death {
  readonly at: number;
  readonly done: readonly Edit[];
}

/** Widths in sixteenths of an inch, as they are typed and shown. */
const typed = (n: number): string => `${Math.floor(n / 16)} ${n % 16}/16`;
const shown = (text: string): number => {
  const [, whole = '0', , top = '0', bottom = '1'] = /^(\d+)?( ?(\d+)\/(\d+))?"$/.exec(text) ?? [];
  return Number(whole) * 16 + (Number(top) * 16) / Number(bottom);
};

/** Changes the panel's width over and over until the browser dies; gives what was done and when. Calls back once the first are done. */
async function editUntilDead(page: Page, from: number, onFirst: () => void): Promise<Edit[]> {
  const done: Edit[] = [];
  const width = field(page, 'Width');
  try {
    for (let value = from; ; value++) {
      await width.fill(typed(value), { timeout: 5000 });
      await width.press('Enter', { timeout: 5000 });
      done.push({ value, at: Date.now() });
      if (done.length === FIRST) onFirst();
    }
  } catch {
    return done;
  }
}

describe('a killed browser', () => {
  const profile = mkdtempSync(join(tmpdir(), 'showface-profile-'));
  let running: Running | null = null;
  afterAll(async () => {
    await running?.kill().catch(() => undefined);
    rmSync(profile, { recursive: true, force: true });
  });

  it(`loses nothing older than a second, ${KILLS} times`, { timeout: 60_000 + KILLS * 15_000 }, async ({
    skip,
  }) => {
    const found = await findBrowser();
    if (!('executablePath' in found)) return skip('This browser has no path to start it by.');
    const random = sequence(1953);
    // Sixteenths of an inch: 8 in to begin with, and wider by one with every edit.
    let next = 8 * 16;
    const oldest: number[] = [];
    let last: Death = { at: 0, done: [] };
    const tally = { edits: 0, lost: 0, oldestLost: 0 };
    for (let n = 0; n <= KILLS; n++) {
      running = await start(found.executablePath, profile);
      const { page, kill } = running;
      await page.goto(inject('app'));
      if (n === 0) {
        await page.locator('.first').waitFor();
        await drop(page, plainDesign());
      }
      await page.getByRole('treeitem', { name: /Door panel/ }).click();
      const value = shown(await field(page, 'Width').inputValue());
      if (n > 0) {
        expect(oldest.length).toBe(n);
        expect(value).toBeGreaterThanOrEqual(oldest[n - 1] ?? Infinity);
        // It never holds what was not typed.
        expect(value).toBeLessThanOrEqual(next);
        const lost = last.done.filter((edit) => edit.value > value);
        tally.edits += last.done.length;
        tally.lost += lost.length;
        tally.oldestLost = Math.max(tally.oldestLost, last.at - (lost[0]?.at ?? last.at));
      }
      if (n === KILLS) break;
      let begun: Promise<Edit[]> = Promise.resolve([]);
      await new Promise<void>((first) => {
        begun = editUntilDead(page, next, first);
      });
      // At any moment from then on.
      await new Promise((resolve) => setTimeout(resolve, random() * 2400));
      const at = Date.now();
      await kill();
      const done = await begun;
      last = { at, done };
      const old = done.slice(0, -KEPT_WITHIN_EDITS).findLast((edit) => edit.at <= at - KEPT_WITHIN_MS);
      oldest.push(old?.value ?? (n === 0 ? 0 : value));
      next = (done.at(-1)?.value ?? next) + 1;
    }
    await running?.kill();
    running = null;
    expect(oldest).toHaveLength(KILLS);
    // Kills in the middle of edits, not before them.
    expect(tally.edits).toBeGreaterThanOrEqual(KILLS * FIRST);
    process.stdout.write(
      `${KILLS} kills in ${tally.edits} edits: ${tally.lost} lost, the oldest ${tally.oldestLost} ms before its kill\n`,
    );
  });
});
