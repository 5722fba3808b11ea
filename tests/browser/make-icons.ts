import { readFileSync, writeFileSync } from 'node:fs';
import { findBrowser, launch } from './chrome.ts';

/**
 * Draws the PNG icons from the SVG, by hand after a change of it: `npm run icons`. A maskable icon may be cut
 * to a circle of 80 % of its width, so its drawing is smaller and its ground fills the square.
 */
const folder = new URL('../../assets/public/', import.meta.url);
const svg = readFileSync(new URL('icon.svg', folder), 'utf8');
const GROUND = '#17262f';

const ICONS = [
  { name: 'icon-192.png', size: 192, scale: 1, ground: 'transparent' },
  { name: 'icon-512.png', size: 512, scale: 1, ground: 'transparent' },
  { name: 'icon-maskable-512.png', size: 512, scale: 0.78, ground: GROUND },
] as const;

const browser = await launch(await findBrowser());
const page = await browser.newPage();
for (const { name, size, scale, ground } of ICONS) {
  await page.setViewportSize({ width: size, height: size });
  const inner = size * scale;
  await page.setContent(
    `<body style="margin:0;background:${ground};display:grid;place-items:center;height:100vh">` +
      `<img width="${inner}" height="${inner}" src="data:image/svg+xml,${encodeURIComponent(svg)}"></body>`,
  );
  await page.locator('img').evaluate((img: HTMLImageElement) => img.decode());
  writeFileSync(new URL(name, folder), await page.screenshot({ omitBackground: true }));
}
await browser.close();
