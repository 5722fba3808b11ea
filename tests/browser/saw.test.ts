import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { packDesign } from '../../src/editor/saw/transfer.ts';
import { inches } from '../../src/measure/units.ts';
import { violations } from './axe.ts';
import { drop, field, openBrowser, openStep, plainDesign, stored, visit, wish } from './bench.ts';

const { context } = openBrowser();

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } as const;
const ID = '0f8a2c1e-1111-4222-8333-444455556666';

const atSaw = async (page: Page): Promise<void> => {
  await page.locator('.saw-card').waitFor({ timeout: 60_000 });
};

async function linked(on: BrowserContext, digits: string): Promise<Page> {
  const page = await on.newPage();
  await page.goto(`${inject('app')}#bench&i=${ID}&d=${digits}`);
  return page;
}

/** A finger from one point to another. */
async function swipe(page: Page, dx: number): Promise<void> {
  const cdp = await page.context().newCDPSession(page);
  const points = [0, 0.25, 0.5, 0.75, 1].map((s) => ({ x: 180 + dx * (s - 0.5), y: 300 }));
  for (const [i, point] of points.entries()) {
    const type = i === 0 ? 'touchStart' : 'touchMove';
    await cdp.send('Input.dispatchTouchEvent', { type, touchPoints: [point] });
  }
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

/** Lets plans be held up from then on: what the worker is asked waits in it, in order, for as long as it is told to. */
const holdPlans = (page: Page) =>
  page.route(/\/worker-[^/]*\.js$/, async (route) => {
    const response = await route.fetch();
    const holding = `{
      const waiting = [];
      let wait = false;
      const told = new BroadcastChannel('plans');
      told.onmessage = ({ data }) => {
        wait = data === 'wait';
        if (!wait) for (const { data, ports } of waiting.splice(0)) dispatchEvent(new MessageEvent('message', { data, ports }));
        told.postMessage('done');
      };
      addEventListener('message', (e) => {
        if (!wait || e.data?.path?.[0] !== 'plan') return;
        e.stopImmediatePropagation();
        waiting.push(e);
      });
    }`;
    await route.fulfill({ response, body: holding + (await response.text()) });
  });

const letPlans = (page: Page, what: 'wait' | 'go') =>
  page.evaluate(
    (word) =>
      new Promise<void>((done) => {
        const tell = new BroadcastChannel('plans');
        tell.onmessage = () => {
          tell.close();
          done();
        };
        tell.postMessage(word);
      }),
    what,
  );

const label = (page: Page) => page.locator('.saw-label').textContent();
const progress = (page: Page) => page.locator('.saw-progress').textContent();

describe('at the saw, on a phone', () => {
  it('comes by a link, shows piece after piece, ticks off, and keeps the ticks', async () => {
    const phone = await context(PHONE);
    const { digits } = await packDesign(plainDesign());
    const page = await linked(phone, digits);
    const errors: string[] = [];
    page.on('pageerror', (e) => errors.push(e.message));
    await atSaw(page);
    // The address does not bring the design in again at the next start.
    expect(new URL(page.url()).hash).toBe('#bench');
    // Two stiles of 60 in by 2 1/2 in, off boards; the panel's sheet follows.
    expect(await page.locator('.saw-figure').textContent()).toContain('60"');
    expect(await page.locator('.saw-facts').textContent()).toContain('2 1/2" × 3/4"');
    expect(await page.locator('.saw-from h3').first().textContent()).toMatch(/Board 1 of/);
    expect(await progress(page)).toMatch(/^At the saw0 of \d+ cut/);
    const first = await label(page);
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Previous' }).click();
    expect(await label(page)).toBe(first);
    const place = () => page.locator('.saw-from h3').first().textContent();
    const from = await place();
    await swipe(page, -220);
    await expect.poll(place).not.toBe(from);
    await swipe(page, 220);
    await expect.poll(place).toBe(from);
    await page.getByRole('button', { name: /^Mark as cut/ }).click();
    await expect.poll(() => progress(page)).toMatch(/1 of \d+ cut/);
    // Kept with the design, which is written a moment later.
    await stored(page, `design:${ID}`, (text) => text.includes('"is":"cut"'));
    await page.reload();
    await atSaw(page);
    expect(await progress(page)).toMatch(/1 of \d+ cut/);
    // The same link again: the same design, and its ticks stay.
    const again = await linked(phone, digits);
    await atSaw(again);
    expect(await progress(again)).toMatch(/1 of \d+ cut/);
    expect(await again.locator('.notice:not(.news)').count()).toBe(0);
    expect(errors).toEqual([]);
    await phone.close();
  });

  it('lists every piece and goes to it, with figures that stay within 360 pixels', async () => {
    const phone = await context(PHONE);
    const page = await phone.newPage();
    await page.goto(`${inject('app')}#bench`);
    await page.getByText('Open the design whose pieces you want to cut').waitFor();
    await page.evaluate((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'design.json'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
    }, JSON.stringify(plainDesign()));
    await atSaw(page);
    await page.getByRole('button', { name: 'All pieces' }).click();
    const rows = page.locator('.saw-row');
    const count = await rows.count();
    expect(count).toBeGreaterThanOrEqual(3);
    for (let n = 0; n < count; n++) {
      await rows.nth(n).click();
      const wide = await page.evaluate(() => {
        const inside = [...document.querySelectorAll('.saw *')].map((el) => el.getBoundingClientRect().right);
        return Math.max(document.documentElement.scrollWidth, ...inside);
      });
      expect(wide).toBeLessThanOrEqual(361);
      await page.getByRole('button', { name: 'All pieces' }).click();
    }
    await page.locator('.saw-row', { hasText: /^Cut 1/ }).click();
    expect(await page.locator('.saw-under').textContent()).toMatch(/^Fence: from the (lower|left) edge/);
    await phone.close();
  });

  it('keeps what the phone had when a link brings another state of it', async () => {
    const phone = await context(PHONE);
    const first = await linked(phone, (await packDesign(plainDesign())).digits);
    await atSaw(first);
    await stored(first, `design:${ID}`);
    await first.close();
    const changed = { ...plainDesign(), name: 'Plain face, wider' };
    const page = await linked(phone, (await packDesign(changed)).digits);
    await page.getByText('is saved as “Plain face, wider, before the link”').waitFor();
    await atSaw(page);
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Back to the drawing' }).click();
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Other designs' }).click();
    await page.getByText('Plain face, wider, before the link').waitFor();
    await phone.close();
  });

  it('tells of a damaged link, and of one that is no link at all', async () => {
    const phone = await context(PHONE);
    for (const digits of ['123', '9'.repeat(53), '']) {
      const page = await linked(phone, digits);
      await page.getByText('The link holds no whole design').waitFor();
      await page.getByText('Open the design whose pieces you want to cut').waitFor();
      await page.close();
    }
    await phone.close();
  });

  it('keeps the screen lit while it stands, and says so where the browser cannot', async () => {
    const phone = await context(PHONE);
    await phone.addInitScript(() => {
      const held = { now: 0 };
      Object.assign(window, { held });
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request: async () => {
            held.now++;
            const lock = new EventTarget();
            return Object.assign(lock, { released: false, release: async () => void held.now-- });
          },
        },
      });
    });
    const { digits } = await packDesign(plainDesign());
    const page = await linked(phone, digits);
    await page.getByText('The screen stays on.').waitFor();
    const held = () => page.evaluate(() => (window as unknown as { held: { now: number } }).held.now);
    expect(await held()).toBe(1);
    await page.getByRole('button', { name: 'Back to the drawing' }).click();
    await expect.poll(held).toBe(0);
    await phone.close();

    const other = await context(PHONE);
    await other.addInitScript(() => {
      Reflect.deleteProperty(Navigator.prototype, 'wakeLock');
    });
    const plain = await linked(other, digits);
    await plain.getByText('This browser cannot keep the screen on').waitFor();
    await other.close();
  });
});

