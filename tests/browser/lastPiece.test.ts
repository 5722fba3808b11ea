import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { violations } from './axe.ts';
import { drop, exported, field, openBrowser, openStep, stored, visit, wish } from './bench.ts';

const { context } = openBrowser();

const BED = { ...newDesign().bed, skin: { thickness: 6, material: 'plywood' } };
const { width: W, height: H } = faceOf(BED).face;
/** Width of a 1 x 3. */
const w = inches(2.5);

/** A mitered border around the face, a rail between its sides that is cut to fit, and a board on its own below it. */
function design(): Design {
  const border = {
    ...newPart('run', {
      ...{ id: 'border', name: 'Border', stock: 'pine-1x3', finish: 'trim' },
      box: { x: 0, y: 0, w: W, h: H },
    }),
    ...{ path: { form: 'frame' as const }, side: 'inside' as const, corner: 'miter' as const },
  };
  const strip = (id: string, name: string, x: number, y: number, long: number) =>
    newPart('strip', {
      ...{ id, name, stock: 'pine-1x3', finish: 'trim' },
      box: { x, y, w: long, h: w },
    });
  const rail = { ...strip('rail', 'Middle rail', w, inches(36), W - 2 * w), fit: true };
  const shelf = strip('shelf', 'Name board', inches(10), inches(20), inches(18));
  return { ...newDesign(BED, 'To the last piece'), parts: [border, rail, shelf] };
}

/** A bed that leans, all sides as planned: by the law of cosines its diagonals are a quarter inch apart. */
function diagonals(): { readonly rising: number; readonly falling: number; readonly angle: number } {
  const of = (angle: number) => Math.sqrt(W * W + H * H - 2 * W * H * Math.cos(angle));
  let [low, high] = [Math.PI / 2 - 0.02, Math.PI / 2];
  for (let i = 0; i < 60; i++) {
    const angle = (low + high) / 2;
    if (of(Math.PI - angle) - of(angle) > inches(1 / 4)) low = angle;
    else high = angle;
  }
  return { rising: of(Math.PI - low), falling: of(low), angle: (low * 180) / Math.PI };
}

const type = async (page: Page, label: string, text: string): Promise<void> => {
  const input = field(page, label).first();
  await input.fill(text);
  await input.press('Tab');
};
const millimeters = (mm: number): string => `${mm.toFixed(2)} mm`;

