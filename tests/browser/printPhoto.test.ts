import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { segment } from '../lettering/photos.ts';
import { drop, exported, field, onPage, openBrowser, openStep, plainDesign, stored, visit } from './bench.ts';

const { context } = openBrowser();

/** A printed sign without words, where the test looks for its photo. */
const BOX = { x: 300, y: 900, w: 240, h: 160 };
function printedSign(): Design {
  const sign = newPart('sign', { id: 'notice', name: 'Notice', box: BOX, finish: null });
  const lettering = { ...sign.lettering, make: 'printed' as const, bleed: 0, lines: [{ text: '' }] };
  return { ...plainDesign(), parts: [{ ...sign, lettering }] };
}

/** Quarters of a photo: upper left, upper right, lower left, lower right. */
const COLORS = ['#d02020', '#20a040', '#2040d0', '#e0c020'] as const;

/** A photo as the browser itself packs it, and so not with anything of the project. */
const packed = async (page: Page, type: string, width: number, height: number): Promise<Buffer> =>
  Buffer.from(
    await page.evaluate(
      async ({ colors, type: as, w, h }) => {
        const canvas = new OffscreenCanvas(w, h);
        const pen = canvas.getContext('2d');
        for (const [i, color] of colors.entries()) {
          if (!pen) break;
          pen.fillStyle = color;
          pen.fillRect((i % 2) * (w / 2), Math.floor(i / 2) * (h / 2), w / 2, h / 2);
        }
        const blob = await canvas.convertToBlob({ type: as, quality: 1 });
        return [...new Uint8Array(await blob.arrayBuffer())];
      },
      { colors: COLORS, type, w: width, h: height },
    ),
  );

/** Waits until the pane says something; figures in it are set as fractions, and so stand there twice. */
const told = (page: Page, text: string) => page.getByText(text).first().waitFor({ state: 'attached' });

/** The color that is seen at shares of the sign, from its lower left. */
async function seenAt(page: Page, u: number, v: number): Promise<readonly number[]> {
  const at = await onPage(page, BOX.x + u * BOX.w, BOX.y + v * BOX.h);
  const png = PNG.sync.read(await page.screenshot({ clip: { x: at.x, y: at.y, width: 1, height: 1 } }));
  return [...png.data.subarray(0, 3)];
}

/** Waits until the middles of its quarters are seen in colors, by their numbers. */
async function shows(page: Page, quarters: readonly number[]): Promise<void> {
  const places = [
    [0.25, 0.75],
    [0.75, 0.75],
    [0.25, 0.25],
    [0.75, 0.25],
  ] as const;
  const wanted = quarters.map((i) => COLORS[i] ?? '');
  const near = (seen: readonly number[], color: string) =>
    seen.every((c, k) => Math.abs(c - Number.parseInt(color.slice(1 + 2 * k, 3 + 2 * k), 16)) < 40);
  await expect
    .poll(
      async () => {
        const seen: string[] = [];
        for (const [u, v] of places) {
          const found = await seenAt(page, u, v);
          seen.push(COLORS.find((color) => near(found, color)) ?? found.join(' '));
        }
        return seen;
      },
      { timeout: 30_000 },
    )
    .toEqual(wanted);
}

/** An Exif segment that says that the camera was turned a quarter (6: the first row is seen at the right), with a place. */
const TURNED = segment(0xe1, [
  ...[...'Exif'].map((c) => c.charCodeAt(0)),
  ...[0, 0, 0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0],
  ...[...'secret place'].map((c) => c.charCodeAt(0)),
]);

describe('a photo on a printed sign', () => {
  it('is refused with a reason, or opened, seen, sized by a side, printed, kept and undone', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, printedSign());
    await openStep(page, 'Letters');
    await page.locator('.sub-list').getByRole('tab', { name: 'Making', exact: true }).click();
    const input = page.locator('input[aria-label="Open a photo"]');
    const opens = (name: string, buffer: Buffer) =>
      input.setInputFiles({ name, mimeType: 'image/jpeg', buffer });

    await opens('page.png', Buffer.from('<html><script>alert(1)</script></html>'));
    await page.getByRole('alert').filter({ hasText: 'not a photo that can be read' }).waitFor();
    const jpeg = await packed(page, 'image/jpeg', 480, 320);
    await opens('cut.jpg', jpeg.subarray(0, jpeg.length / 2));
    await page.getByRole('alert').filter({ hasText: 'could not be read' }).waitFor();

    // A WebP is decoded by the browser and kept as what a PDF holds.
    await opens('harbor.webp', await packed(page, 'image/webp', 480, 320));
    // Over a sign of 240 mm: 480 pixels over 9.4488 in are 50.8 to an inch.
    await told(page, '480 by 320 pixels: 50 to an inch here');
    await shows(page, [0, 1, 2, 3]);

    // Sized by a measured side: 480 pixels over 4 in.
    const width = field(page, 'Width of the photo');
    await width.fill('4');
    await width.press('Enter');
    await told(page, '480 by 320 pixels: 120 to an inch here');
    await expect.poll(() => field(page, 'Size').inputValue()).toBe('sized');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await told(page, '480 by 320 pixels: 50 to an inch here');

    // What is held sideways is seen upright, and nothing of what a camera wrote is kept.
    await page.getByRole('button', { name: 'Remove “harbor” from this sign' }).click();
    const held = Buffer.concat([jpeg.subarray(0, 2), Buffer.from(TURNED), jpeg.subarray(2)]);
    await opens('turned.jpg', held);
    await told(page, '320 by 480 pixels');
    // Turned a quarter to the right: what was at the lower left is at the upper left.
    await shows(page, [2, 0, 3, 1]);
    const plan = JSON.parse((await exported(page, 'Whole plan')).toString()) as {
      readonly lettering: readonly { readonly photos?: readonly { readonly pixels: readonly number[] }[] }[];
    };
    expect(plan.lettering[0]?.photos?.[0]?.pixels).toEqual([320, 480]);
    const svg = (await exported(page, 'Picture of the face, full size')).toString();
    const data = /data:image\/jpeg;base64,([^"]+)"/.exec(svg)?.[1] ?? '';
    const bytes = Buffer.from(data, 'base64');
    expect(bytes.length).toBeGreaterThan(1000);
    expect(bytes.includes('Exif') || bytes.includes('secret')).toBe(false);
    const pdf = await exported(page, 'Full-size patterns');
    expect(pdf.includes('/DCTDecode')).toBe(true);

    await stored(page, 'design:');
    await expect.poll(() => page.locator('.saved-cell').textContent(), { timeout: 20_000 }).toContain('Yes');
    await page.reload();
    await shows(page, [2, 0, 3, 1]);
    expect(errors).toEqual([]);
  });
});
