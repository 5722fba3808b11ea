import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { drop, field, onPage, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** How far off the frame around several parts their handles stand, in pixels. */
const HANDLE_OUT = 14;

/** A face with one sign, lettered in two colors by stencil. */
function signDesign(text: string): Design {
  const box = { x: inches(5), y: inches(56), w: inches(30), h: inches(8) };
  const part = newPart('sign', { id: 'sign', name: 'Sign', box, finish: 'ground' });
  const lettering = {
    ...part.lettering,
    lines: [{ text }],
    make: 'stencil' as const,
    font: 'lato',
    capHeight: inches(4),
    outline: { width: 2, finish: 'ground' },
  };
  return { ...plainDesign(), parts: [{ ...part, lettering }] };
}

describe('on the drawing', () => {
  it('changes a measure by clicking its dimension', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await page.getByRole('button', { name: /^16 inches: / }).click();
    await page.keyboard.type('15 1/2');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page, 'Width').inputValue()).toBe('15 1/2"');
    await page.context().close();
  });

  it('selects by a frame, sizes together, groups, moves as one and opens the group again', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    const from = await onPage(page, inches(2), inches(70));
    const to = await onPage(page, inches(30), inches(2));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 4 });
    await page.mouse.up();
    await page.getByRole('tab', { name: '2 selected' }).waitFor();
    const width = field(page, 'Width of all');
    await expect.poll(() => width.inputValue()).toBe('23"');
    await width.fill('25');
    await page.keyboard.press('Enter');
    await expect.poll(() => width.inputValue()).toBe('25"');
    // By the handle beside the middle of the right side, with a measure typed on the way.
    const side = await onPage(page, inches(30), inches(34));
    await page.mouse.move(side.x + HANDLE_OUT, side.y);
    await page.mouse.down();
    await page.mouse.move(side.x + 40, side.y, { steps: 3 });
    await page.keyboard.type('27');
    await page.keyboard.press('Enter');
    await page.mouse.up();
    await expect.poll(() => width.inputValue()).toBe('27"');
    await page.keyboard.press('Control+z');
    await expect.poll(() => width.inputValue()).toBe('25"');
    await page.keyboard.press('Control+g');
    await page.getByRole('treeitem', { name: /Group 1/ }).waitFor();
    await page.keyboard.press('Shift+ArrowUp');
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await expect.poll(() => field(page, 'From the bottom').inputValue()).toBe('5"');
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await expect.poll(() => field(page, 'From the bottom').inputValue()).toBe('31"');
    await page.context().close();
  });

  it('letters a sign in place', async () => {
    const { page } = await visit(await context());
    await drop(page, { ...plainDesign(), parts: [] });
    await page.getByRole('radio', { name: 'Draw a sign' }).click();
    const at = await onPage(page, inches(20), inches(60));
    await page.mouse.click(at.x, at.y);
    // What it says is typed at once where it was drawn; later a double click opens it.
    for (const text of ['FISH & ICE', 'FISH']) {
      await page.locator('.letter-field:focus').waitFor();
      await page.keyboard.type(text);
      await page.keyboard.press('Control+Enter');
      await expect.poll(() => field(page, 'Lettering').inputValue()).toBe(text);
      await page.mouse.dblclick(at.x, at.y);
    }
    await page.context().close();
  });

  it('gives letters a size of their own, which stays on them while words are typed', async () => {
    const { page } = await visit(await context());
    await drop(page, signDesign('PIER N° 4'));
    await page.getByRole('navigation').getByRole('button', { name: 'Letters' }).click();
    const line = page.getByRole('textbox', { name: 'Line 1', exact: true });
    await line.press('Home');
    for (let i = 0; i < 'PIER N'.length; i += 1) await line.press('ArrowRight');
    await line.press('Shift+ArrowRight');
    await page.getByRole('button', { name: 'Give “°” a size of their own' }).click();
    const size = page.getByRole('group', { name: 'Size of “°”' });
    await size.getByLabel('Size', { exact: true }).fill('70');
    await page.keyboard.press('Enter');
    // In place on the drawing: other words, the small letter stays small.
    const at = await onPage(page, inches(20), inches(60));
    await page.mouse.dblclick(at.x, at.y);
    await page.locator('.letter-field').fill('OLD PIER N° 4');
    await page.keyboard.press('Control+Enter');
    await expect.poll(() => line.inputValue()).toBe('OLD PIER N° 4');
    await expect.poll(() => size.getByLabel('Size', { exact: true }).inputValue()).toBe('70');
    await page.getByRole('button', { name: 'Give “°” the size of the line' }).click();
    await expect.poll(() => size.count()).toBe(0);
    await page.context().close();
  });

  it('drags a bridge of a stencil to another side of its island, in any color, and takes it back', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, signDesign('O'));
    await openStep(page, 'Letters');
    const shown = field(page, 'What is shown');
    for (const color of ['outline', 'fill']) {
      await shown.selectOption(color);
      const bridge = page.getByRole('slider', { name: 'Bridge 1 of island 1' });
      const angle = async () => Number(await bridge.getAttribute('aria-valuenow'));
      const before = await angle();
      await bridge.scrollIntoViewIfNeeded();
      const grip = await bridge.locator('.bridge-dot').boundingBox();
      const island = await page.locator('.stencil-view').boundingBox();
      if (!grip || !island) throw new Error('no bridge to drag');
      await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
      await page.mouse.down();
      // To the right of the middle of the only island: 0 degrees, but for where in the island angles are taken from.
      await page.mouse.move(island.x + island.width * 0.75, island.y + island.height / 2, { steps: 5 });
      await expect.poll(async () => Math.abs(await angle())).toBeLessThan(25);
      await page.mouse.up();
      const undo = page.getByRole('button', { name: /^Undo/ });
      await expect.poll(() => undo.isEnabled()).toBe(true);
      await expect.poll(async () => Math.abs(await angle())).toBeLessThan(25);
      await page.keyboard.press('Control+z');
      await expect.poll(angle).toBe(before);
      await page.keyboard.press('Control+y');
      await expect.poll(async () => Math.abs(await angle())).toBeLessThan(25);
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('takes away the bridges of a stencil and adds them, by key, by pointer and in the list', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, signDesign('O'));
    await openStep(page, 'Letters');
    await field(page, 'What is shown').selectOption('fill');
    const bridges = page.getByRole('slider', { name: /of island 1$/ });
    await expect.poll(() => bridges.count()).toBe(2);
    await bridges.first().focus();
    await page.keyboard.press('Delete');
    await expect.poll(() => bridges.count()).toBe(1);
    // Pressed once more where the focus went, the key leaves the sign alone.
    await page.keyboard.press('Delete');
    await page.getByRole('button', { name: 'Delete bridge 1 of island 1' }).click();
    await expect.poll(() => bridges.count()).toBe(0);
    const loose = page.getByText(/would fall out/).first();
    await page.getByRole('tab', { name: 'Making' }).click();
    await loose.waitFor();
    // Far right on the border of the only island.
    const border = page.locator('.island-border');
    await border.scrollIntoViewIfNeeded();
    const right = await border.evaluate((path: SVGPathElement) => {
      const length = path.getTotalLength();
      const points = Array.from({ length: 400 }, (_, i) =>
        path.getPointAtLength((i * length) / 400).matrixTransform(path.getScreenCTM() ?? undefined),
      );
      const far = points.reduce((best, p) => (p.x > best.x ? p : best));
      return { x: far.x, y: far.y };
    });
    await page.mouse.click(right.x, right.y);
    await expect.poll(() => bridges.count()).toBe(1);
    expect(Math.abs(Number(await bridges.first().getAttribute('aria-valuenow')))).toBeLessThan(25);
    await page.getByRole('button', { name: 'Add a bridge' }).click();
    await expect.poll(() => bridges.count()).toBe(2);
    expect(await loose.count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => bridges.count()).toBe(1);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('copies parts, and puts them into another design', async () => {
    const { page } = await visit(await context({ permissions: ['clipboard-read', 'clipboard-write'] }));
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await page.keyboard.press('Control+c');
    await drop(page, { ...plainDesign(), name: 'Another face', parts: [] });
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(0);
    await page.locator('.canvas').focus();
    await page.keyboard.press('Control+v');
    await expect.poll(() => page.getByRole('treeitem', { name: /Door panel/ }).count()).toBe(1);
    await page.context().close();
  });
});

