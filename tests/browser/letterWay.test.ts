import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { fingerOn, type Hand, mouseOn } from './acts.ts';
import { drop, onPage, openBrowser, plainDesign, stored, visit } from './bench.ts';
import { Fingers } from './fingers.ts';

const { context } = openBrowser();

const BOX = { x: 150, y: 900, w: 700, h: 300 };
/** Words along a way that rises in its middle, which stands at half of the board's width and three fifths of its height. */
function waved(): Design {
  const sign = newPart('sign', { id: 'notice', name: 'Notice', box: BOX, finish: null });
  const path = [
    { u: 0.1, v: 0.4 },
    { u: 0.5, v: 0.6 },
    { u: 0.9, v: 0.4 },
  ];
  const lettering = {
    ...sign.lettering,
    ...{ along: 'path' as const, path, make: 'trace' as const, lines: [{ text: 'BREAD' }], capHeight: 60 },
  };
  return { ...plainDesign(), parts: [{ ...sign, lettering }] };
}

/** Waits until the device keeps a way of so many corners, the second of them no farther than this from where it was put. */
const keeps = (page: Page, corners: number, v: number) =>
  stored(page, 'design:', (text) => {
    const { parts } = JSON.parse(text) as ReturnType<typeof waved>;
    const [part] = parts;
    const path = part && 'lettering' in part ? (part.lettering.path ?? []) : [];
    return path.length === corners && Math.abs((path[1]?.v ?? 0) - v) < 0.06;
  });

async function bent(page: Page, hand: Hand): Promise<void> {
  const at = (u: number, v: number) => onPage(page, BOX.x + u * BOX.w, BOX.y + v * BOX.h);
  // Its second corner, far up: it stops at the border.
  await hand.pull(await at(0.5, 0.6), await at(0.5, 1.4));
  await keeps(page, 3, 1);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await keeps(page, 3, 0.6);
  await page.getByRole('button', { name: /^Redo/ }).click();
  await keeps(page, 3, 1);
}

describe('the way of words', () => {
  it('is bent by its corners on the drawing with a mouse, undone and redone', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, waved());
    const middle = await onPage(page, BOX.x + 0.5 * BOX.w, BOX.y + 0.2 * BOX.h);
    await page.mouse.click(middle.x, middle.y);
    await page
      .getByRole('button', { name: /^Delete corner/ })
      .first()
      .waitFor();
    await bent(page, mouseOn(page));
    expect(errors).toEqual([]);
  });

  it('and with a finger on a phone', async () => {
    const phone = await context({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const { page, errors } = await visit(phone);
    await drop(page, waved());
    const fingers = await Fingers.on(phone, page);
    await fingers.tap(await onPage(page, BOX.x + 0.5 * BOX.w, BOX.y + 0.2 * BOX.h));
    await page.getByText('Notice').first().waitFor();
    await bent(page, fingerOn(fingers));
    expect(errors).toEqual([]);
  });
});
