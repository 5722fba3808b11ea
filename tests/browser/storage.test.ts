import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { drop, field, kept, openBrowser, plainDesign, stored, visit } from './bench.ts';

const { context } = openBrowser();

async function setWidth(page: Page, width: string): Promise<void> {
  await page.getByRole('treeitem', { name: /Door panel/ }).click();
  await field(page, 'Width').fill(width);
  await field(page, 'Width').press('Enter');
}

async function widthAgain(on: BrowserContext): Promise<string> {
  const { page } = await visit(on);
  await page.getByRole('treeitem', { name: /Door panel/ }).click();
  return field(page, 'Width').inputValue();
}

describe('where the device keeps nothing', () => {
  it('tells, and lets the work go on', async () => {
    const device = await context();
    await device.addInitScript(() => {
      const refuse = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      };
      for (const name of ['indexedDB', 'localStorage', 'sessionStorage', 'caches']) {
        Object.defineProperty(window, name, { get: refuse });
      }
      Object.defineProperty(navigator.locks, 'request', { value: async () => refuse() });
      Object.defineProperty(navigator.serviceWorker, 'register', { value: async () => refuse() });
    });
    const { page, errors } = await visit(device);
    await drop(page, plainDesign());
    await page.getByText('is not saving anything').waitFor();
    await setWidth(page, '17 1/4');
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('17 1/4"');
    expect(await page.getByText('open in another tab').count()).toBe(0);
    expect(errors).toEqual([]);
    await device.close();
  });

  it('starts where the storage never answers', async () => {
    const device = await context();
    await device.addInitScript(() => {
      IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
    });
    const { page } = await visit(device);
    await drop(page, plainDesign());
    await page.getByText('is not saving anything').waitFor();
    await device.close();
  });
});

describe('a full disk', () => {
  it('is told, keeps what was kept, and is written to once there is room', async () => {
    const device = await context({ viewport: { width: 1600, height: 900 } });
    const { page } = await visit(device);
    await drop(page, plainDesign());
    await kept(page);
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('No room.', 'QuotaExceededError');
      };
      (window as unknown as { makeRoom: () => void }).makeRoom = () => {
        IDBObjectStore.prototype.put = put;
      };
    });
    await setWidth(page, '17 1/4');
    await page.getByText('This device has no room left').waitFor();
    // What was kept before is whole.
    const copy = await visit(device);
    await copy.page.getByRole('treeitem', { name: /Door panel/ }).waitFor();
    await copy.page.close();
    await page.evaluate(() => (window as unknown as { makeRoom: () => void }).makeRoom());
    await expect.poll(() => page.getByText('no room left').count(), { timeout: 15_000 }).toBe(0);
    await page.close();
    expect(await widthAgain(device)).toBe('17 1/4"');
    await device.close();
  });

  it('is what the browser itself reports', async () => {
    const device = await context();
    const { page } = await visit(device);
    const cdp = await device.newCDPSession(page);
    const { origin } = new URL(inject('app'));
    await cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await drop(page, plainDesign());
    await page.getByText('This device has no room left').waitFor();
    await cdp.send('Storage.overrideQuotaForOrigin', { origin });
    await expect.poll(() => page.getByText('no room left').count(), { timeout: 15_000 }).toBe(0);
    await device.close();
  });
});

