import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import type { Design } from '../../src/design/schema.ts';
import { formatMass, formatMoney, formatReading } from '../../src/measure/format.ts';
import { plan } from '../../src/plan/plan.ts';
import { SUPPLIES, starter } from '../plan/starters.ts';
import { violations } from './axe.ts';
import { drop, field, openBrowser, openStep, resize, visit, wish } from './bench.ts';

const { context } = openBrowser();

const kiosk = starter('harbor-ticket-kiosk');

/** The plan of the kiosk, made here: what the panes must show. */
const made = plan(kiosk, SUPPLIES);
/** All that is done at the saw: pieces, and cuts of sheets. */
const cuts = benchSteps(made.cutting, made.joinery.pieces).length;

/** A font for signs, as a person might bring it. */
const RYE = new URL('../../node_modules/@fontsource/rye/files/rye-latin-400-normal.woff', import.meta.url);

const SUBS: Readonly<Record<string, readonly string[]>> = {
  Layout: [],
  Checks: [],
  Wood: ['Pieces', 'Boards & sheets', 'Shopping', 'Joints', 'Stock & saw'],
  Paint: ['Amounts', 'Finishes', 'Light'],
  Letters: ['Words', 'Look', 'Making', 'Reading'],
  Fastening: ['Order of work', 'Brads & screws', 'Marks', 'Weight'],
  Pages: ['Pages', 'Paper', 'Printer'],
};

const openSub = (page: Page, sub: string) =>
  page.locator('.sub-list').getByRole('tab', { name: sub, exact: true }).click();

/** Text of the pane as it is seen, its spaces evened out. */
const seen = async (page: Page): Promise<string> =>
  (await page.locator('.job-pane').allInnerTexts()).join(' ').replace(/\s+/g, ' ');

/** How often a length stands in the pane, as it is set beside its spoken form. */
const set = (page: Page, mm: number) =>
  page.locator('.job-pane .hidden-text + span', { hasText: formatReading(mm, kiosk.measure) }).count();

/** What stands around the pane has its own test; the inside of a drawing is one picture. */
const PANE = { include: ['.pane'], exclude: ['.paper-drawing > g'] };

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

describe('every pane opens', () => {
  it('without violations or errors, light and wide, dark and narrow', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, kiosk);
    for (const [colorScheme, width] of [
      ['light', 1440],
      ['dark', 390],
    ] as const) {
      await wish(page, { colorScheme });
      await resize(page, width, 860);
      const widths = new Set<number>();
      for (const [step, subs] of Object.entries(SUBS)) {
        await openStep(page, step);
        for (const sub of subs.length > 0 ? subs : ['']) {
          if (sub) await openSub(page, sub);
          const found = await violations(page, PANE);
          const { wider, inside, empty } = await page
            .locator('.pane-body:visible')
            .first()
            .evaluate((el) => {
              const top = el.getBoundingClientRect().top - el.scrollTop;
              const ends =
                Math.max(...[...el.children].map((child) => child.getBoundingClientRect().bottom)) - top;
              // What follows the content is no more than the pane's padding.
              const empty = el.scrollHeight - Math.max(el.clientHeight, ends) > 40;
              return { wider: el.scrollWidth - el.clientWidth, inside: el.clientWidth, empty };
            });
          widths.add(inside);
          const view = { colorScheme, step, sub };
          expect({ ...view, found, wider, empty }).toEqual({ ...view, found: [], wider: 0, empty: false });
        }
      }
      // Nothing moves under the pointer that goes from step to step.
      expect(widths.size).toBe(1);
    }
    expect(errors).toEqual([]);
    await page.context().close();
    // Forty views, each looked through whole.
  }, 300_000);
});