/** The bed as the tape and a string read it, one reading wrong at first; then the border is to follow the edges. */
async function measure(page: Page): Promise<void> {
  await openStep(page, 'Bed');
  await page.getByLabel('Measured as built').check();
  const read = diagonals();
  await type(page, 'Diagonal from lower left', millimeters(read.rising));
  await type(page, 'Diagonal from upper left', millimeters(read.falling));
  // Edges that bow by two inches there are none: said at the field, with what it would be.
  await type(page, 'Width at the middle', millimeters(W + inches(2)));
  const wrong = page.getByText(/cannot all be right\. Likeliest wrong is the width at the middle/);
  await wrong.first().waitFor();
  expect(await field(page, 'Width at the middle').first().getAttribute('aria-invalid')).toBe('true');
  await type(page, 'Width at the middle', millimeters(W + inches(1 / 8)));
  await expect.poll(() => wrong.count()).toBe(0);
  const told = page.locator('section', { hasText: 'As it really is' }).getByRole('status');
  await expect.poll(() => told.textContent()).toMatch(/1\/4"? ?long on the diagonal from the lower left/);
  // Three widths tell what both sides bow by together; a string along one of them tells which.
  await expect.poll(() => told.textContent()).toMatch(/bow out by 1\/8"? ?between them/);
  await page.locator('summary', { hasText: 'Edges that bow' }).first().click();
  await type(page, 'Left edge', '1/8');
  await expect
    .poll(() => told.textContent())
    .toMatch(/left edge of the frame bellies out 1\/8"? ?at the middle/);
  expect(await told.textContent()).not.toMatch(/between them|right edge/);
  for (const colorScheme of ['light', 'dark'] as const) {
    await wish(page, { colorScheme });
    expect(await violations(page)).toEqual([]);
  }
  await field(page, 'What takes the taper').selectOption({ label: 'The border: it follows the edges' });
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect.poll(() => told.textContent()).toMatch(/struck square/);
}

interface PlanPiece {
  readonly part: string;
  readonly length_mm: number;
  readonly edges_mm: { readonly left: number; readonly right: number };
  readonly ends: readonly { readonly miter_deg: number }[];
  readonly scribed?: readonly { readonly most_mm: number }[];
}

/** The rail as the tape reads it between the sides of the border: both edges an eighth longer than planned. */
async function readRail(page: Page): Promise<number> {
  await openStep(page, 'Wood');
  const rail = page.getByRole('region', { name: 'Middle rail, measured in place' });
  await rail.waitFor({ timeout: 60_000 });
  await rail.getByRole('button', { name: 'Enter what the tape reads' }).click();
  const read = W - 2 * w + inches(1 / 8);
  await type(page, 'Upper edge', millimeters(read));
  await type(page, 'Lower edge', millimeters(read));
  await rail.getByRole('button', { name: 'Cut it so' }).click();
  // What it moves is shown first.
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect.poll(() => rail.textContent(), { timeout: 60_000 }).toMatch(/Measured in place: upper edge/);
  return read;
}

/** By hand: a rhomboid leans by what 90 degrees lack to its corner; miters are half of each corner's own angle. */
function expectCut(pieces: readonly PlanPiece[], read: number): void {
  const border = pieces.filter(({ part }) => part === 'border');
  const { angle } = diagonals();
  const halves = [90 - angle / 2, angle / 2];
  const miters = border.flatMap(({ ends }) => ends.map(({ miter_deg }) => Math.abs(miter_deg)));
  for (const miter of miters)
    expect(Math.min(...halves.map((half) => Math.abs(half - miter)))).toBeLessThan(0.01);
  // Only the left side bows: its board lies over the belly, and at its ends an eighth of an inch comes off.
  const scribed = border.flatMap((piece) => piece.scribed ?? []);
  expect(scribed).toHaveLength(1);
  expect(scribed[0]?.most_mm).toBeCloseTo(inches(1 / 8), 2);
  const rail = pieces.find(({ part }) => part === 'rail');
  expect(rail?.edges_mm.left).toBeCloseTo(read, 1);
  expect(rail?.edges_mm.right).toBeCloseTo(read, 1);
}

async function count(page: Page): Promise<{ done: number; all: number }> {
  const text = (await page.locator('.saw-progress').textContent()) ?? '';
  const [, done, all] = /(\d+) of (\d+) cut/.exec(text) ?? [];
  return { done: Number(done), all: Number(all) };
}

/** Every piece at the saw, one after the other, until none is left. */
async function cutAll(page: Page): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#bench`);
  await page.locator('.saw-card').waitFor({ timeout: 60_000 });
  const scribe = page.getByText(/scribe its (upper|lower) edge to the bed: up to 1\/8/);
  let seen = 0;
  for (;;) {
    const { done, all } = await count(page);
    if (done === all) break;
    seen += await scribe.count();
    await page.getByRole('button', { name: /^Mark as cut/ }).click();
    await expect.poll(async () => (await count(page)).done).toBeGreaterThan(done);
  }
  expect(seen).toBeGreaterThan(0);
  await page.getByText('Everything is cut.').waitFor();
}

/** Every step of the order of work, until nothing comes next. */
async function doAll(page: Page): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#`);
  await page.locator('.canvas canvas').first().waitFor({ timeout: 60_000 });
  await openStep(page, 'Fastening');
  const order = page.getByRole('region', { name: /Order of work/ });
  const boxes = order.getByRole('checkbox');
  await boxes.first().waitFor({ timeout: 60_000 });
  for (let i = 0; i < (await boxes.count()); i++) {
    const box = boxes.nth(i);
    if (!(await box.isChecked())) await box.check();
  }
  await order.getByText('Everything is done.').waitFor();
  for (const what of ['Cut', 'Fastened', 'Painted']) {
    const bar = order.getByRole('progressbar', { name: what });
    if ((await bar.count()) === 0) continue;
    expect(await bar.getAttribute('value')).toBe(await bar.getAttribute('max'));
  }
}

describe('from a measured bed 1/4 in out of square to the last piece', () => {
  it.each([
    ['at the desk', { viewport: { width: 1440, height: 900 } }],
    ['on a phone', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ])('%s: measured, an edge that bows, a piece read in place, all cut, all fastened', async (_, options) => {
    const device = await context(options);
    const { page, errors } = await visit(device);
    await drop(page, design());
    await measure(page);
    const read = await readRail(page);
    const plan = JSON.parse((await exported(page, 'Whole plan (JSON)')).toString('utf8'));
    expectCut(plan.pieces, read);
    await cutAll(page);
    await stored(page, 'design:', (text) => text.includes('"is":"cut"'));
    await doAll(page);
    // Kept with the job: nothing is forgotten when the page is opened again.
    await stored(page, 'design:', (text) => text.includes('"is":"done"'));
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      options.viewport.width,
    );
    expect(errors).toEqual([]);
    await device.close();
  });
});
