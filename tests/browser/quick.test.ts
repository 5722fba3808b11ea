import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { bytesOf, drop, field, onPage, openBrowser, openStep, plainDesign, visit } from './bench.ts';
import { QuickHands, SLOW, type Slow, type Spot } from './quick.ts';

/**
 * Whatever the hand does counts, however late the page comes to it: keys and pointers are sent without waiting for
 * what they bring about, to every menu, list and handle.
 */
const { context } = openBrowser();

async function open(slow: Slow, design: Design) {
  const on = await context({ acceptDownloads: true, hasTouch: true });
  const { page, errors } = await visit(on);
  await drop(page, design);
  return { page, errors, hands: await QuickHands.on(on, page, slow) };
}

const focused = (page: Page) =>
  page.evaluate(
    () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent,
  );

const letters = (text: string) => [...text];

describe.each(SLOW)('keys sent at once, $name', (slow) => {
  it('choose from every menu the entry that they name', async () => {
    const { page, errors, hands } = await open(slow, { ...plainDesign(), parts: [] });
    await page.locator('.job-pane, .pane-body').first().waitFor();
    for (const menu of ['Add a part', 'File', 'Print & export', 'Settings']) {
      const button = page.getByRole('button', { name: menu, exact: true });
      await button.click();
      const entries = page.locator('.menu-item:not([aria-disabled=true]) > span:not(.menu-dot, .menu-hint)');
      // Exports can be chosen once there is a plan.
      await entries.first().waitFor({ timeout: 60_000 });
      const names = await entries.allTextContents();
      await page.keyboard.press('Escape');
      for (const [i, name] of names.entries()) {
        // Of a long menu the first two, one in the middle, and the last; on a slow processor the second and the last.
        const few = slow.rate > 1 ? [1] : [0, 1, names.length >> 1];
        if (!few.includes(i) && i < names.length - 1) continue;
        await button.focus();
        // By its name, and by arrows from the first one.
        await hands.keys('Enter', ...(i % 2 === 0 ? letters(name) : Array(i).fill('ArrowDown')));
        await expect.poll(() => focused(page)).toContain(name);
        await hands.keys('Escape');
        await expect.poll(() => focused(page)).toBe(menu);
      }
      expect(names.length).toBeGreaterThan(3);
    }
    // From opening to what it brings, and on into the fields of that.
    await page.getByRole('button', { name: 'Add a part' }).focus();
    await hands.keys('Enter', ...letters('Sign'), 'Enter');
    await page.getByRole('treeitem', { name: /sign/i }).waitFor();
    await page.getByRole('button', { name: 'Add a part' }).focus();
    await hands.keys(' ', 'End', ...Array(4).fill('ArrowUp'), ' ', 'Tab');
    await page.getByRole('treeitem', { name: /painted shape/i }).waitFor();
    await expect
      .poll(() => page.locator('.pane-body').evaluate((pane) => pane.contains(document.activeElement)))
      .toBe(true);
    expect(await page.getByRole('treeitem').count()).toBe(2);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('walk every list to what they lead to', async () => {
    const { page, errors, hands } = await open(slow, plainDesign());
    // Tools: drawn kinds stand after selecting, pushing and the path.
    await page.getByRole('radio', { name: 'Select and move' }).focus();
    await hands.keys('ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Enter');
    await page.getByRole('radio', { name: 'Draw a panel', checked: true }).waitFor();
    await hands.keys('Home', 'Enter');
    await page.getByRole('radio', { name: 'Select and move', checked: true }).waitFor();
    // How it is drawn.
    await page.getByRole('radio', { name: 'Color' }).focus();
    await hands.keys('ArrowLeft', 'Enter');
    await page.getByRole('radio', { name: 'Shadow', checked: true }).waitFor();
    // Parts, by arrows and by name, with a name typed over; then the tabs of the pane.
    await page.getByRole('treeitem', { name: /Left stile/ }).focus();
    await hands.keys('ArrowDown', 'ArrowDown', 'F2', ...letters('Hatch'), 'Enter');
    await page.getByRole('treeitem', { name: /Hatch/ }).waitFor();
    expect(await page.getByRole('treeitem', { name: /Door panel/ }).count()).toBe(0);
    await page.getByRole('treeitem', { name: /Hatch/ }).focus();
    await hands.keys(...letters('right st'), 'Enter');
    await page.getByRole('tab', { name: 'Right stile', selected: true }).waitFor();
    await page.getByRole('tab', { name: 'Right stile' }).focus();
    await hands.keys('ArrowLeft', 'ArrowLeft', 'ArrowLeft');
    await page.getByRole('tab', { name: 'Layout', selected: true }).waitFor();
    // Stocks.
    const stocks = page.locator('.stock');
    const third = await stocks.nth(2).locator('.stock-name').textContent();
    await stocks.first().focus();
    await hands.keys('ArrowDown', 'ArrowDown', 'Enter');
    await page.getByRole('treeitem', { name: /rail/i }).waitFor();
    await expect
      .poll(() =>
        field(page, 'Stock').evaluate((el: HTMLSelectElement) => el.selectedOptions[0]?.textContent),
      )
      .toContain(third);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('walk the tabs of a pane, the members of a row and the languages', async () => {
    const row = newPart('array', {
      id: 'row',
      name: 'Slats',
      box: { x: inches(6), y: inches(52), w: inches(30), h: inches(12) },
      stock: 'pine-1x2',
      finish: 'trim',
    });
    const { page, errors, hands } = await open(slow, { ...plainDesign(), parts: [row] });
    await page.getByRole('treeitem', { name: 'Slats' }).click();
    await page.getByRole('button', { name: 'Slats 1', exact: true }).focus();
    await hands.keys('ArrowRight', 'ArrowRight', 'ArrowRight', 'Delete');
    await page.getByRole('button', { name: /^Slats \d, left out$/ }).waitFor();
    expect(await page.getByRole('button', { name: /left out$/ }).textContent()).toBe('');
    await openStep(page, 'Wood');
    const tabs = page.locator('.sub-tab');
    const names = await tabs.allTextContents();
    await tabs.first().focus();
    await hands.keys('ArrowRight', 'ArrowRight', 'ArrowLeft', 'ArrowRight');
    await page.getByRole('tab', { name: names[2] ?? '', selected: true }).waitFor();
    expect(errors).toEqual([]);
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Other designs' }).click();
    await page.getByRole('radio', { name: 'English' }).focus();
    await hands.keys('ArrowRight', 'Enter');
    await page.getByRole('radio', { name: 'Deutsch', checked: true }).waitFor();
    await page.context().close();
  });

  it('keep what was typed into a field that something else is pressed after', async () => {
    const { page, errors, hands } = await open(slow, plainDesign());
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await field(page, 'Width').focus();
    const stile = await onPage(page, inches(6.25), inches(10));
    await hands.keys(...letters('17 1/4'));
    await hands.drag(stile, stile);
    await page.getByRole('tab', { name: 'Left stile', selected: true }).waitFor();
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    expect(await field(page, 'Width').inputValue()).toBe('17 1/4"');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

it('a file is saved with what is being typed', async () => {
  const on = await context({ acceptDownloads: true });
  // Where the browser asks for a place to save, nobody answers in a test.
  await on.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  const { page } = await visit(on);
  await drop(page, plainDesign());
  await page.getByRole('treeitem', { name: /Door panel/ }).click();
  await field(page, 'Width').focus();
  await page.keyboard.type('18');
  const coming = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const saved = JSON.parse((await bytesOf(await coming)).toString()) as Design;
  expect(saved.parts.find((p) => p.id === 'panel')?.box.w).toBeCloseTo(inches(18), 6);
  await expect.poll(() => field(page, 'Width').evaluate((el) => el === document.activeElement)).toBe(true);
  await on.close();
});

/** A stile, a panel, a frame with corners of its own, a keep-clear, all apart. */
function handled(): Design {
  const plain = plainDesign();
  const run = newPart('run', {
    id: 'run',
    name: 'Path',
    box: { x: inches(12), y: inches(55), w: inches(16), h: inches(10) },
    stock: 'pine-1x2',
    finish: 'trim',
  });
  const points = [
    { u: 0, v: 0 },
    { u: 1, v: 0 },
    { u: 1, v: 1 },
    { u: 0, v: 1 },
  ];
  const box = { x: inches(12), y: inches(8), w: inches(8), h: inches(6) };
  return {
    ...plain,
    parts: [...plain.parts, { ...run, path: { form: 'points', points, closed: true } }],
    keepClears: [{ id: 'hinge', name: 'Hinge', why: 'hinge', box, height: inches(1) }],
  };
}

describe.each(SLOW)('a pointer quicker than the page, $name', (slow) => {
  /** Inches on the face. */
  const HANDLES: readonly {
    readonly handle: string;
    readonly selected?: RegExp;
    readonly from: readonly [number, number];
    readonly off?: Spot;
    readonly to: readonly [number, number];
    readonly did: string;
  }[] = [
    { handle: 'a part', from: [20, 40], to: [23, 42], did: 'Moved Door panel' },
    { handle: 'a side', selected: /Door panel/, from: [28, 40], to: [25, 40], did: 'Resized Door panel' },
    {
      handle: 'the turning handle of a strip',
      selected: /Left stile/,
      from: [6.25, 34],
      // It stands 30 pixels beside the middle.
      off: { x: -30, y: 0 },
      to: [4, 20],
      did: 'Turned Left stile',
    },
    { handle: 'a corner', selected: /Path/, from: [28, 65], to: [26, 62], did: 'Moved corner 3 of Path' },
    {
      handle: 'the middle of a leg',
      selected: /Path/,
      from: [20, 55],
      to: [20, 53],
      did: 'Bowed side 1 of Path',
    },
    {
      handle: 'the plus of a leg',
      selected: /Path/,
      from: [16, 55],
      to: [16, 53],
      did: 'Added corner 2 of Path',
    },
    { handle: 'a keep-clear', from: [16, 11], to: [18, 12], did: 'Moved Hinge' },
    {
      handle: 'a side of a keep-clear',
      selected: /Hinge/,
      from: [20, 11],
      to: [23, 11],
      did: 'Resized Hinge',
    },
  ];

  it('carries every handle of the drawing, with moves and without', async () => {
    const { page, errors, hands } = await open(slow, handled());
    const undo = page.getByRole('button', { name: /^Undo/ });
    for (const { handle, selected, from, off, to, did } of HANDLES) {
      if (selected) await page.getByRole('treeitem', { name: selected }).click();
      const at = await onPage(page, inches(from[0]), inches(from[1]));
      const start = { x: at.x + (off?.x ?? 0), y: at.y + (off?.y ?? 0) };
      const end = await onPage(page, inches(to[0]), inches(to[1]));
      const between = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
      const direct = [start, end];
      // What a slow processor is late for is the end that comes with no move before it.
      for (const path of slow.rate > 1 ? [direct] : [[start, between, end], direct]) {
        await hands.drag(...path);
        await expect.poll(() => undo.getAttribute('aria-label'), { message: handle }).toBe(`Undo: ${did}`);
        await page.keyboard.press('Control+z');
        await expect.poll(() => undo.isDisabled(), { message: handle }).toBe(true);
        if (selected) await page.getByRole('treeitem', { name: selected }).click();
      }
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('draws, frames, pushes and pinches', async () => {
    const { page, errors, hands } = await open(slow, handled());
    const [a, b] = [await onPage(page, inches(3), inches(70)), await onPage(page, inches(9), inches(2))];
    await hands.drag(a, { x: a.x, y: b.y }, b);
    await page.getByRole('tab', { name: 'Left stile', selected: true }).waitFor();
    await page.getByRole('radio', { name: 'Draw a panel' }).click();
    await hands.drag(await onPage(page, inches(12), inches(18)), await onPage(page, inches(20), inches(24)));
    await page.getByRole('treeitem', { name: 'Bottom panel' }).waitFor();
    const view = () => page.locator('.canvas').getAttribute('data-left').then(Number);
    const left = await view();
    await page.getByRole('radio', { name: /^Pan the drawing/ }).click();
    await hands.drag(a, { x: a.x + 40, y: a.y });
    await expect.poll(view).toBeCloseTo(left + 40, 0);
    await page.getByRole('radio', { name: 'Select and move' }).click();
    const scale = () => page.locator('.canvas').getAttribute('data-scale').then(Number);
    const before = await scale();
    const middle = await onPage(page, inches(20), inches(40));
    const pair = (away: number) => [
      { x: middle.x - away, y: middle.y },
      { x: middle.x + away, y: middle.y },
    ];
    await hands.fingers(pair(30), pair(60));
    await expect.poll(scale).toBeCloseTo(before * 2, 3);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('brings stock onto the face', async () => {
    const { page, errors, hands } = await open(slow, { ...plainDesign(), parts: [] });
    const stock = page.getByRole('button', { name: /^Pine 1 x 4/ });
    await page.getByRole('button', { name: 'Paneled door' }).waitFor();
    await stock.scrollIntoViewIfNeeded();
    const box = await stock.boundingBox();
    if (!box) throw new Error('the stock is not on the page');
    const to = await onPage(page, inches(20), inches(50));
    await hands.drag({ x: box.x + 20, y: box.y + 10 }, to);
    await page.getByRole('treeitem', { name: /rail/i }).waitFor();
    // Let go where the pointer was, not in the middle: its middle is 50 in up, less half of its 3 1/2 in.
    await expect.poll(() => field(page, 'From the bottom').inputValue()).toMatch(/^48/);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('turns a bridge of a stencil', async () => {
    const part = newPart('sign', {
      id: 'sign',
      name: 'Sign',
      box: { x: inches(5), y: inches(56), w: inches(30), h: inches(8) },
      finish: 'ground',
    });
    const lettering = {
      ...part.lettering,
      lines: [{ text: 'O' }],
      make: 'stencil' as const,
      font: 'lato',
      capHeight: inches(4),
    };
    const { page, errors, hands } = await open(slow, { ...plainDesign(), parts: [{ ...part, lettering }] });
    await openStep(page, 'Letters');
    await field(page, 'What is shown').selectOption('fill');
    const bridge = page.getByRole('slider', { name: 'Bridge 1 of island 1' });
    await bridge.scrollIntoViewIfNeeded();
    const grip = await bridge.locator('.bridge-dot').boundingBox();
    const island = await page.locator('.stencil-view').boundingBox();
    if (!grip || !island) throw new Error('no bridge to drag');
    const start = { x: grip.x + grip.width / 2, y: grip.y + grip.height / 2 };
    const end = { x: island.x + island.width * 0.75, y: island.y + island.height / 2 };
    const turned = async () => Math.abs(Number(await bridge.getAttribute('aria-valuenow')));
    expect(await turned()).toBeGreaterThan(25);
    const undo = page.getByRole('button', { name: /^Undo/ });
    for (const path of [
      [start, { x: end.x, y: start.y }, end],
      [start, end],
    ]) {
      await hands.drag(...path);
      await expect.poll(() => undo.isEnabled()).toBe(true);
      await expect.poll(turned).toBeLessThan(25);
      await page.keyboard.press('Control+z');
      await expect.poll(turned).toBeGreaterThan(25);
      await openStep(page, 'Letters');
    }
    // Five degrees each, whatever the plan has come to meanwhile.
    const before = Number(await bridge.getAttribute('aria-valuenow'));
    await bridge.focus();
    await hands.keys('ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight');
    await expect.poll(() => bridge.getAttribute('aria-valuenow').then(Number)).toBe(before - 20);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
