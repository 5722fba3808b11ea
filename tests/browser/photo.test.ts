import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import { openDesign } from '../../src/design/open.ts';
import { faceFor } from '../editor/laid.ts';
import { bytesOf, drop, exported, field, onPage, openBrowser, openStep, stored, visit } from './bench.ts';

const { context } = openBrowser();

/** The face of an empty new bed: 41 1/2 by 78 in. */
const FACE = { width: 41.5 * 25.4, height: 78 * 25.4 };
const PICTURE = { width: 600, height: 900 };
const COLORS = [
  [
    [220, 40, 40],
    [40, 160, 60],
  ],
  [
    [40, 70, 210],
    [230, 200, 40],
  ],
] as const;
const WALL = [128, 128, 128] as const;

type V = readonly [number, number, number];
const less = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const det = (a: V, b: V, c: V) =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) -
  b[0] * (a[1] * c[2] - a[2] * c[1]) +
  c[0] * (a[1] * b[2] - a[2] * b[1]);

/**
 * A camera at the origin looks along z, with the bed leaning away from it and turned a little: points of the picture
 * are where rays cross its plane. Nothing of the product's map of corners is used.
 */
const CORNER: V = [-620, 1050, 3050];
const ACROSS: V = [1000, 40, 330];
const UP: V = [60, -1900, 420];
const FOCUS = 1000;

/** Where the camera sees a point of the bed, given as shares of its width and height. */
function seen(u: number, v: number): { x: number; y: number } {
  const [x, y, z] = [0, 1, 2].map((i) => (CORNER[i] ?? 0) + u * (ACROSS[i] ?? 0) + v * (UP[i] ?? 0)) as [
    number,
    number,
    number,
  ];
  return { x: PICTURE.width / 2 + (FOCUS * x) / z, y: PICTURE.height / 2 + (FOCUS * y) / z };
}

/** What a ray through a pixel meets: shares of the bed, by Cramer's rule. */
function met(x: number, y: number): { u: number; v: number } {
  const ray: V = [x - PICTURE.width / 2, y - PICTURE.height / 2, FOCUS];
  const minus: V = [-ray[0], -ray[1], -ray[2]];
  const right = less([0, 0, 0], CORNER);
  const whole = det(ACROSS, UP, minus);
  return { u: det(right, UP, minus) / whole, v: det(ACROSS, right, minus) / whole };
}

/** A photo of the bed in front of a gray wall: each quarter of its face has a color of its own. */
function photo(): Buffer {
  const png = new PNG(PICTURE);
  for (let y = 0; y < PICTURE.height; y++) {
    for (let x = 0; x < PICTURE.width; x++) {
      const { u, v } = met(x + 0.5, y + 0.5);
      const on = u >= 0 && u <= 1 && v >= 0 && v <= 1;
      const color = on ? COLORS[v < 0.5 ? 0 : 1][u < 0.5 ? 0 : 1] : WALL;
      png.data.set([...color, 255], (y * PICTURE.width + x) * 4);
    }
  }
  return PNG.sync.write(png);
}

/** The photo as it lies on the face: millimeters of a pixel, and where the picture's lower left corner is. */
interface Lie {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}
const pixelAt = ({ scale, x, y }: Lie, p: { x: number; y: number }) => ({
  x: x + p.x * scale,
  y: y + (PICTURE.height - p.y) * scale,
});

async function pull(page: Page, lie: Lie, from: { x: number; y: number }, to: { x: number; y: number }) {
  const [a, b] = [pixelAt(lie, from), pixelAt(lie, to)];
  const start = await onPage(page, a.x, a.y);
  const end = await onPage(page, b.x, b.y);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 3 });
  await page.mouse.up();
}

