import type { Locator, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { drop, field, heard, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** The plain face with its panel centered across, and its left stile set off the face's edge at two distances at once. */
function ruledDesign(): Design {
  const face = (side: 'low' | 'high') => ({ of: 'face', side });
  const off = (id: string, distance: number) => ({
    id,
    kind: 'set' as const,
    axis: 'x' as const,
    edge: { of: 'left', side: 'low' as const },
    from: face('low'),
    distance: inches(distance),
  });
  return {
    ...plainDesign(),
    rules: [
      { id: 'mid', kind: 'center', axis: 'x', parts: ['panel'], low: face('low'), high: face('high') },
      off('near', 5),
      off('far', 6),
    ],
  };
}

async function open(design: Design, options = {}): Promise<{ page: Page; errors: string[] }> {
  const { page, errors } = await visit(await context(options));
  await drop(page, design);
  return { page, errors };
}

async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('treeitem', { name: new RegExp(name) }).click();
  await page.getByRole('tabpanel', { name }).waitFor();
}

/** Presses a control by key, as who works without a mouse does. */
async function press(control: Locator): Promise<void> {
  await control.focus();
  await control.press('Enter');
}

const inFocus = (control: Locator): Promise<void> => control.and(control.page().locator(':focus')).waitFor();
const said = (page: Page) => page.locator('[aria-live=polite].hidden-text').allTextContents();
const spoken = async (page: Page) => (await said(page)).join(' ').trim();
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

describe('every control that disappears hands its focus on', () => {
  it('to the pane of a bench that has to be fetched first', async () => {
    const page = await (await context()).newPage();
    let bring = () => {};
    const wanted = new Promise<void>((resolve) => {
      bring = resolve;
    });
    await page.route(/\/Bench-[^/]*\.js$/, async (route) => {
      await wanted;
      await route.continue();
    });
    await page.goto(inject('app'));
    await press(page.getByRole('button', { name: /^Empty bed/ }));
    await page.locator('.first').waitFor({ state: 'hidden' });
    bring();
    await inFocus(page.locator('.pane-body'));
  });

  it('in the rules of a part', async () => {
    const { page, errors } = await open(ruledDesign());
    await choose(page, 'Left stile');
    const pane = page.getByRole('tabpanel', { name: 'Left stile' });
    const add = pane.getByRole('button', { name: 'Add a rule' });
    await press(add);
    await inFocus(pane.getByRole('group', { name: 'Add a rule' }).getByLabel('Rule'));
    await press(pane.getByRole('button', { name: 'Cancel' }));
    await inFocus(add);
    await press(add);
    await press(pane.getByRole('button', { name: 'Hold it this way' }));
    await inFocus(add);
    // Of three rules the first goes: the next one's button has the focus; the last one's goes to what follows.
    const drops = pane.getByRole('button', { name: /^Remove the rule/ });
    expect(await drops.count()).toBe(3);
    await press(drops.first());
    await expect.poll(() => drops.count()).toBe(2);
    await inFocus(drops.first());
    await press(drops.last());
    await expect.poll(() => drops.count()).toBe(1);
    await inFocus(add);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('among rules that fight, and where nothing is left to undo', async () => {
    const { page } = await open(ruledDesign());
    await openStep(page, 'Checks');
    const pane = page.getByRole('tabpanel', { name: 'Checks' });
    await press(pane.getByRole('button', { name: /^Remove this one/ }).first());
    await expect.poll(() => pane.getByRole('button', { name: /^Remove this one/ }).count()).toBe(0);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('.pane') !== null))
      .toBe(true);
    await press(undo(page));
    await expect.poll(() => undo(page).isDisabled()).toBe(true);
    await inFocus(page.getByRole('button', { name: /^Redo/ }));
    await page.context().close();
  });

  it('into the view at the saw and back', async () => {
    const { page } = await open(plainDesign());
    await openStep(page, 'Wood');
    const there = page.getByRole('button', { name: 'One piece at a time, at the saw' });
    await press(there);
    await inFocus(page.locator('.saw-body'));
    await press(page.getByRole('button', { name: 'All pieces' }));
    await press(page.locator('.saw-row').nth(1));
    await inFocus(page.locator('.saw-body'));
    await press(page.getByRole('button', { name: 'Back to the drawing' }));
    await inFocus(there);
    await page.context().close();
  });
});

describe('arrow keys on a part that rules hold', () => {
  it('name the rule, do nothing, and offer to let it go', async () => {
    const { page } = await open(ruledDesign());
    await choose(page, 'Door panel');
    await page.locator('.canvas').focus();
    await page.keyboard.press('ArrowRight');
    const alert = page.getByRole('alert');
    expect(await alert.textContent()).toMatch(/Door panel does not move: a rule holds it/);
    expect(await alert.getByRole('listitem').count()).toBe(1);
    expect(await spoken(page)).not.toMatch(/from the left/);
    expect(await undo(page).isDisabled()).toBe(true);
    // Across the rule it moves, and what was offered goes.
    await page.keyboard.press('ArrowUp');
    await alert.waitFor({ state: 'detached' });
    await expect.poll(() => heard(page)).toMatch(/^Door panel: .* from the bottom/m);
    await page.keyboard.press('ArrowRight');
    await press(alert.getByRole('button', { name: 'Remove the rule and move' }));
    await inFocus(page.locator('.canvas'));
    await expect.poll(() => heard(page)).toMatch(/^Door panel: .* from the left/m);
    // One step back: the rule holds again.
    await page.keyboard.press('Control+z');
    await page.keyboard.press('ArrowRight');
    await alert.waitFor();
    await page.keyboard.press('Alt+ArrowRight');
    await alert.waitFor({ state: 'detached' });
    await page.keyboard.press('ArrowRight');
    expect(await alert.count()).toBe(0);
    await page.context().close();
  });
});

// WCAG 2.2, 2.1.4 Character Key Shortcuts: turned off, or active only on focus.
describe('single keys', () => {
  it('act on the drawing alone, and not at all once they are turned off', async () => {
    const { page } = await open(plainDesign());
    const scale = () => page.locator('.canvas').getAttribute('data-scale');
    const before = await scale();
    for (const at of [
      undo(page),
      page.getByRole('treeitem').first(),
      page.getByRole('radio', { name: /^Pan the/ }),
    ]) {
      await at.focus();
      for (const key of ['+', '=', '-', '?', '0']) await page.keyboard.press(key);
      expect(await page.getByRole('dialog').count()).toBe(0);
      expect(await scale()).toBe(before);
    }
    await page.locator('.canvas').focus();
    await page.keyboard.press('+');
    await expect.poll(scale).not.toBe(before);
    await page.keyboard.press('0');
    await expect.poll(scale).toBe(before);

    const single = page.getByRole('menuitemcheckbox', { name: /Single keys/ });
    await page.getByRole('button', { name: 'Settings' }).click();
    expect(await single.getAttribute('aria-checked')).toBe('true');
    await single.click();
    await page.reload();
    await page.locator('.canvas canvas').first().waitFor();
    await page.locator('.canvas').focus();
    const kept = await scale();
    for (const key of ['+', '?']) await page.keyboard.press(key);
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await scale()).toBe(kept);
    await page.context().close();
  });
});

