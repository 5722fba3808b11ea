import { mkdirSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { findBrowser } from './chrome.ts';

/** Makes the README's picture from the real app: `npm run pictures`. */
const root = new URL('../../', import.meta.url).pathname;
const target = `${root}assets/pictures/`;

await build({ configFile: `${root}vite.config.ts`, logLevel: 'error' });
const server = await preview({
  configFile: `${root}vite.config.ts`,
  preview: { port: 0, host: '127.0.0.1', open: false },
});
const browser = await chromium.launch({ ...(await findBrowser()), args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
await page.goto(server.resolvedUrls?.local[0] ?? '');
await page.getByText('Harbor ticket kiosk').first().click();
await page.locator('canvas').first().waitFor();
await page.getByRole('button', { name: 'Wood' }).first().click();
await page.locator('.job-pane[aria-busy="false"]').waitFor({ timeout: 60_000 });
await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
mkdirSync(target, { recursive: true });
await page.screenshot({ path: `${target}editor.png` });
await browser.close();
await server.close();