describe('the gap of a row', () => {
  const row = {
    id: 'row',
    kind: 'even',
    axis: 'x',
    parts: ['left', 'right'],
    low: { of: 'face', side: 'low' },
    high: { of: 'face', side: 'high' },
  } as const;

  it('is typed on the drawing: it says how many that takes, and one click makes them', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, { ...plainDesign(), rules: [{ ...row, mode: 'gaps' }] });
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.locator('button.dim.gap').first().click();
    await field(page, 'Gap between').fill('6');
    await field(page, 'Gap between').press('Enter');
    // A face 41 1/2 in wide: five strips of 2 1/2 in leave 29 in for six gaps.
    const offer = page.getByRole('button', { name: /^5 in the row: gaps of 4 13\/16/ });
    await offer.waitFor();
    await page.getByRole('button', { name: 'Just 6 inches, the row in the middle' }).waitFor();
    await expect.poll(() => offer.evaluate((el) => el === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    // The new ones are named by where they stand; the door panel stays what it was.
    await expect.poll(() => page.getByRole('treeitem', { name: /stile/i }).count()).toBe(5);
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(6);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(3);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('is held to a largest one in the list, which offers the parts that are missing', async () => {
    const { page } = await visit(await context());
    await drop(page, { ...plainDesign(), rules: [{ ...row, mode: 'most', most: 152.4 }] });
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.getByText('Gaps of 6" or less take 5 parts').first().waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'Add 3 like the last' }).click();
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(6);
    await expect.poll(() => page.getByText('or less take').count()).toBe(0);
    await page.context().close();
  });
});