describe('a layout that breaks', () => {
  it('is told: what changed, by how much, and how many checks came or went', async () => {
    const { page } = await open(plainDesign());
    const step = page.getByRole('navigation').getByRole('button', { name: 'Checks' });
    await openStep(page, 'Checks');
    const count = async () =>
      Number(/(\d+) to fix or look at/.exec((await step.textContent()) ?? '')?.[1] ?? 0);
    const listed = () => page.locator('.check-row.error, .check-row.warning').count();
    expect(await count()).toBe(await listed());
    const before = await count();
    await openStep(page, 'Layout');
    await choose(page, 'Left stile');
    // From 60 in to 90 in it stands out over the upper edge of the face.
    const height = field(page, 'Height');
    await height.fill('90');
    await height.press('Enter');
    await expect.poll(() => heard(page)).toMatch(/Left stile: .* 30 inches taller/);
    await expect.poll(() => heard(page), { timeout: 60_000 }).toMatch(/more to fix or look at, \d+ in all/);
    const after = await count();
    expect(after).toBeGreaterThan(before);
    expect(await heard(page)).toContain(`${after - before} more to fix or look at, ${after} in all.`);
    await undo(page).click();
    await expect
      .poll(() => heard(page), { timeout: 60_000 })
      .toContain(`${after - before} fewer to fix or look at, ${before} in all.`);
    await page.context().close();
  });
});

