import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { spanOf } from '../../src/bed/measured.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { starter } from '../plan/starters.ts';
import { violations } from './axe.ts';
import { drop, exported, field, openBrowser, openStep, visit } from './bench.ts';

const { context } = openBrowser();

/** The barn's left door, its rails cut to fit between stiles that are 18 in apart as planned. */
function barn(): Design {
  const design = starter('orchard-barn-door');
  const parts = design.parts.map((part) =>
    part.kind === 'strip' && /^left-(bottom|top)$/.test(part.id) ? { ...part, fit: true } : part,
  );
  return { ...design, name: 'Measured barn', parts };
}

/** A bed that leans: its rising diagonal 1/4 in longer than the other, all sides as planned. */
function leaning({ w, h }: { readonly w: number; readonly h: number }): Record<'rising' | 'falling', number> {
  let [low, high] = [0, 100];
  const longer = (lean: number): number => Math.hypot(w + lean, h) - Math.hypot(w - lean, h);
  for (let i = 0; i < 60; i++) {
    const lean = (low + high) / 2;
    if (longer(lean) < inches(1 / 4)) low = lean;
    else high = lean;
  }
  const rise = Math.sqrt(h * h - low * low);
  const quad = [
    { x: 0, y: 0 },
    { x: w, y: 0 },
    { x: w + low, y: rise },
    { x: low, y: rise },
  ] as const;
  return { rising: spanOf(quad, 'rising'), falling: spanOf(quad, 'falling') };
}

const type = async (page: Page, label: string, text: string): Promise<void> => {
  const input = field(page, label).first();
  await input.fill(text);
  await input.press('Tab');
};
const millimeters = (mm: number): string => `${mm.toFixed(2)} mm`;
const place = (page: Page, name: string) => page.getByRole('region', { name: `${name}, measured in place` });

/** What the tape reads between the stiles of the bottom rail, a quarter inch more than planned. */
async function readRail(page: Page): Promise<void> {
  const rail = place(page, 'Left door bottom rail');
  await rail.waitFor({ timeout: 60_000 });
  await rail.getByRole('button', { name: 'Enter what the tape reads' }).click();
  await type(page, 'Upper edge', '18 1/4');
  await type(page, 'Lower edge', '18 3/16');
  // By trigonometry: 1/16 in over the width of a 1 x 4, 3 1/2 in, is one degree.
  await expect
    .poll(() => rail.getByRole('status').last().textContent())
    .toMatch(/left end square, right end 1°/);
  await rail.getByRole('button', { name: 'Cut it so' }).click();
  const moved = page.locator('.moved');
  await moved.waitFor();
  // The stile by the middle of both, what is held at it, and what runs between the stiles.
  for (const name of ['Left door inner stile', 'Left door top rail', 'Left door brace', 'Door pull'])
    expect(await moved.textContent()).toContain(name);
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect
    .poll(() => rail.textContent(), { timeout: 60_000 })
    .toMatch(/Measured in place: upper edge 18 ?1\/4" \(planned 18"\), lower edge 18 ?3\/16"/);
}

const pieceOf = (plan: { readonly pieces: readonly { readonly part: string }[] }, part: string) =>
  plan.pieces.find((piece) => piece.part === part) as unknown as {
    readonly edges_mm: { readonly left: number; readonly right: number };
    readonly fit: unknown;
  };

describe('a measured bed to its last piece', () => {
  it('at the desk: the bed 1/4 in out of square, then a rail between its stiles', async () => {
    const desk = await context({ viewport: { width: 1440, height: 900 } });
    const { page, errors } = await visit(desk);
    await drop(page, barn());
    await openStep(page, 'Bed');
    await page.getByLabel('Measured as built').check();
    const read = leaning({ w: 1981.2, h: 1054.1 });
    await type(page, 'Diagonal from lower left', millimeters(read.rising));
    await type(page, 'Diagonal from upper left', millimeters(read.falling));
    const told = page.locator('section', { hasText: 'As it really is' }).getByRole('status');
    await expect.poll(() => told.textContent()).toMatch(/1\/4"? ?long on the diagonal from the lower left/);
    await field(page, 'What takes the taper').selectOption({ label: 'The border: it follows the edges' });
    await page.getByRole('button', { name: 'Use it' }).click();
    await expect.poll(() => told.textContent()).toMatch(/struck square/);
    await openStep(page, 'Wood');
    await readRail(page);
    expect(await violations(page)).toEqual([]);
    const plan = JSON.parse((await exported(page, 'Whole plan (JSON)')).toString('utf8'));
    const rail = pieceOf(plan, 'left-bottom');
    expect(rail.edges_mm.left).toBeCloseTo(inches(18.25), 2);
    expect(rail.edges_mm.right).toBeCloseTo(inches(18 + 3 / 16), 2);
    // One step of undo brings back what was planned.
    await page.getByRole('button', { name: /^Undo/ }).first().click();
    await expect
      .poll(() => place(page, 'Left door bottom rail').textContent(), { timeout: 60_000 })
      .toContain('Cut to fit in place');
    expect(errors).toEqual([]);
    await desk.close();
  });

  it('at the saw on a phone: the rail is read, cut, and taken back', async () => {
    const phone = await context({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const { page, errors } = await visit(phone);
    await drop(page, barn());
    await page.goto(`${page.url().split('#')[0]}#bench`);
    await page.locator('.saw-card').waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'All pieces' }).click();
    await page
      .getByRole('button', { name: /Left door bottom rail/ })
      .first()
      .click();
    await readRail(page);
    await expect.poll(() => page.locator('.saw-figure').textContent()).toContain('18');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.getByRole('button', { name: 'Take the reading back' }).click();
    await expect
      .poll(() => place(page, 'Left door bottom rail').textContent(), { timeout: 60_000 })
      .toContain('Cut to fit in place');
    expect(errors).toEqual([]);
    await phone.close();
  });
});
