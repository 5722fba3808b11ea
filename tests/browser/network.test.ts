import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { field, openBrowser, starterName } from './bench.ts';

const { context } = openBrowser();

const STEPS = ['Bed', 'Layout', 'Checks', 'Wood', 'Paint', 'Letters', 'Fastening', 'Pages'] as const;

interface Watch {
  /** Requests to anywhere but the app's own address. */
  readonly abroad: string[];
  /** What the policy stopped, in pages and in their workers. */
  readonly stopped: string[];
  readonly count: () => number;
}

/** Records every request and every breach of the content policy. */
async function watch(on: BrowserContext): Promise<Watch> {
  const home = new URL(inject('app')).origin;
  const abroad: string[] = [];
  const stopped: string[] = [];
  let count = 0;
  on.on('request', (request) => {
    count++;
    const url = new URL(request.url());
    const own = url.origin === home || url.protocol === 'data:' || url.href.startsWith(`blob:${home}/`);
    if (!own) abroad.push(request.url());
  });
  on.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) stopped.push(message.text());
  });
  await on.exposeFunction('policyStopped', (what: string) => stopped.push(what));
  await on.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (e) => {
      const tell = (window as unknown as { policyStopped: (what: string) => void }).policyStopped;
      tell(`${e.violatedDirective} ${e.blockedURI} ${e.sourceFile}`);
    });
  });
  return { abroad, stopped, count: () => count };
}

const planned = (page: Page) =>
  expect.poll(() => page.locator('[aria-busy=true]').count(), { timeout: 60_000 }).toBe(0);

describe('a whole journey', () => {
  it('asks nothing of any other address, and runs within the policy', async () => {
    const device = await context({ acceptDownloads: true, serviceWorkers: 'allow' });
    const watched = await watch(device);
    const page = await device.newPage();
    await page.goto(inject('app'));
    await page.getByRole('button', { name: starterName('harbor-ticket-kiosk') ?? '' }).click();
    await page.locator('.canvas canvas').first().waitFor();
    for (const step of STEPS) {
      await page.getByRole('navigation').getByRole('button', { name: step }).click();
      await planned(page);
      const tabs = page.locator('.sub-list [role=tab]');
      for (let n = 0; n < (await tabs.count()); n++) await tabs.nth(n).click();
    }
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.keyboard.press('Escape');
    for (const file of ['Shop packet (PDF)', 'Picture of the face (PNG)']) {
      await page.getByRole('button', { name: 'Print & export' }).click();
      const saved = page.waitForEvent('download', { timeout: 60_000 });
      await page.getByRole('menuitem', { name: file }).click();
      expect((await saved).suggestedFilename()).not.toBe('');
    }
    await page.goto(`${inject('app')}#bench`);
    await page.locator('.saw-card').waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'To a phone' }).click();
    await field(page, 'Network address').fill('http://192.168.1.20:4173');
    await page.locator('.qr').waitFor();
    expect(watched.count()).toBeGreaterThan(10);
    expect(watched.abroad).toEqual([]);
    expect(watched.stopped).toEqual([]);
    await device.close();
  });
});

describe('the policy', () => {
  it('stops scripts in markup, code made from text, and calls to other addresses', async () => {
    const device = await context();
    const page = await device.newPage();
    await page.goto(inject('app'));
    await page.locator('.first').waitFor();
    const result = await page.evaluate(async () => {
      const outcome = { inline: 'stopped', code: 'stopped', call: 'stopped', style: 'stopped' };
      const script = document.createElement('script');
      script.textContent = 'document.body.dataset.ran = "yes"';
      document.body.append(script);
      if (document.body.dataset.ran) outcome.inline = 'ran';
      // Later, as the page itself would: what a debugger evaluates is let through.
      await new Promise<void>((resolve) =>
        setTimeout(() => {
          try {
            new Function('return 1')();
            outcome.code = 'ran';
          } catch {
            // As it should be.
          }
          resolve();
        }, 0),
      );
      await fetch('http://127.0.0.1:9/').catch((error: unknown) => {
        outcome.call = String(error).includes('Failed to fetch') ? 'stopped' : String(error);
      });
      const style = document.createElement('style');
      style.textContent = 'body { --styled: 1 }';
      document.body.append(style);
      if (getComputedStyle(document.body).getPropertyValue('--styled')) outcome.style = 'ran';
      return outcome;
    });
    expect(result).toEqual({ inline: 'stopped', code: 'stopped', call: 'stopped', style: 'stopped' });
    await device.close();
  });

  it('stands in the page itself, without exceptions', async () => {
    const html = await (await fetch(inject('app'))).text();
    const [, policy = ''] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
    expect(policy).toContain('script-src &#39;self&#39;;');
    expect(policy).toContain('connect-src &#39;self&#39;;');
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)|\son\w+=|<style|\sstyle=/);
  });
});