describe('two tabs on one design', () => {
  it('lets one write, tells the other, and hands over on closing', async () => {
    const device = await context({ viewport: { width: 1600, height: 900 } });
    const first = await visit(device);
    await drop(first.page, plainDesign());
    await kept(first.page);
    const second = await visit(device);
    await second.page.getByText('open in another tab').waitFor();
    // Told that this is lost, and lost it is: the first one's width stays.
    await setWidth(second.page, '11');
    await setWidth(first.page, '17 1/4');
    await second.page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(second.page, 'Width').inputValue()).toBe('17 1/4"');
    await first.page.close();
    await expect.poll(() => second.page.getByText('open in another tab').count()).toBe(0);
    await setWidth(second.page, '18 1/2');
    await kept(second.page);
    await second.page.close();
    expect(await widthAgain(device)).toBe('18 1/2"');
    await device.close();
  });

  it('takes the last edit along when a tab takes over', async () => {
    const device = await context({ viewport: { width: 1600, height: 900 } });
    const first = await visit(device);
    await drop(first.page, plainDesign());
    await kept(first.page);
    const second = await visit(device);
    const takeOver = second.page.getByRole('button', { name: 'Work here instead' });
    await takeOver.waitFor();
    await setWidth(first.page, '17 1/4');
    await takeOver.click();
    await first.page.getByText('open in another tab').waitFor();
    await second.page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(second.page, 'Width').inputValue()).toBe('17 1/4"');
    await setWidth(second.page, '18 1/2');
    await kept(second.page);
    // A late write of the first one does not get in.
    await setWidth(first.page, '9');
    await first.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    // The store answers in the order it was asked: whatever was to be written is by now.
    await stored(first.page, 'design:');
    await Promise.all([first.page.close(), second.page.close()]);
    expect(await widthAgain(device)).toBe('18 1/2"');
    await device.close();
  });

  it('does no damage where the browser has no locks', async () => {
    const device = await context({ viewport: { width: 1600, height: 900 } });
    await device.addInitScript(() => {
      Object.defineProperty(navigator, 'locks', { value: undefined });
    });
    const first = await visit(device);
    await drop(first.page, plainDesign());
    await kept(first.page);
    const second = await visit(device);
    await second.page.getByText('open in another tab').waitFor();
    await setWidth(first.page, '17 1/4');
    await kept(first.page);
    await Promise.all([first.page.close(), second.page.close()]);
    expect(await widthAgain(device)).toBe('17 1/4"');
    await device.close();
  });
});

describe('what is kept and no longer opens', () => {
  it('is told and left as it is', async () => {
    const device = await context();
    const { page } = await visit(device);
    await drop(page, plainDesign());
    await kept(page);
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const open = indexedDB.open('showface');
          open.onsuccess = () => {
            const tx = open.result.transaction('designs', 'readwrite');
            const store = tx.objectStore('designs');
            store.get('last').onsuccess = (e) => {
              const id = (e.target as IDBRequest<string>).result;
              store.put('{"showface": 99}', `design:${id}`);
            };
            tx.oncomplete = () => resolve();
            tx.onabort = () => reject(tx.error);
          };
        }),
    );
    await page.reload();
    await page.getByText('The design that was saved here does not open').waitFor();
    await page.getByText('format version 99').waitFor();
    const texts = await page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const open = indexedDB.open('showface');
          open.onsuccess = () => {
            const all = open.result.transaction('designs').objectStore('designs').getAll();
            all.onsuccess = () => resolve(all.result.filter((v) => typeof v === 'string'));
          };
        }),
    );
    expect(texts).toContain('{"showface": 99}');
    await device.close();
  });
});

describe('earlier states', () => {
  it('are put by as the work goes on, at most every ten minutes, and open as designs of their own', async () => {
    const device = await context({ viewport: { width: 1600, height: 900 } });
    const page = await device.newPage();
    const start = new Date('2026-03-01T09:00:00');
    await page.clock.install({ time: start });
    await page.goto(inject('app'));
    await page.locator('.first').waitFor();
    await drop(page, plainDesign());
    await page.clock.runFor(2000);
    await kept(page);
    for (const [minutes, width] of [
      [5, '17'],
      [12, '18'],
      [3, '19'],
      [11, '20'],
    ] as const) {
      await page.clock.fastForward(minutes * 60_000);
      await setWidth(page, width);
      await page.clock.runFor(2000);
      await kept(page);
    }
    // Put by: 16 when it became 17, and 18 when it became 19; 17 and 19 came too soon after those before them.
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Earlier versions' }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Earlier versions' }).click();
    const states = page.getByRole('dialog').getByRole('listitem');
    await expect.poll(() => states.count()).toBe(2);
    await states.last().getByRole('button').click();
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('16"');
    await expect.poll(() => page.locator('.name-cell input').inputValue()).toMatch(/^Plain face, as of /);
    await page.clock.runFor(2000);
    // The design itself stays as it was.
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Other designs' }).click();
    await page.locator('.kept-open', { hasText: /^Plain face(?!,)/ }).click();
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('20"');
    await device.close();
  });
});

