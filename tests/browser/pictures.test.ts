import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSvg } from '../../src/lettering/picture/svg/svg.ts';
import { iconsOf } from '../lettering/icons.ts';
import { ARGS, findBrowser } from './chrome.ts';

/** An inch at 300 dots. */
const PIXELS = 300;

/** What a picture is drawn with: as lines, and as what those enclose, turned and drawn out. */
const LOOKS = {
  lined: [
    '<g fill="none" stroke="#000" stroke-width="2" stroke-linecap="round" stroke-linejoin="round">',
    '</g>',
  ],
  cornered: ['<g fill="none" stroke="#000" stroke-width="1.5" transform="matrix(.7 .2 -.1 .6 6 2)">', '</g>'],
  filled: ['<g fill-rule="evenodd" transform="rotate(20 12 12) translate(3 3) scale(.75)">', '</g>'],
} as const;

let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({ ...(await findBrowser()), args: [...ARGS] });
});
afterAll(() => browser.close());

/** Pixels that differ in the page between an SVG and outlines, but for those at an edge of the SVG. */
async function differing(jobs: readonly { svg: string; outline: string }[]): Promise<number[]> {
  const page = await browser.newPage();
  const found = await page.evaluate(
    async ({ all, size }) => {
      const results: number[] = [];
      for (const { svg, outline } of all) {
        const image = new Image();
        image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
        await image.decode();
        // Without names of their own: functions that are named are not known in the page.
        const [a = new Uint8Array(), b = new Uint8Array()] = [true, false].map((original) => {
          const pen = new OffscreenCanvas(size, size).getContext('2d');
          if (!pen) return new Uint8Array();
          pen.fillStyle = '#fff';
          pen.fillRect(0, 0, size, size);
          if (original) pen.drawImage(image, 0, 0, size, size);
          else {
            pen.setTransform(size / 10_000, 0, 0, -size / 10_000, 0, size);
            pen.fillStyle = '#000';
            pen.fill(new Path2D(outline), 'evenodd');
          }
          const { data } = pen.getImageData(0, 0, size, size);
          return Uint8Array.from({ length: size * size }, (_, k) => ((data[4 * k] ?? 255) < 128 ? 1 : 0));
        });
        let count = 0;
        for (let y = 1; y < size - 1; y += 1)
          for (let x = 1; x < size - 1; x += 1) {
            const at = y * size + x;
            if (a[at] === b[at]) continue;
            const near = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => a[at + dy * size + dx]));
            if (near.every((one) => one === near[4])) count += 1;
          }
        results.push(a.includes(1) ? count : -1);
      }
      return results;
    },
    { all: jobs, size: PIXELS },
  );
  await page.close();
  return found;
}

describe('SVG pictures', () => {
  // The icons of an open set against the browser's own drawing of their files, an independent renderer.
  it.each(Object.entries(LOOKS))(
    '%s, are what the browser draws of them, but for pixels at edges',
    async (_, [before, after]) => {
      const icons = await iconsOf(30);
      expect(icons.length).toBeGreaterThanOrEqual(60);
      const jobs = icons.flatMap(({ inside }) => {
        const size = `width="${PIXELS}" height="${PIXELS}" viewBox="0 0 24 24"`;
        const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}><rect fill="#fff" width="24" height="24"/>${before}${inside}${after}</svg>`;
        const read = readSvg(svg);
        if (!read.ok) throw new Error(`${svg}: ${JSON.stringify(read.reason)}`);
        expect(read.picture.width).toBe(10_000);
        const black = read.picture.colors.find(({ color }) => color === '#000000');
        return black ? [{ svg, outline: black.outline }] : [];
      });
      // A line alone encloses nothing.
      expect(jobs.length).toBeGreaterThanOrEqual(55);
      const found = await differing(jobs);
      expect(
        found.map((count, i) => (count === 0 ? '' : `${count}: ${jobs[i]?.svg}`)).filter(Boolean),
      ).toEqual([]);
    },
  );
});
