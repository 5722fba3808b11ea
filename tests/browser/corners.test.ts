import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { drop, field, heard, onPage, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const spot = (page: Page, x: number, y: number) => onPage(page, inches(x), inches(y));

async function click(page: Page, x: number, y: number): Promise<void> {
  const at = await spot(page, x, y);
  await page.mouse.click(at.x, at.y);
}

/** Drags with Alt, so that nothing snaps. */
async function dragFreely(page: Page, from: readonly [number, number], to: readonly [number, number]) {
  const [a, b] = [await spot(page, ...from), await spot(page, ...to)];
  await page.mouse.move(a.x, a.y);
  await page.keyboard.down('Alt');
  await page.mouse.down();
  await page.mouse.move(b.x, b.y, { steps: 4 });
  await page.mouse.up();
  await page.keyboard.up('Alt');
}

const corner = (page: Page, number: number, axis: 'left' | 'bottom') =>
  field(page, `Corner ${number}, from the ${axis}`);
/** A measure that a hand on the screen has set, in inches; a pixel is about an eighth of one. */
const near = async (page: Page, number: number, axis: 'left' | 'bottom', inchesOff: number) => {
  const text = await corner(page, number, axis).inputValue();
  const found = /^(\d+)?(?: ?(\d+)\/(\d+))?/.exec(text);
  const value = Number(found?.[1] ?? 0) + (found?.[2] ? Number(found[2]) / Number(found[3]) : 0);
  return { number, axis, off: Math.abs(value - inchesOff) < 0.3 };
};
const isNear = (number: number, axis: 'left' | 'bottom') => ({ number, axis, off: true });

describe('the path tool', () => {
  it('sets corners one by one, takes the last one back, and closes on the first', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, { ...plainDesign(), parts: [] });
    await page.getByRole('radio', { name: 'Draw a trim path, corner by corner' }).click();
    await page.keyboard.down('Alt');
    await click(page, 8, 20);
    await click(page, 32, 20);
    await click(page, 35, 62);
    await page.keyboard.up('Alt');
    await expect.poll(() => heard(page)).toContain('Corner 3 is set.');
    await page.keyboard.press('Backspace');
    await page.keyboard.down('Alt');
    await click(page, 32, 60);
    await click(page, 20, 66);
    await click(page, 8, 20);
    await page.keyboard.up('Alt');
    await page.getByRole('treeitem', { name: /frame/i }).waitFor();
    expect(await page.getByRole('button', { name: /^Delete corner/ }).count()).toBe(4);
    expect(await page.getByLabel('Closed: the last corner runs to the first').isChecked()).toBe(true);
    // The box begins at the first corner, 8 in and 20 in from the face's own.
    expect(await near(page, 3, 'left', 24)).toEqual(isNear(3, 'left'));
    expect(await near(page, 3, 'bottom', 40)).toEqual(isNear(3, 'bottom'));
    // Undone as one step, not corner by corner.
    await page.locator('.canvas').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(0);

    // Enter ends an open path, Escape leaves no trace of one.
    await page.getByRole('radio', { name: 'Draw a trim path, corner by corner' }).click();
    await click(page, 10, 30);
    await click(page, 30, 30);
    await page.keyboard.press('Escape');
    await click(page, 10, 40);
    await click(page, 30, 40);
    await page.keyboard.press('Enter');
    await page.getByRole('treeitem', { name: /trim/i }).waitFor();
    expect(await page.getByRole('button', { name: /^Delete corner/ }).count()).toBe(2);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('corners of a drawn outline', () => {
  /** A gable of three corners, 20 by 20 in, with its lower left at 10 and 30 in. */
  const gable = (): Design => {
    const box = { x: inches(10), y: inches(30), w: inches(20), h: inches(20) };
    const panel = newPart('panel', { id: 'gable', name: 'Gable', box, finish: 'ground' });
    const points = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 0.5, v: 1 },
    ];
    return { ...plainDesign(), parts: [{ ...panel, shape: { form: 'polygon', points } }] };
  };

  it('are pulled, added between, moved by keys, typed and taken away, and sides are bowed', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, gable());
    await page.getByRole('treeitem', { name: /Gable/ }).click();
    expect(await corner(page, 3, 'left').inputValue()).toBe('10"');

    // The ridge goes 4 in to the right; the box around the corners stays as it was.
    await dragFreely(page, [20, 50], [24, 50]);
    await expect.poll(() => near(page, 3, 'left', 14)).toEqual(isNear(3, 'left'));
    await expect
      .poll(() => heard(page))
      .toMatch(/^Moved corner 3 of Gable: 2[34].* from the left, (49|50).* from the bottom$/m);

    // A plus a quarter along the lower edge becomes a corner 5 in below it: the box grows by that.
    await dragFreely(page, [15, 30], [20, 25]);
    await expect.poll(() => page.getByRole('button', { name: /^Delete corner/ }).count()).toBe(4);
    expect(await near(page, 2, 'left', 10)).toEqual(isNear(2, 'left'));
    expect(await near(page, 1, 'bottom', 5)).toEqual(isNear(1, 'bottom'));

    await corner(page, 2, 'left').fill('9');
    await corner(page, 2, 'left').press('Enter');
    await corner(page, 1, 'bottom').fill('6');
    await corner(page, 1, 'bottom').press('Enter');
    await expect.poll(() => corner(page, 1, 'bottom').inputValue()).toBe('6"');
    // Keys move the corner whose field was used last, by an inch with Shift.
    await page.locator('.canvas').focus();
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(() => corner(page, 1, 'bottom').inputValue()).toBe('7"');
    await page.getByRole('button', { name: 'Delete corner 2' }).click();
    await expect.poll(() => page.getByRole('button', { name: /^Delete corner/ }).count()).toBe(3);
    // Three are the least.
    expect(await page.getByRole('button', { name: 'Delete corner 1' }).isDisabled()).toBe(true);
    await page.locator('.canvas').focus();
    for (let i = 0; i < 6; i++) await page.keyboard.press('Control+z');
    await expect.poll(() => corner(page, 3, 'left').inputValue()).toBe('10"');

    // The middle of the lower edge is carried 4 in down: an arc of that rise, in one step.
    await dragFreely(page, [20, 30], [20, 26]);
    await expect.poll(() => heard(page)).toMatch(/^Side 1 of Gable: rise (3|4)/m);
    expect(await field(page, 'Side').inputValue()).toBe('rise');
    await page.keyboard.press('Control+z');
    await expect.poll(() => field(page, 'Side').inputValue()).toBe('straight');
    // The same by keys: 20 in wide, a half circle of 10 in hangs 10 in below its corners.
    await field(page, 'Side').selectOption({ label: 'Arc by its radius' });
    await field(page, 'Radius').fill('10');
    await field(page, 'Radius').press('Enter');
    await expect.poll(() => corner(page, 1, 'bottom').inputValue()).toBe('10"');
    await field(page, 'Corner').selectOption({ label: 'Rounded' });
    await expect.poll(() => field(page, 'Size').inputValue()).toBe('1"');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
