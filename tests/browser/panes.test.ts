import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openData } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import type { Tables } from '../../src/materials/types.ts';
import { formatMass, formatMoney, formatReading } from '../../src/measure/format.ts';
import { plan } from '../../src/plan/plan.ts';
import { drop, field, openBrowser, openStep, visit } from './bench.ts';

const { context } = openBrowser();

const file = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url));
const json = (path: string): unknown => JSON.parse(file(path).toString('utf8'));

const opened = openData(json('assets/starters/harbor-ticket-kiosk.json'));
if (!opened.ok) throw new Error('The kiosk starter does not open.');
const kiosk: Design = opened.design;

const TABLES = [
  'materials',
  'stocks',
  'brads',
  'screws',
  'containers',
  'glues',
  'tapes',
  'papers',
  'mattresses',
  'fonts',
];
const tables = Object.fromEntries(
  TABLES.map((name) => [name, json(`assets/materials/${name}.json`)]),
) as unknown as Tables;

/** The plan of the kiosk, made here: what the panes must show. */
const made = plan(kiosk, {
  tables,
  fonts: new Map(
    tables.fonts.map((f) => [f.id, new Uint8Array(file(`node_modules/${f.package}/${f.file}`))]),
  ),
  correction: { x: 1, y: 1 },
  language: 'en',
});

const SUBS: Readonly<Record<string, readonly string[]>> = {
  Checks: [],
  Wood: ['Pieces', 'Boards & sheets', 'Shopping', 'Joints', 'Stock & saw'],
  Paint: ['Amounts', 'Finishes', 'Light'],
  Letters: ['Words', 'Look', 'Making', 'Reading'],
  Fixing: ['Order of work', 'Brads & screws', 'Marks', 'Weight'],
  Pages: ['Pages', 'Paper', 'Printer'],
};

const openSub = (page: Page, sub: string) =>
  page.locator('.sub-list').getByRole('tab', { name: sub, exact: true }).click();

/** Text of the pane as it is seen, its spaces evened out. */
const seen = async (page: Page): Promise<string> =>
  (await page.locator('.job-pane').allInnerTexts()).join(' ').replace(/\s+/g, ' ');

/** How often a length stands in the pane, as it is read out. */
const spoken = (page: Page, mm: number) =>
  page.locator('.job-pane .hidden-text', { hasText: formatReading(mm, kiosk.measure) }).count();