describe('a part that a rule holds', () => {
  it('lets go of it along the axis it is carried, and of nothing else; with Alt nothing new holds it', async () => {
    const { page } = await visit(await context());
    const between = { low: { of: 'face', side: 'low' }, high: { of: 'face', side: 'high' } } as const;
    const even = {
      id: 'row',
      kind: 'even',
      axis: 'x',
      parts: ['left', 'right'],
      ...between,
      mode: 'gaps',
    } as const;
    const up = {
      id: 'up',
      kind: 'between',
      axis: 'y',
      part: 'left',
      ...between,
      insetLow: 0,
      insetHigh: 0,
    } as const;
    await drop(page, { ...plainDesign(), rules: [even, up] });
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    // 41 1/2 less two stiles of 2 1/2 leaves 36 1/2 for three gaps: 12 3/16 light each.
    await expect.poll(() => field(page, 'From the left').inputValue()).toMatch(/^12 3\/16"/);
    const drag = async (from: number, to: number) => {
      const a = await onPage(page, inches(from), inches(12));
      const b = await onPage(page, inches(to), inches(12));
      await page.mouse.move(a.x, a.y);
      await page.mouse.down();
      await page.mouse.move(b.x, b.y, { steps: 4 });
      await page.mouse.up();
    };
    await drag(13.4, 8.2);
    // It is out of the row, held by a distance of its own, and keeps its height.
    const rules = page.locator('.rules > ul');
    await expect.poll(() => rules.textContent()).not.toContain('equal gaps');
    await expect.poll(() => rules.locator('.rule-item').count()).toBe(2);
    expect(await field(page, 'Height').inputValue()).toBe('78"');
    await page.keyboard.down('Alt');
    await drag(8.2, 11.3);
    await page.keyboard.up('Alt');
    await expect.poll(() => rules.locator('.rule-item').count()).toBe(1);
    await page.context().close();
  });
});

describe('frames and arrays', () => {
  /** A door with a frame on it: 20 by 30 in, of 1 x 3 (2 1/2 in), so that 15 by 25 in are open. */
  const framedDoor = (): Design => {
    const box = { x: inches(10), y: inches(20), w: inches(20), h: inches(30) };
    const door = newPart('panel', { id: 'door', name: 'Door', box, finish: 'ground' });
    const frame = newPart('run', { id: 'frame', name: 'Door frame', box, stock: 'pine-1x3', finish: 'trim' });
    return { ...plainDesign(), parts: [door, { ...frame, on: 'door' }] };
  };

  it('divides the opening of the selected frame, on what the frame lies on', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, framedDoor());
    await page.getByRole('treeitem', { name: /Door frame/ }).click();
    await page.getByText('Divide a space').click();
    expect(await field(page, 'From, at the left').inputValue()).toBe('frame');
    await field(page, 'Rows').fill('1');
    await page.getByText('Strips at the borders too').click();
    await page.getByRole('button', { name: 'Divide it' }).click();
    await page.getByRole('treeitem', { name: /center stile/i }).click();
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('18 3/4"');
    expect(await field(page, 'Height').inputValue()).toBe('25"');
    expect(await field(page, 'Lies on').inputValue()).toBe('door');
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('repeats a part, and leaves single ones out on the drawing and by keys', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.getByText('Repeat it').click();
    await page.getByRole('button', { name: 'Make a row' }).click();
    const places = page.getByRole('table', { name: 'One by one' }).getByRole('button');
    await expect.poll(() => places.count()).toBe(3);
    // Stiles of 2 1/2 in with 2 in between: the second one runs from 9 1/2 to 12 in.
    const at = await onPage(page, inches(10.5), inches(20));
    await page.mouse.dblclick(at.x, at.y);
    await page.getByRole('button', { name: 'Left stile 2', pressed: true }).waitFor();
    await page.keyboard.press('Delete');
    await page.getByRole('button', { name: 'Left stile 2, left out' }).waitFor();
    await page.getByRole('button', { name: 'Left stile 2, left out' }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Left stile 3', pressed: true }).waitFor();
    await field(page, 'Its finish').selectOption('ground');
    await page.getByRole('button', { name: 'Left stile 3, Ground' }).waitFor();
    await page.locator('.canvas').focus();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Left stile 2', exact: true }).waitFor();
    expect(await page.getByRole('button', { name: /Ground$|left out$/ }).count()).toBe(0);
    await page.getByRole('button', { name: /gap between the parts of/ }).click();
    await page.keyboard.type('5');
    await page.keyboard.press('Enter');
    await expect.poll(() => places.count()).toBe(5);
    await field(page, 'Made as').selectOption('panel');
    await field(page, 'Grain').waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('an array in a group', () => {
  it('is reached by a double click, its members by another', async () => {
    const { page, errors } = await visit(await context());
    const plain = plainDesign();
    const box = { x: inches(6), y: inches(52), w: inches(30), h: inches(12) };
    const row = newPart('array', { id: 'row', name: 'Slats', box, stock: 'pine-1x2', finish: 'trim' });
    const groups = [{ id: 'both', name: 'Both', parts: ['row', 'panel'] }];
    await drop(page, { ...plain, parts: [...plain.parts.slice(2), row], groups });
    // Five slats of 1 1/2 in in 30 in leave six gaps of 3 3/4 in: the first one's middle is 4 1/2 in from the end.
    const at = await onPage(page, box.x + inches(4.5), box.y + inches(6));
    await page.mouse.dblclick(at.x, at.y);
    await page.getByRole('tab', { name: 'Slats' }).waitFor();
    await page.mouse.dblclick(at.x, at.y);
    await page.getByRole('button', { name: 'Slats 1', pressed: true }).waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('the stock palette', () => {
  it('drags a board onto the face, and leaves no trace beside it', async () => {
    const { page } = await visit(await context());
    await drop(page, { ...plainDesign(), parts: [] });
    const stock = page.getByRole('button', { name: /^Pine 1 x 4/ });
    await page.getByRole('button', { name: 'Paneled door' }).waitFor();
    await stock.scrollIntoViewIfNeeded();
    const box = await stock.boundingBox();
    if (!box) throw new Error('the stock is not on the page');
    const start = { x: box.x + 20, y: box.y + 10 };
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(start.x, start.y - 60, { steps: 3 });
    await page.mouse.up();
    expect(await page.getByRole('treeitem').count()).toBe(0);
    const to = await onPage(page, inches(20), inches(50));
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.mouse.up();
    await page.getByRole('treeitem', { name: /rail/i }).waitFor();
    // A dressed 1 x 4 is 3 1/2 in wide (PS 20).
    await expect.poll(() => field(page, 'Height').inputValue()).toBe('3 1/2"');
    await page.context().close();
  });
});

describe('rules that fight', () => {
  it('are named, and letting one go settles it', async () => {
    const { page } = await visit(await context());
    const plain = plainDesign();
    const set = (id: string, distance: number) =>
      ({
        id,
        kind: 'set',
        axis: 'x',
        edge: { of: 'panel', side: 'low' },
        from: { of: 'face', side: 'low' },
        distance: inches(distance),
      }) as const;
    await drop(page, { ...plain, rules: [set('near', 10), set('far', 14)] });
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await page.getByText('This cannot hold together with:').waitFor();
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('10"');
    await page.getByRole('button', { name: 'Remove that one' }).click();
    await expect.poll(() => field(page, 'From the left').inputValue()).toBe('14"');
    expect(await page.getByText('This cannot hold together with:').count()).toBe(0);
    await page.context().close();
  });
});