/** One page for all of these, in this order: what changes the design comes last. */
describe('the panes of the kiosk', () => {
  let page: Page;
  let errors: string[];
  beforeAll(async () => {
    ({ page, errors } = await visit(await context()));
    await drop(page, kiosk);
  });
  afterAll(() => page.context().close());

  it('show the plan in wood, paint, fixing and pages', async () => {
    await openStep(page, 'Wood');
    await openSub(page, 'Pieces');
    const labels = new Set(made.joinery.pieces.map((p) => p.label));
    expect(await seen(page)).toContain(`0 of ${cuts} cut`);
    expect(await page.locator('.piece-card').count()).toBe(labels.size);
    await openSub(page, 'Boards & sheets');
    const { boards, boardsBound, sheets, sheetsBound } = made.cutting;
    expect(await page.locator('.board-drawing').count()).toBe(boards.length);
    expect(await page.locator('.sheet-drawing').count()).toBe(sheets.length);
    const proved = [...boardsBound, ...sheetsBound].filter((b) => b.proved).length;
    expect(await page.getByText('Least possible, proved').count()).toBe(proved);
    await openSub(page, 'Shopping');
    expect(await seen(page)).toContain(`Total ${formatMoney(made.total, kiosk.measure.currency)}`);

    await openStep(page, 'Paint');
    await openSub(page, 'Amounts');
    expect(await page.locator('.amounts tbody tr').count()).toBe(made.finish.uses.length);

    await openStep(page, 'Fastening');
    await openSub(page, 'Order of work');
    expect(await page.locator('.steps > li').count()).toBe(made.marks.steps.length);
    await openSub(page, 'Brads & screws');
    const driven = made.fastening.parts.reduce((sum, p) => sum + p.at.length, 0);
    expect(await page.locator('.map-brads circle').count()).toBe(driven);
    await openSub(page, 'Marks');
    const marks = made.marks.sticks.reduce((sum, s) => sum + s.marks.length, 0);
    expect(await page.locator('.stick tbody tr').count()).toBe(marks);
    await openSub(page, 'Weight');
    expect(await seen(page)).toContain(formatMass(made.load.added, kiosk.measure));

    await openStep(page, 'Pages');
    const pages = made.patterns.reduce((sum, s) => sum + s.pages.length, 0);
    expect(await seen(page)).toContain(`${pages} pages, on Letter`);
    expect(await page.locator('.thumb').count()).toBe(pages);
    await page.locator('.thumb').first().click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);

    await openStep(page, 'Checks');
    expect(await seen(page)).toContain(`${made.joinery.pieces.length} pieces`);
    expect(await set(page, made.fold.floorClear)).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Tightest position' }).click();
    expect(await page.getByRole('slider', { name: 'Lowered by' }).inputValue()).toBe(
      String(Math.round(made.fold.worst * 2) / 2),
    );
  });

  it('keeps ticks on the device and out of the design', async () => {
    await openStep(page, 'Wood');
    await openSub(page, 'Boards & sheets');
    await page.locator('.ticks input').first().check();
    await openSub(page, 'Pieces');
    expect(await seen(page)).toContain(`1 of ${cuts} cut`);
    await page.reload();
    await openStep(page, 'Wood');
    await openSub(page, 'Pieces');
    expect(await seen(page)).toContain(`1 of ${cuts} cut`);
    expect(await undo(page).isDisabled()).toBe(true);
  });

  it('turns a stencil bridge by keys as one step of undo', async () => {
    await openStep(page, 'Letters');
    await openSub(page, 'Making');
    await page.getByLabel('What is shown').selectOption({ label: 'Stencil' });
    const bridge = page.getByRole('slider', { name: 'Bridge 1 of island 1' });
    const before = Number(await bridge.getAttribute('aria-valuenow'));
    await bridge.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
    await page.getByText('1 island with bridges set by hand.').waitFor();
    const turned = ((before + 15 + 540) % 360) - 180;
    await expect.poll(async () => Number(await bridge.getAttribute('aria-valuenow'))).toBe(turned);
    await undo(page).click();
    await expect.poll(() => page.getByText('with bridges set by hand').count()).toBe(0);
  });

  it('corrects the printer from what the ruler read, on the device', async () => {
    await openStep(page, 'Pages');
    await openSub(page, 'Printer');
    const across = field(page, 'The ruler across reads');
    const should = await across.inputValue();
    // 99.2 % of the length that it should read.
    await across.fill(`${should.replace('"', '')} * 0.992`);
    await across.press('Enter');
    await page.getByText('Printed at 99.2 × 100% of true size; corrected.').waitFor();
    const kept = await page.evaluate(() => localStorage.getItem('showface:printer'));
    expect(JSON.parse(kept ?? '{}').x).toBeCloseTo(0.992, 6);
    expect(await undo(page).isDisabled()).toBe(true);
  });

  it('plays the swing where motion is welcome, and steps where it is not', async () => {
    await openStep(page, 'Checks');
    const slider = page.getByRole('slider', { name: 'Lowered by' });
    const stow = async () => {
      await page.getByRole('button', { name: 'Stowed', exact: true }).click();
      expect(await slider.inputValue()).toBe('0');
    };
    await stow();
    await page.getByRole('button', { name: 'Next position' }).click();
    expect(await slider.inputValue()).toBe('15');
    await wish(page, { reducedMotion: 'no-preference' });
    await stow();
    await page.getByRole('button', { name: 'Play the swing' }).click();
    await expect.poll(async () => Number(await slider.inputValue())).toBeGreaterThan(5);
    await page.getByRole('button', { name: 'Stop' }).click();
    await wish(page, { reducedMotion: 'reduce' });
  });

  it('says why a file is no font, and keeps one that is', async () => {
    await openStep(page, 'Letters');
    await openSub(page, 'Look');
    const input = page.locator('input[type="file"]');
    await input.setInputFiles({
      name: 'photo.ttf',
      mimeType: 'font/ttf',
      buffer: Buffer.from('This is a letter, not a font.'.repeat(20)),
    });
    await page.getByRole('alert').filter({ hasText: '“photo.ttf” is not a .ttf' }).waitFor();
    await input.setInputFiles({
      name: 'mine.woff',
      mimeType: 'font/woff',
      buffer: readFileSync(RYE),
    });
    await page.getByRole('radio', { name: 'mine' }).waitFor();
    await expect.poll(() => page.getByRole('radio', { name: 'mine' }).isChecked()).toBe(true);
  });

  it('takes prices from a spreadsheet as one step, or says which cells it cannot use', async () => {
    await openStep(page, 'Wood');
    await openSub(page, 'Stock & saw');
    const input = page.locator('input[aria-label="Open prices"]');
    const list = (price: string) => ({
      name: 'yard.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(
        `kind,id,name,container,length_mm,width_mm,price\nstock,pine-1x3,,,2438.4,,${price}\nstock,pine-1x4,,,2438.4,,8.88\n`,
      ),
    });
    await input.setInputFiles(list('seven'));
    await page.getByRole('alert').filter({ hasText: 'Row 2, column price: “seven”' }).waitFor();
    await input.setInputFiles(list('7.77'));
    const own = page.getByRole('region', { name: 'Your own stock and prices' });
    await expect.poll(() => own.getByRole('heading', { level: 4 }).count()).toBe(2);
    await undo(page).click();
    await expect.poll(() => own.getByRole('heading', { level: 4 }).count()).toBe(0);
  });

  it('lets go of a rule that cannot hold', async () => {
    const rule = kiosk.rules.find((r) => r.kind === 'set');
    if (!rule) throw new Error('The kiosk has no set rule.');
    const clash: Design = {
      ...kiosk,
      rules: [...kiosk.rules, { ...rule, id: 'clash', distance: rule.distance + 40 }],
    };
    await drop(page, { ...clash, name: 'Rules that clash' });
    await openStep(page, 'Checks');
    const broken = page.getByRole('region', { name: /Rules that cannot hold/ });
    await broken.getByRole('button').first().click();
    await expect.poll(() => broken.count()).toBe(0);
    expect(await undo(page).isDisabled()).toBe(false);
  });

  it('shows on the face what a check speaks of', async () => {
    // A ceiling two meters up is lower than the bed stands.
    await drop(page, { ...kiosk, name: 'Low ceiling', bed: { ...kiosk.bed, ceiling: 1950 } });
    await openStep(page, 'Checks');
    await page
      .getByRole('button', { name: /^Casing hits the ceiling/ })
      .first()
      .click();
    await expect
      .poll(() => page.getByRole('treeitem', { name: /^Casing/ }).getAttribute('aria-selected'))
      .toBe('true');
    expect(await page.locator('.side-view .touched').count()).toBeGreaterThan(0);
    expect(errors).toEqual([]);
  });
});
