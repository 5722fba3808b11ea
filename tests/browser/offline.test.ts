import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { drop, openBrowser, plainDesign, starterName } from './bench.ts';
import { type OwnServer, serveFolder } from './ownServer.ts';

const { context } = openBrowser();

async function go(on: BrowserContext, server: OwnServer, hash = ''): Promise<Page> {
  const page = await on.newPage();
  await page.goto(server.address + hash);
  await page.locator('.first, .bench, .saw').first().waitFor();
  return page;
}

const stored = (page: Page) => page.getByText('from now on it starts without a network').waitFor();

describe('without a network', () => {
  it('starts, plans with its fonts, and shows the saw, after one visit, from a sub-folder of a host too', async () => {
    const server = await serveFolder(inject('built'), '/workshop/beds/');
    const device = await context({ serviceWorkers: 'allow' });
    const first = await go(device, server);
    await stored(first);
    await first.close();
    await server.cut();

    const page = await go(device, server);
    await expect(page.evaluate(() => fetch('./not-stored.txt').then((r) => r.status))).rejects.toThrow();
    await page.getByRole('button', { name: starterName('bread-shop') ?? '' }).click();
    await page.locator('.canvas canvas').first().waitFor();
    expect(await page.getByText('from now on it starts').count()).toBe(0);
    await page.getByRole('navigation').getByRole('button', { name: 'Checks' }).click();
    // A letter's font that was not stored would be named in its place.
    await page.getByText('Every letter is in its font').waitFor({ timeout: 60_000 });
    const told = await page.locator('.job-pane').textContent();
    expect(told).not.toMatch(/The font “.*” of .* is not at hand/);
    await page.goto(`${server.address}#bench`);
    await page.locator('.saw-card').waitFor({ timeout: 60_000 });
    expect(await page.evaluate(() => document.fonts.check('600 16px "Barlow Condensed"'))).toBe(true);
    await device.close();
  });
});

describe('a newer version', () => {
  it('waits until it is taken, keeps the design, and never starts another tab anew', async () => {
    const server = await serveFolder(inject('built'));
    const device = await context({ serviceWorkers: 'allow' });
    const first = await go(device, server);
    await stored(first);
    await drop(first, plainDesign());
    const other = await go(device, server);
    for (const page of [first, other]) {
      await page.evaluate(() => document.body.setAttribute('data-same-page', ''));
    }
    server.renew();
    await first.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await first.getByText('A newer version is ready').waitFor();
    await other.getByText('A newer version is ready').waitFor();
    // It stands ready and is not at work: nothing has begun to start this page anew.
    const waits = () =>
      first.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state);
    await expect.poll(waits).toBe('installed');
    expect(await first.locator('[data-same-page]').count()).toBe(1);

    await first.getByRole('button', { name: 'Update now' }).click();
    await expect.poll(() => first.locator('[data-same-page]').count()).toBe(0);
    await first.getByRole('treeitem', { name: /Door panel/ }).waitFor();
    await other.getByText('in use in another tab').waitFor();
    expect(await other.locator('[data-same-page]').count()).toBe(1);
    await device.close();
    await server.cut();
  });
});