describe('a photo under the drawing', () => {
  it('is sized by a length that is known, and straightened by the corners of the bed', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, newDesign());
    await page.getByRole('navigation').getByRole('button', { name: 'Layout' }).click();
    await page.getByText('Photo under the drawing').click();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a photo' }).click(),
    ]);
    await chooser.setFiles({ name: 'bed.png', mimeType: 'image/png', buffer: photo() });
    await page.getByRole('button', { name: 'Move', exact: true, pressed: true }).waitFor();
    // At first it covers the height of the face, in the middle.
    const scale = FACE.height / PICTURE.height;
    let lie: Lie = { scale, x: (FACE.width - PICTURE.width * scale) / 2, y: 0 };

    await page.getByRole('button', { name: 'Size by a length' }).click();
    const [left, right] = [seen(0, 0), seen(1, 0)];
    const middle = PICTURE.height / 2;
    await pull(page, lie, { x: PICTURE.width / 4, y: middle }, left);
    await pull(page, lie, { x: (PICTURE.width * 3) / 4, y: middle }, right);
    const apart = field(page, 'From mark to mark');
    await apart.fill('41 1/2');
    await apart.press('Enter');
    const fixed = pixelAt(lie, left);
    const sized = FACE.width / Math.hypot(right.x - left.x, right.y - left.y);
    lie = {
      scale: sized,
      x: fixed.x - left.x * sized,
      y: fixed.y - (PICTURE.height - left.y) * sized,
    };
    await page.getByRole('button', { name: 'Move', exact: true }).click();
    const wide = Number.parseFloat(await field(page, 'Width').inputValue());
    // A hand on the screen hits a mark to a pixel or so.
    expect(wide / ((PICTURE.width * sized) / 25.4)).toBeCloseTo(1, 1);

    await page.getByRole('button', { name: 'Set corners' }).click();
    // In pieces of the picture: where the corners wait, and where the bed's are.
    const share = (x: number, y: number) => ({ x: PICTURE.width * x, y: PICTURE.height * y });
    await pull(page, lie, share(0.15, 0.85), seen(0, 0));
    await pull(page, lie, share(0.85, 0.85), seen(1, 0));
    await pull(page, lie, share(0.85, 0.15), seen(1, 1));
    await pull(page, lie, share(0.15, 0.15), seen(0, 1));
    await field(page, 'Opacity').fill('100');
    await field(page, 'Opacity').press('Enter');
    await field(page, 'Straightened by the bed’s corners').check();
    const color = async (u: number, v: number) => {
      const at = await onPage(page, u * FACE.width, v * FACE.height);
      const png = PNG.sync.read(await page.screenshot({ clip: { x: at.x, y: at.y, width: 1, height: 1 } }));
      return [...png.data.subarray(0, 3)];
    };
    // Quarters meet in the middle of the face again, and the wall is beyond its edges.
    const near = async (u: number, v: number, is: readonly number[]) =>
      (await color(u, v)).every((c, i) => Math.abs(c - (is[i] ?? 0)) < 24);
    const points = [
      [0.25, 0.25, COLORS[0][0]],
      [0.03, 0.03, COLORS[0][0]],
      [0.97, 0.03, COLORS[0][1]],
      [0.47, 0.97, COLORS[1][0]],
      [0.53, 0.97, COLORS[1][1]],
      [0.47, 0.48, COLORS[0][0]],
      [0.53, 0.52, COLORS[1][1]],
    ] as const;
    const wrong = async () => {
      const found: string[] = [];
      for (const [u, v, is] of points) if (!(await near(u, v, is))) found.push(`${u}, ${v}`);
      return found;
    };
    // The view fits itself to the face anew as well: all of it, once that stands.
    await expect.poll(wrong, { timeout: 20_000 }).toEqual([]);
    expect(errors).toEqual([]);

    // It comes back with its design.
    await stored(page, 'photo-lie:');
    await page.reload();
    await page.locator('.canvas canvas').first().waitFor();
    await expect.poll(() => near(0.97, 0.03, COLORS[0][1]), { timeout: 20_000 }).toBe(true);

    // Taken away, it can be put back as it lay.
    await page.getByRole('navigation').getByRole('button', { name: 'Layout' }).click();
    await page.getByRole('button', { name: 'Remove it' }).click();
    await expect.poll(() => near(0.97, 0.03, COLORS[0][1])).toBe(false);
    await page.getByRole('button', { name: 'Put the last one back' }).click();
    await expect.poll(() => near(0.97, 0.03, COLORS[0][1]), { timeout: 20_000 }).toBe(true);

    // The face laid into it: bare wood in the bed's corners, the wall around them, what was outlined before it.
    await page.getByRole('button', { name: 'See the face in the photo' }).click();
    const sheet = page.locator('.room-view canvas');
    await page.locator('canvas[data-laid="0"]').waitFor({ timeout: 60_000 });
    const laid = async (p: { x: number; y: number }) => {
      const url = await sheet.evaluate((on) => (on as HTMLCanvasElement).toDataURL());
      const png = PNG.sync.read(Buffer.from(url.slice(url.indexOf(',') + 1), 'base64'));
      const at = (Math.floor(p.y) * png.width + Math.floor(p.x)) * 4;
      return [...png.data.subarray(at, at + 3)];
    };
    const isWood = ([r = 0, g = 0, b = 0]: number[]) => r > 180 && g > 160 && b > 120 && r > b;
    for (const [u, v] of [
      [0.1, 0.2],
      [0.9, 0.2],
      [0.5, 0.5],
      [0.3, 0.9],
    ] as const)
      expect({ u, v, wood: isWood(await laid(seen(u, v))) }).toEqual({ u, v, wood: true });
    for (const [u, v] of [
      [-0.04, 0.5],
      [1.04, 0.5],
      [0.5, 1.03],
    ] as const)
      expect(await laid(seen(u, v))).toEqual([...WALL]);
    const box = await page.locator('.room-view svg').boundingBox();
    if (!box) throw new Error('no photo is shown');
    const around = [
      [0.55, 0.1],
      [0.9, 0.1],
      [0.9, 0.4],
      [0.55, 0.4],
      [0.55, 0.12],
    ] as const;
    for (const [i, [u, v]] of around.entries()) {
      const at = seen(u, v);
      const k = box.width / PICTURE.width;
      await page.mouse.move(box.x + at.x * k, box.y + at.y * k, { steps: 8 });
      if (i === 0) await page.mouse.down();
    }
    await page.mouse.up();
    await page.locator('canvas[data-laid="1"]').waitFor({ timeout: 60_000 });
    expect(await laid(seen(0.7, 0.25))).toEqual([...COLORS[0][1]]);
    expect(isWood(await laid(seen(0.3, 0.25)))).toBe(true);
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the picture' }).click(),
    ]);
    const { width, height } = PNG.sync.read(await bytesOf(saved));
    expect([width, height]).toEqual([600, 900]);

    // However narrow or low the page, the picture lies within its dialog, in the middle, and what a hand draws on over it.
    for (const size of [
      { width: 390, height: 1200 },
      { width: 1024, height: 600 },
    ]) {
      await page.setViewportSize(size);
      const lie = () =>
        page.evaluate(() => {
          const [dialog, picture, over] = ['.dialog.room', '.room-view canvas', '.room-view svg'].map(
            (name) => document.querySelector(name)?.getBoundingClientRect(),
          );
          if (!dialog || !picture || !over) return null;
          return {
            middle: Math.abs(picture.left + picture.right - dialog.left - dialog.right) < 20,
            within: picture.left > dialog.left + 8 && picture.right < dialog.right - 8,
            alike: Math.abs(over.width - picture.width) + Math.abs(over.height - picture.height) < 1,
          };
        });
      await expect.poll(lie).toEqual({ middle: true, within: true, alike: true });
    }
    await page.context().close();
  });
});