async function violations(page: Page): Promise<string[]> {
  // What stands around the pane has its own test; the inside of a drawing is one picture.
  const { violations: found } = await new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .include('.pane')
    .exclude('.paper-drawing > g')
    .analyze();
  return found.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`);
}

describe('every pane opens', () => {
  it.each([
    { colorScheme: 'light' as const, width: 1440 },
    { colorScheme: 'dark' as const, width: 390 },
  ])(
    'without violations or errors, $colorScheme at $width pixels',
    async ({ colorScheme, width }) => {
      const { page, errors } = await visit(await context({ colorScheme, viewport: { width, height: 860 } }));
      await drop(page, kiosk);
      for (const [step, subs] of Object.entries(SUBS)) {
        await openStep(page, step);
        for (const sub of subs.length > 0 ? subs : ['']) {
          if (sub) await openSub(page, sub);
          expect({ step, sub, found: await violations(page) }).toEqual({ step, sub, found: [] });
          const wider = await page
            .locator('.pane-body:visible')
            .first()
            .evaluate((el) => el.scrollWidth - el.clientWidth);
          expect({ step, sub, wider }).toEqual({ step, sub, wider: 0 });
        }
      }
      expect(errors).toEqual([]);
      await page.context().close();
      // Twenty views, each looked through whole.
    },
    300_000,
  );
});

describe('the panes show the plan', () => {
  it('in wood, paint, fixing and pages', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, kiosk);

    await openStep(page, 'Wood');
    await openSub(page, 'Pieces');
    const labels = new Set(made.joinery.pieces.map((p) => p.label));
    expect(await seen(page)).toContain(`0 of ${made.joinery.pieces.length} cut`);
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

    await openStep(page, 'Fixing');
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
    expect(await seen(page)).toContain(`Pages: ${pages}, on Letter`);
    expect(await page.locator('.thumb').count()).toBe(pages);
    await page.locator('.thumb').first().click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);

    await openStep(page, 'Checks');
    expect(await seen(page)).toContain(`Pieces: ${made.joinery.pieces.length}.`);
    expect(await spoken(page, made.fold.floorClear)).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Tightest position' }).click();
    expect(await page.getByRole('slider', { name: 'Lowered by' }).inputValue()).toBe(
      String(Math.round(made.fold.worst * 2) / 2),
    );
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('work in the panes', () => {
  it('keeps ticks on the device and out of the design', async () => {
    const { page } = await visit(await context());
    await drop(page, kiosk);
    await openStep(page, 'Wood');
    await openSub(page, 'Boards & sheets');
    await page.locator('.ticks input').first().check();
    await openSub(page, 'Pieces');
    expect(await seen(page)).toContain(`1 of ${made.joinery.pieces.length} cut`);
    await page.reload();
    await openStep(page, 'Wood');
    await openSub(page, 'Pieces');
    expect(await seen(page)).toContain(`1 of ${made.joinery.pieces.length} cut`);
    expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
    await page.context().close();
  });

  it('turns a stencil bridge by keys as one step of undo', async () => {
    const { page } = await visit(await context());
    await drop(page, kiosk);
    await openStep(page, 'Letters');
    await openSub(page, 'Making');
    await page.getByLabel('What is shown').selectOption({ label: 'Stencil' });
    const bridge = page.getByRole('slider', { name: 'Bridge 1 of island 1' });
    const before = Number(await bridge.getAttribute('aria-valuenow'));
    await bridge.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
    await page.getByText('Islands with bridges set by hand: 1.').waitFor();
    const turned = ((before + 15 + 540) % 360) - 180;
    await expect.poll(async () => Number(await bridge.getAttribute('aria-valuenow'))).toBe(turned);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => page.getByText('Islands with bridges set by hand').count()).toBe(0);
    await page.context().close();
  });

  it('corrects the printer from what the ruler read, on the device', async () => {
    const { page } = await visit(await context());
    await drop(page, kiosk);
    await openStep(page, 'Pages');
    await openSub(page, 'Printer');
    const across = field(page, 'The ruler across reads');
    const should = await across.inputValue();
    // 99.2 % of the length that it should read.
    await across.fill(`${should.replace('"', '')} * 0.992`);
    await across.press('Enter');
    await page.getByText('Printed at 99.2 × 100 % of true size; corrected.').waitFor();
    const kept = await page.evaluate(() => localStorage.getItem('showface:printer'));
    expect(JSON.parse(kept ?? '{}').x).toBeCloseTo(0.992, 6);
    expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
    await page.context().close();
  });

  it('lets go of a rule that cannot hold', async () => {
    const rule = kiosk.rules.find((r) => r.kind === 'set');
    if (!rule) throw new Error('The kiosk has no set rule.');
    const clash: Design = {
      ...kiosk,
      rules: [...kiosk.rules, { ...rule, id: 'clash', distance: rule.distance + 40 }],
    };
    const { page } = await visit(await context());
    await drop(page, clash);
    await openStep(page, 'Checks');
    const broken = page.getByRole('region', { name: /Rules that cannot hold/ });
    await broken.getByRole('button').first().click();
    await expect.poll(() => broken.count()).toBe(0);
    expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(false);
    await page.context().close();
  });

  it('shows on the face what a check speaks of', async () => {
    const { page } = await visit(await context());
    // A ceiling two meters up is lower than the bed stands.
    await drop(page, { ...kiosk, bed: { ...kiosk.bed, ceiling: 1950 } });
    await openStep(page, 'Checks');
    await page
      .getByRole('button', { name: /^Casing hits the ceiling/ })
      .first()
      .click();
    await expect
      .poll(() => page.getByRole('treeitem', { name: /^Casing/ }).getAttribute('aria-selected'))
      .toBe('true');
    expect(await page.locator('.side-view .touched').count()).toBeGreaterThan(0);
    await page.context().close();
  });

  it('plays the swing where motion is welcome, and steps where it is not', async () => {
    for (const reducedMotion of ['no-preference', 'reduce'] as const) {
      const { page } = await visit(await context({ reducedMotion }));
      await drop(page, kiosk);
      await openStep(page, 'Checks');
      const slider = page.getByRole('slider', { name: 'Lowered by' });
      await page.getByRole('button', { name: 'Stowed', exact: true }).click();
      expect(await slider.inputValue()).toBe('0');
      if (reducedMotion === 'reduce') {
        await page.getByRole('button', { name: 'Next position' }).click();
        expect(await slider.inputValue()).toBe('15');
      } else {
        await page.getByRole('button', { name: 'Play the swing' }).click();
        await expect.poll(async () => Number(await slider.inputValue())).toBeGreaterThan(5);
        await page.getByRole('button', { name: 'Stop' }).click();
      }
      await page.context().close();
    }
  });

  it('says why a file is no font, and keeps one that is', async () => {
    const { page } = await visit(await context());
    await drop(page, kiosk);
    await openStep(page, 'Letters');
    await openSub(page, 'Look');
    const input = page.locator('input[type="file"]');
    await input.setInputFiles({
      name: 'photo.ttf',
      mimeType: 'font/ttf',
      buffer: Buffer.from('This is a letter, not a font.'.repeat(20)),
    });
    await page.getByRole('alert').filter({ hasText: '“photo.ttf” is not a .ttf' }).waitFor();
    const rye = tables.fonts.find((f) => f.id === 'rye');
    if (!rye) throw new Error('The tables have no such font.');
    await input.setInputFiles({
      name: 'mine.woff',
      mimeType: 'font/woff',
      buffer: file(`node_modules/${rye.package}/${rye.file}`),
    });
    await page.getByRole('radio', { name: 'mine' }).waitFor();
    await expect.poll(() => page.getByRole('radio', { name: 'mine' }).isChecked()).toBe(true);
    await page.context().close();
  });
});