describe('forced colors', () => {
  it('show one text in a field, and mark what is chosen', async () => {
    const { page } = await open(plainDesign(), { forcedColors: 'active' });
    await choose(page, 'Left stile');
    const shown = await field(page, 'Height').evaluate((el) => getComputedStyle(el).opacity);
    expect(shown).toBe('0');
    const looks = (control: Locator) =>
      control.evaluate((el) => `${getComputedStyle(el).backgroundColor} ${getComputedStyle(el).color}`);
    const rail = page.getByRole('navigation').getByRole('button');
    const marked: readonly (readonly [Locator, Locator])[] = [
      [rail.nth(1), rail.nth(0)],
      [page.getByRole('radio', { name: 'Select' }), page.getByRole('radio', { name: /^Pan the/ })],
      [
        page.getByRole('treeitem', { name: /Left stile/ }),
        page.getByRole('treeitem', { name: /Right stile/ }),
      ],
      [page.getByRole('tab', { name: 'Left stile' }), page.getByRole('tab', { name: 'Layout' })],
    ];
    for (const [chosen, other] of marked) expect(await looks(chosen)).not.toBe(await looks(other));
    await field(page, 'Height').focus();
    const ring = page.locator('.input:focus-within');
    expect(await ring.evaluate((el) => getComputedStyle(el).outlineStyle)).toBe('solid');
    await openStep(page, 'Paint');
    const under = (tab: Locator) => tab.evaluate((el) => getComputedStyle(el).borderBottomColor);
    expect(await under(page.getByRole('tab', { name: 'Amounts' }))).not.toBe(
      await under(page.getByRole('tab', { name: 'Finishes' })),
    );
    const chips = await page
      .locator('.pane .chip')
      .evaluateAll((all) => all.map((c) => getComputedStyle(c).backgroundColor));
    expect(new Set(chips).size).toBeGreaterThan(1);
    await page.context().close();
  });
});

describe('at the saw', () => {
  it('each piece is spoken as it comes up, and the page is named after it', async () => {
    const { page } = await open(plainDesign());
    await openStep(page, 'Wood');
    expect(await page.title()).toBe('Wood · Plain face · Showface');
    await page.getByRole('button', { name: 'One piece at a time, at the saw' }).click();
    await page.locator('.saw-card').waitFor({ timeout: 60_000 });
    const piece = () => page.locator('.saw-what h2').textContent();
    const label = await page.locator('.saw-label').textContent();
    expect(await page.locator('.caution[data-hazard=saw]').textContent()).toMatch(/hands clear of the blade/);
    expect(await page.title()).toBe(`Piece ${label} · Plain face · Showface`);
    const first = (await piece()) ?? '';
    await page.getByRole('button', { name: 'Next' }).click();
    await expect.poll(piece).not.toBe(first);
    // The other stile of 60 in, cut square.
    const other = (await piece()) ?? '';
    await expect
      .poll(() => spoken(page))
      .toMatch(
        new RegExp(
          `^Piece ${label}, ${other}: 60 inches. Left end: Square. Right end: Square. Board \\d of \\d`,
        ),
      );
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => spoken(page)).toMatch(new RegExp(`^Piece ${label}, ${first}: 60 inches`));
    await page.getByRole('button', { name: /^Mark as cut/ }).click();
    await expect
      .poll(() => spoken(page))
      .toMatch(new RegExp(`^Piece ${label} checked off. 1 of \\d+. Piece ${label}, ${other}: 60 inches`));
    await page.context().close();
  });
});

/** How many tools lie wholly within the drawing, and how many are cut off. */
const toolsInSight = (page: Page) =>
  page.evaluate(() => {
    const room = document.querySelector('.drawing')?.getBoundingClientRect();
    const cut = [...document.querySelectorAll('.tool')].filter((tool) => {
      const at = tool.getBoundingClientRect();
      const tray = tool.closest('.tray')?.getBoundingClientRect();
      if (!room || !tray || at.width < 38) return true;
      return [room, tray].some(
        (of) => at.left < of.left || at.right > of.right || at.top < of.top || at.bottom > of.bottom,
      );
    }).length;
    return { in: document.querySelectorAll('.tool').length - cut, cut };
  });