describe('the picture of the face', () => {
  it.each(['harbor-ticket-kiosk', 'bread-shop', 'orchard-barn-door'])(
    '%s: is what the screen shows',
    async (file) => {
      const text = readFileSync(new URL(`../../assets/starters/${file}.json`, import.meta.url), 'utf8');
      const opened = openDesign(text);
      if (!opened.ok) throw new Error(`${file} does not open`);
      const { page, errors } = await visit(await context({ locale: 'en-US' }));
      await drop(page, opened.design);
      await page.getByRole('radio', { name: 'Shadow' }).click();
      const picture = PNG.sync.read(await exported(page, 'Picture of the face (PNG)'));
      // Shadows are exact once the plan has them: two frames after it.
      await openStep(page, 'Checks');
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      const screen = await page
        .locator('.canvas canvas')
        .first()
        .evaluate((on) => {
          const canvas = on as HTMLCanvasElement;
          const { scale, left, base } = (canvas.closest('.canvas') as HTMLElement).dataset;
          return { url: canvas.toDataURL(), ratio: canvas.width / canvas.clientWidth, scale, left, base };
        });
      const shown = PNG.sync.read(Buffer.from(screen.url.slice(screen.url.indexOf(',') + 1), 'base64'));
      const [scale, left, base] = [screen.scale, screen.left, screen.base].map(Number) as [
        number,
        number,
        number,
      ];
      const face = faceFor(opened.design.bed);
      const colorOf = (of: PNG, x: number, y: number) => {
        const at = (Math.round(y) * of.width + Math.round(x)) * 4;
        return [...of.data.subarray(at, at + 3)];
      };
      const far = (a: number[], b: number[]) => Math.max(...a.map((c, i) => Math.abs(c - (b[i] ?? 0))));
      const k = picture.width / face.width;
      let [plain, other] = [0, 0];
      const px = 1 / scale;
      for (let x = 6 * px; x < face.width - 6 * px; x += 3.7 * px)
        for (let y = 6 * px; y < face.height - 6 * px; y += 3.3 * px) {
          const inPicture = (dx: number, dy: number) =>
            colorOf(picture, (x + dx) * k, picture.height - (y + dy) * k);
          const onScreen = (dx: number, dy: number) =>
            colorOf(
              shown,
              (left + (x + dx) * scale) * screen.ratio,
              (base - (y + dy) * scale) * screen.ratio,
            );
          // Edges are lines of a pixel on the screen, and of their own width in the picture.
          const isEdge = [inPicture, onScreen].some((at) =>
            [-3, -1, 1, 3].some((i) => [-3, -1, 1, 3].some((j) => far(at(i * px, j * px), at(0, 0)) > 10)),
          );
          if (isEdge) continue;
          plain++;
          const [here, seenThere] = [inPicture(0, 0), onScreen(0, 0)];
          if (far(seenThere, here) > 12) other++;
        }
      expect(plain).toBeGreaterThan(3000);
      expect({ share: other / plain < 0.01, other, plain }).toEqual({ share: true, other, plain });
      expect(errors).toEqual([]);
      await page.context().close();
    },
  );
});
