import { readFileSync } from 'node:fs';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Download,
  type Page,
} from 'playwright-core';
import { afterAll, beforeAll, expect, inject } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { counted } from './coverage.ts';

/** A browser for a test file, and pages on the app with errors collected. */
export function openBrowser() {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.connect(inject('browser'));
  });
  afterAll(async () => {
    await browser.close();
  });
  return {
    context: async (options: BrowserContextOptions = {}): Promise<BrowserContext> =>
      counted(
        await browser.newContext({
          viewport: { width: 1440, height: 900 },
          reducedMotion: 'reduce',
          // Each page would fetch all of the tool once more, to keep it; the tests of that let it.
          serviceWorkers: 'block',
          ...options,
        }),
      ),
  };
}

export interface Visit {
  readonly page: Page;
  /** What the page reported as errors. */
  readonly errors: string[];
}

export async function visit(context: BrowserContext): Promise<Visit> {
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (e) => errors.push(e.message));
  page.on('console', (m) => {
    if (m.type() === 'error') errors.push(m.text());
  });
  await page.addInitScript(() => {
    const heard: string[] = [];
    Object.assign(window, { heard });
    new MutationObserver(() => {
      for (const place of document.querySelectorAll('.hidden-text[role=status]')) {
        const text = place.textContent ?? '';
        if (text && text !== heard.at(-1)) heard.push(text);
      }
    }).observe(document, { childList: true, subtree: true, characterData: true });
  });
  await page.goto(inject('app'));
  await page.locator('.first, .bench').first().waitFor();
  return { page, errors };
}

/** All that was announced since the page came, a line each: what is said next may come before anyone has looked. */
export const heard = (page: Page): Promise<string> =>
  page.evaluate(() => (window as unknown as { readonly heard: readonly string[] }).heard.join('\n'));

/** Opens a design as a dropped file does, and waits for the drawing. */
export async function drop(page: Page, design: Design): Promise<void> {
  await page.evaluate((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'design.json', { type: 'application/json' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
  }, saveDesign(design));
  await page.waitForFunction((name) => document.title.includes(name), design.name);
  await page.locator('.canvas canvas').first().waitFor();
}

/** Goes to a step of the job and waits until its pane stands, with the plan where it shows one. */
export async function openStep(page: Page, step: string): Promise<void> {
  await page.getByRole('navigation').getByRole('button', { name: step }).click();
  const pane = page.getByRole('tabpanel', { name: step });
  await pane.getByRole('heading', { name: step, exact: true }).first().waitFor({ state: 'attached' });
  await pane.locator('.job-pane[aria-busy=true]').waitFor({ state: 'detached', timeout: 60_000 });
}

/** Waits until the title block says that the device keeps what was done. */
export const kept = (page: Page) =>
  expect.poll(() => page.locator('.saved-cell').textContent(), { timeout: 20_000 }).toContain('Yes');

/** What the device's store has under the first key that begins so, as text; null where there is none. */
const storedText = (page: Page, prefix: string): Promise<string | null> =>
  page.evaluate(
    (beginning) =>
      new Promise<string | null>((resolve) => {
        const open = indexedDB.open('showface');
        open.onsuccess = () => {
          const store = open.result.transaction('designs').objectStore('designs');
          const [keys, values] = [store.getAllKeys(), store.getAll()];
          values.onsuccess = () => {
            open.result.close();
            const found = keys.result.findIndex((key) => String(key).startsWith(beginning));
            resolve(found < 0 ? null : String(values.result[found]));
          };
        };
      }),
    prefix,
  );

/** Waits until something is in the device's store under a key that begins so, as is told of its text: for what no view tells of. */
export const stored = (page: Page, prefix: string, holds: (text: string) => boolean = () => true) =>
  expect
    .poll(
      async () => {
        const text = await storedText(page, prefix);
        return text !== null && holds(text);
      },
      { timeout: 20_000 },
    )
    .toBe(true);

/** A face with two stiles of 1 x 3 (2 1/2 in wide) and a panel, nothing held by rules. */
export function plainDesign(): Design {
  const strip = (id: string, name: string, x: number) => ({
    ...newPart('strip', {
      id,
      name,
      box: { x: inches(x), y: inches(4), w: inches(2.5), h: inches(60) },
      stock: 'pine-1x3',
      finish: 'trim',
    }),
    lie: 'up' as const,
  });
  const panel = newPart('panel', {
    id: 'panel',
    name: 'Door panel',
    box: { x: inches(12), y: inches(30), w: inches(16), h: inches(20) },
    finish: 'ground',
  });
  return {
    ...newDesign(undefined, 'Plain face'),
    parts: [strip('left', 'Left stile', 5), strip('right', 'Right stile', 31), panel],
  };
}

/** Waits until the page has drawn what it was just told: what is measured in one frame may change the next. */
const drawn = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => done()));
      }),
  );

/** Gives the window another size. */
export async function resize(page: Page, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await drawn(page);
}

/** What the device wishes for: light or dark, motion or none. */
export async function wish(page: Page, media: Parameters<Page['emulateMedia']>[0]): Promise<void> {
  await page.emulateMedia(media);
  await drawn(page);
}

/** The point of the page where a point of the face (millimeters) is drawn, by the labels of the rulers' own design. */
export async function onPage(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const view = await page.locator('.canvas').evaluate((el) => ({
    rect: { x: el.getBoundingClientRect().x, y: el.getBoundingClientRect().y },
    scale: Number(el.getAttribute('data-scale')),
    left: Number(el.getAttribute('data-left')),
    base: Number(el.getAttribute('data-base')),
  }));
  return { x: view.rect.x + view.left + x * view.scale, y: view.rect.y + view.base - y * view.scale };
}

/** What a download holds; the browser may run on another machine, so it is streamed. */
export async function bytesOf(file: Download): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of await file.createReadStream()) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

/** Chooses what the export menu offers and gives the file that comes, as soon as there is a plan to write it from. */
export async function exported(page: Page, item: string): Promise<Buffer> {
  const download = page.waitForEvent('download', { timeout: 90_000 });
  await page.getByRole('button', { name: 'Print & export' }).click();
  await page.getByRole('menuitem', { name: item }).click();
  return bytesOf(await download);
}

export const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

/** The starter that the first page offers by this name; null where the file is not there yet. */
export function starterName(file: string): string | null {
  try {
    const text = readFileSync(new URL(`../../assets/starters/${file}.json`, import.meta.url), 'utf8');
    return (JSON.parse(text) as { name: string }).name;
  } catch {
    return null;
  }
}