describe('a phone on its side', () => {
  it.each([
    [844, 390],
    [740, 360],
    [1280, 720],
  ])('shows the whole face clear of the tools at %i x %i', async (width, height) => {
    const { page } = await open(plainDesign(), { viewport: { width, height } });
    // A mattress of 38 in by 75 in gives the face its size; its corners are what the ruler's view says.
    const seen = await page.locator('.canvas').evaluate((el) => {
      const at = el.getBoundingClientRect();
      const trays = [...document.querySelectorAll('.tray')].map((tray) => {
        const r = tray.getBoundingClientRect();
        return {
          left: r.left - at.left,
          right: r.right - at.left,
          top: r.top - at.top,
          bottom: r.bottom - at.top,
        };
      });
      const { scale, left, base } = (el as HTMLElement).dataset;
      return {
        trays,
        scale: Number(scale),
        left: Number(left),
        base: Number(base),
        high: at.height,
      };
    });
    const measures = await page.locator('.face-cell').textContent();
    const [w = 0, h = 0] = [...(measures ?? '').matchAll(/(\d+)(?: (\d+)\/(\d+))?"/g)].map(
      ([, whole, over = '0', under = '1']) => inches(Number(whole) + Number(over) / Number(under)),
    );
    expect(w * h).toBeGreaterThan(0);
    const face = {
      left: seen.left,
      right: seen.left + w * seen.scale,
      top: seen.base - h * seen.scale,
      bottom: seen.base,
    };
    const over = seen.trays.filter(
      (t) => t.left < face.right && t.right > face.left && t.top < face.bottom && t.bottom > face.top,
    );
    expect(over).toEqual([]);
    expect(face.top).toBeGreaterThan(0);
    expect(face.bottom).toBeLessThan(seen.high);
    expect(await toolsInSight(page)).toEqual({ in: 13, cut: 0 });
    await page.context().close();
  });
});

describe('without the drawing', () => {
  it('the list tells each part, and the table tells, sorts and changes all of them', async () => {
    const { page, errors } = await open(ruledDesign());
    const row = page.getByRole('treeitem', { name: /^Left stile/ });
    const name = await row.getAttribute('aria-label');
    expect(name).toMatch(
      /^Left stile, Strip, .+ inches wide, .+ inches high, .+ from the left, .+, 1 check$/,
    );
    const open_ = page.getByRole('button', { name: 'All parts as a table' });
    await press(open_);
    const board = page.getByRole('dialog', { name: 'All parts as a table' });
    await board
      .getByText(/^The face is /)
      .first()
      .waitFor();
    const rows = board.locator('tbody tr');
    const column = (at: number) =>
      rows.evaluateAll(
        (all, n) =>
          all.map(
            (tr) =>
              tr.children[n]?.querySelector('[aria-hidden]')?.textContent ??
              tr.children[n]?.textContent ??
              '',
          ),
        at,
      );
    const widths = (texts: readonly string[]) => texts.map((text) => Number.parseFloat(text));
    const sort = board.getByRole('button', { name: 'Width' });
    await press(sort);
    await board.locator('th[aria-sort=ascending]', { hasText: 'Width' }).waitFor();
    const up = widths(await column(2));
    expect(up).toEqual([...up].sort((a, b) => a - b));
    await press(sort);
    await board.locator('th[aria-sort=descending]', { hasText: 'Width' }).waitFor();
    expect(widths(await column(2))).toEqual(up.reverse());

    // A part is placed and let off a rule from here alone.
    await press(board.getByRole('button', { name: 'Left stile' }));
    await press(board.getByRole('button', { name: /^Remove the rule/ }).first());
    const left = board.getByLabel('From the left').first();
    await left.fill('7 1/2');
    await left.press('Enter');
    await expect.poll(() => left.inputValue()).toBe('7 1/2"');
    await expect
      .poll(() =>
        rows.filter({ hasText: 'Left stile' }).locator('td').nth(3).locator('[aria-hidden]').textContent(),
      )
      .toBe('7 1/2"');
    // What is seen is what is copied, once.
    const copied = await rows
      .filter({ hasText: 'Left stile' })
      .locator('td')
      .nth(3)
      .evaluate((cell) => {
        getSelection()?.selectAllChildren(cell);
        return getSelection()?.toString();
      });
    expect(copied).toBe('7 1/2"');
    await page.keyboard.press('Escape');
    await inFocus(open_);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('a field brings back its value selected, tells round limits, and undoes what it just took', async () => {
    const { page } = await open(ruledDesign());
    await choose(page, 'Door panel');
    const height = field(page, 'Height');
    const before = await height.inputValue();
    const selected = () =>
      height.evaluate((el) =>
        el instanceof HTMLInputElement ? el.value.slice(el.selectionStart ?? 0, el.selectionEnd ?? 0) : '',
      );
    await height.fill('90000');
    await height.press('Enter');
    await page.getByText(/^At most \d+(,\d+)?"\.$/).waitFor();
    await height.press('Escape');
    expect(await height.inputValue()).toBe(before);
    expect(await selected()).toBe(before);
    await height.fill('12 1/2');
    await height.press('Enter');
    await expect.poll(() => height.inputValue()).toBe('12 1/2"');
    await height.press('Control+z');
    await expect.poll(() => height.inputValue()).toBe(before);
    await page.context().close();
  });

  it('a measure on the drawing says which of what it is', async () => {
    const { page } = await open(ruledDesign());
    await choose(page, 'Door panel');
    await page.getByRole('button', { name: /^[\d /]+ inch(es)?: width of .*panel\. Change it$/ }).waitFor();
    await choose(page, 'Left stile');
    await page.getByRole('button', { name: /^5 inches: .*Left stile is 5 inches.*Change it$/ }).waitFor();
    await page.context().close();
  });
});