const HOSTILE: readonly (readonly [string, string, RegExp])[] = [
  ['cut short', JSON.stringify(plainDesign()).slice(0, -40), /damaged or cut short/],
  ['no JSON at all', '<svg onload=alert(1)>', /line 1/],
  ['another kind of JSON', '[1, 2, 3]', /design file/],
  ['of a later version', '{"showface": 2000}', /format version 2000/],
  ['deeper than any design', '['.repeat(100_000), /levels of brackets/],
  ['with a number that is none', JSON.stringify(plainDesign()).replace(/"w":[\d.]+/, '"w":1e999'), /parts/],
  ['with a text for a number', JSON.stringify(plainDesign()).replace(/"w":[\d.]+/, '"w":"wide"'), /“wide”/],
  [
    'with keys of the prototype',
    JSON.stringify(plainDesign()).replace('"parts"', '"__proto__":{"polluted":true},"parts"'),
    /__proto__|unknown field/,
  ],
  ['with markup in its names', '{"showface": "<img src=x onerror=alert(1)>"}', /<img/],
];

describe('a hostile or damaged file that is dropped', () => {
  it('is refused with what was found, and changes nothing', async () => {
    const device = await context();
    const { page, errors } = await visit(device);
    await drop(page, plainDesign());
    await setWidth(page, '17 1/4');
    await kept(page);
    const before = await page.getByRole('tree').textContent();
    let dialogs = 0;
    page.on('dialog', (d) => {
      dialogs++;
      void d.dismiss();
    });
    for (const [what, text, expected] of HOSTILE) {
      await page.evaluate((content) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([content], 'dropped.json', { type: 'application/json' }));
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
      }, text);
      const notice = page.locator('.notice.bad');
      await notice.getByText('“dropped.json” was not opened. Nothing was changed.').waitFor();
      expect(`${what}: ${await notice.textContent()}`).toMatch(expected);
      expect(await notice.locator('li').count()).toBeGreaterThan(0);
      expect(await page.getByRole('tree').textContent()).toBe(before);
      expect(await field(page, 'Width').inputValue()).toBe('17 1/4"');
      await notice.getByRole('button', { name: 'Close' }).click();
    }
    expect(await page.evaluate(() => 'polluted' in {})).toBe(false);
    expect(dialogs).toBe(0);
    expect(errors).toEqual([]);
    await page.reload();
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('17 1/4"');
    await device.close();
  });

  it('tells of what cannot be read, and of what is far too large, without reading it', async () => {
    const device = await context();
    const { page } = await visit(device);
    await drop(page, plainDesign());
    const dropLike = (size: number, readable: boolean) =>
      page.evaluate(
        ([bytes, ok]) => {
          const file = new File(['{}'], 'odd.json');
          Object.defineProperty(file, 'size', { value: bytes });
          file.text = () => (ok ? Promise.resolve('{}') : Promise.reject(new DOMException('gone')));
          const transfer = { files: [file], types: ['Files'] };
          const event = new Event('drop', { cancelable: true });
          Object.defineProperty(event, 'dataTransfer', { value: transfer });
          window.dispatchEvent(event);
        },
        [size, readable] as const,
      );
    await dropLike(5_000_000_000, true);
    await page.getByText('far larger than any design file').waitFor();
    await dropLike(100, false);
    await page.getByText('The device could not read it').waitFor();
    await device.close();
  });
});