describe('at the saw, on a desk', () => {
  it('shares its ticks with the wood step', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    await page.getByRole('navigation').getByRole('button', { name: 'Wood' }).click();
    await page.getByRole('button', { name: 'One piece at a time, at the saw' }).click();
    await atSaw(page);
    await page.getByRole('button', { name: /^Mark as cut/ }).click();
    await page.getByRole('button', { name: 'Back to the drawing' }).click();
    await expect.poll(() => page.locator('.ticks input:checked').count()).toBe(1);
    await page.context().close();
  });

  it('shows no number that is older than the drawing', async () => {
    const { page, errors } = await visit(await context());
    await holdPlans(page);
    const plain = plainDesign();
    await drop(page, { ...plain, parts: plain.parts.filter(({ id }) => id === 'left') });
    await openStep(page, 'Wood');
    const saw = page.getByRole('button', { name: 'One piece at a time, at the saw' });
    const figure = page.locator('.saw-figure');
    await saw.click();
    await expect.poll(() => figure.textContent()).toContain('60"');
    await page.getByRole('button', { name: 'Back to the drawing' }).click();

    await letPlans(page, 'wait');
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.getByRole('tab', { name: 'Left stile' }).click();
    await field(page, 'Height').fill('50');
    await field(page, 'Height').press('Enter');
    await page.evaluate(() => {
      location.hash = '#bench';
    });
    // The plan of the change is not there yet: no piece stands here, the old one least of all.
    await page.locator('.saw-body[aria-busy=true]').getByText('Working it out').waitFor();
    expect(await page.locator('.saw-card').count()).toBe(0);
    expect(await page.locator('.saw').textContent()).not.toContain('60');
    await letPlans(page, 'go');
    await expect.poll(() => figure.textContent()).toContain('50"');
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('has nothing against it in an access check, light and dark', async () => {
    const device = await context(PHONE);
    const design = plainDesign();
    // A mitered end, so that every kind of figure stands there.
    const parts = design.parts.map((p) =>
      p.id === 'left' && p.kind === 'strip' ? { ...p, box: { ...p.box, h: inches(58) } } : p,
    );
    const page = await linked(device, (await packDesign({ ...design, parts })).digits);
    await atSaw(page);
    const check = async (where: string) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await wish(page, { colorScheme });
        const found = await violations(page);
        expect({ where, colorScheme, found }).toEqual({ where, colorScheme, found: [] });
      }
    };
    await check('a piece');
    await page.getByRole('button', { name: 'All pieces' }).click();
    await check('all pieces');
    await page.getByRole('button', { name: 'To a phone' }).click();
    await page.getByLabel('Network address').fill('http://192.168.1.20:4173');
    await page.locator('.qr').waitFor();
    await check('to a phone');
    await device.close();
  });
});
