import { expect, it } from 'vitest';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import { drop, onPage, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** Something that follows by a rule, and something that lies in the way. */
function follower(): Design {
  const rule: Rule = {
    id: 'r',
    kind: 'set',
    axis: 'x',
    edge: { of: 'panel', side: 'low' },
    from: { of: 'left', side: 'high' },
    distance: 100,
  };
  return { ...plainDesign(), rules: [rule] };
}

/** A plain design, its first part, and where on the page the middle of that is. */
async function opened() {
  const { page, errors } = await visit(await context());
  const design = plainDesign();
  const [left] = design.parts;
  if (!left) throw new Error('no part to drag');
  await drop(page, design);
  const at = await onPage(page, left.box.x + left.box.w / 2, left.box.y + left.box.h / 2);
  return { page, errors, left, at };
}

/** Rows and columns; the first row follows its first strip sideways, the first column upward: the rest stays. */
function grid(): Design {
  const plain = plainDesign();
  const [strip] = plain.parts;
  if (!strip) throw new Error('no part to lay');
  const id = (c: number, r: number) => `p${c}-${r}`;
  const parts = Array.from({ length: 48 }, (_, i): Part => {
    const [c, r] = [i % 6, Math.floor(i / 6)];
    const box = { ...strip.box, x: 150 + c * 110, y: 150 + r * 200, h: 150 };
    return { ...strip, id: id(c, r), name: id(c, r), box };
  });
  const after = (axis: 'x' | 'y', of: string, before: string, distance: number): Rule => {
    const edge = { of, side: 'low' } as const;
    return { id: `${axis}${of}`, kind: 'set', axis, edge, from: { of: before, side: 'high' }, distance };
  };
  const rules = [
    ...Array.from({ length: 5 }, (_, c) => after('x', id(c + 1, 0), id(c, 0), 46.5)),
    ...Array.from({ length: 7 }, (_, r) => after('y', id(0, r + 1), id(0, r), 50)),
  ];
  return { ...plain, parts, rules };
}

it.each([
  ['something that follows', follower],
  ['a row and a column that follow', grid],
])('a drag with %s leaves the very picture that comes of drawing everything anew', async (_, make) => {
  const { page, errors } = await visit(await context());
  const design = make();
  const [left] = design.parts;
  if (!left) throw new Error('no part to drag');
  await drop(page, design);
  // The plan brings its own redraw; it has to be through before.
  await openStep(page, 'Checks');
  await openStep(page, 'Layout');
  const at = await onPage(page, left.box.x + left.box.w / 2, left.box.y + left.box.h / 2);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  for (let i = 1; i <= 30; i++) await page.mouse.move(at.x + 2.3 * i, at.y - Math.sin(i / 3) * 20);

  const picture = () =>
    page.evaluate(async () => {
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      const layers = [...document.querySelectorAll<HTMLCanvasElement>('.canvas canvas')];
      const [first] = layers;
      if (!first) throw new Error('no drawing');
      let drawn = 0;
      let hash = 2166136261;
      for (const layer of layers) {
        const data = layer.getContext('2d')?.getImageData(0, 0, layer.width, layer.height).data ?? [];
        for (const byte of data) {
          hash = Math.imul(hash ^ byte, 16777619);
          if (byte > 0 && byte < 255) drawn++;
        }
      }
      return { width: first.width, height: first.height, drawn, hash };
    });
  /** The picture once it stands: frames and the pane's fields come after the hand, and a new size after the window. */
  const standing = async (fits: (width: number) => boolean) => {
    let last = await picture();
    for (let i = 0; i < 100; i++) {
      await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
      const now = await picture();
      if (now.hash === last.hash && fits(now.width)) return now;
      last = now;
    }
    throw new Error('The drawing never comes to rest.');
  };
  const step = await standing(() => true);
  await page.evaluate(() => {
    const layers = [...document.querySelectorAll<HTMLCanvasElement>('.canvas canvas')];
    const kept = layers.map((one) => one.getContext('2d')?.getImageData(0, 0, one.width, one.height).data);
    Object.assign(window, { kept });
  });
  const before = page.viewportSize();
  if (!before) throw new Error('a page without size');
  await page.setViewportSize({ width: before.width - 200, height: before.height - 100 });
  const other = await standing((width) => width !== step.width);
  await page.setViewportSize(before);
  const anew = await standing((width) => width === step.width);
  expect(other.hash).not.toBe(step.hash);
  expect(step.drawn).toBeGreaterThan(10_000);
  expect([anew.width, anew.height]).toEqual([step.width, step.height]);
  // A curve that the edge of an area cuts may round otherwise: by one step of 255, and no more.
  const farthest = await page.evaluate(() => {
    const { kept } = window as unknown as { readonly kept: readonly Uint8ClampedArray[] };
    let most = 0;
    document.querySelectorAll<HTMLCanvasElement>('.canvas canvas').forEach((one, k) => {
      const data = one.getContext('2d')?.getImageData(0, 0, one.width, one.height).data ?? [];
      for (let i = 0; i < data.length; i++)
        most = Math.max(most, Math.abs((data[i] ?? 0) - (kept[k]?.[i] ?? 0)));
    });
    return most;
  });
  expect(farthest).toBeLessThanOrEqual(1);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(errors).toEqual([]);
});

it('what is given in the pane after a drag leaves the part where the drag put it', async () => {
  const { page, errors, at } = await opened();
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.up();
  // The fields stand while the part is carried, and most of them show what they showed.
  const pane = page.locator('.inspector');
  const given = (label: string) => pane.getByLabel(label, { exact: true });
  const places = () =>
    Promise.all(['From the left', 'From the bottom'].map((one) => given(one).inputValue()));
  const before = await places();
  await page.mouse.down();
  for (let i = 1; i <= 20; i++) await page.mouse.move(at.x + 3 * i, at.y - 2 * i);
  await expect.poll(places).not.toEqual(before);
  await page.mouse.up();
  await page.locator('.release-bar').waitFor();
  const there = await places();
  expect(there[0]).not.toBe(before[0]);
  await given('Fastened with').selectOption('screws');
  expect(await places()).toEqual(there);
  await given('Name').fill('Carried');
  await page.keyboard.press('Enter');
  await given('Locked in place').check();
  expect(await places()).toEqual(there);
  expect(await given('Fastened with').inputValue()).toBe('screws');
  expect(await given('Name').inputValue()).toBe('Carried');
  expect(await given('Locked in place').isChecked()).toBe(true);
  expect(errors).toEqual([]);
});

it('a press that goes on as a drag leaves the pane alone until it is let go; a click shows the part with its release', async () => {
  const { page, errors, left, at } = await opened();
  // All of it within one task, so that no time passes in which the hand could be said to rest.
  const [carried, letGo, clicked, byKey] = await page.evaluate(async ({ x, y }) => {
    const canvas = document.querySelector<HTMLElement>('.canvas');
    if (!canvas) throw new Error('no drawing');
    canvas.setPointerCapture = () => {};
    const send = (type: string, dx: number) =>
      canvas.dispatchEvent(
        new PointerEvent(type, {
          ...{ bubbles: true, cancelable: true, pointerId: 1, pointerType: 'mouse', isPrimary: true },
          ...{ button: type === 'pointermove' ? -1 : 0, buttons: type === 'pointerup' ? 0 : 1 },
          ...{ clientX: x + dx, clientY: y },
        }),
      );
    const press = (key: string) =>
      canvas.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    const seen = async () => {
      for (let i = 0; i < 10; i++) await null;
      const tab = document.querySelector('.pane [role=tab][aria-selected=true]')?.textContent;
      return [tab, document.querySelector('.inspector') ? 'fields' : 'none'].join(', ');
    };
    send('pointerdown', 0);
    for (let i = 1; i <= 8; i++) send('pointermove', 4 * i);
    const during = await seen();
    send('pointerup', 32);
    const after = await seen();
    press('Escape');
    await seen();
    send('pointerdown', 32);
    send('pointerup', 32);
    const click = await seen();
    press('Escape');
    await seen();
    send('pointerdown', 32);
    press('Escape');
    const key = await seen();
    send('pointerup', 32);
    return [during, after, click, key];
  }, at);
  expect(carried).toBe('Layout, none');
  const part = `${left.name}, fields`;
  expect([letGo, clicked, byKey]).toEqual([part, part, part]);
  await page.keyboard.press('Escape');
  // A hand that rests on it sees its fields while it still holds it.
  await page.mouse.move(at.x + 32, at.y);
  await page.mouse.down();
  await page.locator('.inspector').waitFor();
  await page.mouse.up();
  expect(errors).toEqual([]);
});
