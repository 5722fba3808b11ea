import { expect, it } from 'vitest';
import { inches } from '../../src/measure/units.ts';
import { drop, field, onPage, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

it('a part has a menu by the right button and by a key, a name by a double click, and its place in the list by a drag', async () => {
  const { page, errors } = await visit(await context());
  await drop(page, plainDesign());
  const names = () => page.locator('.tree-name').allTextContents();
  const row = (name: string) => page.getByRole('treeitem', { name: new RegExp(`^${name}`) });

  const panel = await onPage(page, inches(20), inches(40));
  await page.mouse.click(panel.x, panel.y, { button: 'right' });
  const menu = page.getByRole('menu', { name: 'Door panel' });
  await menu.getByRole('menuitem', { name: 'Duplicate' }).click();
  await menu.waitFor({ state: 'detached' });
  await row('Door panel 2').waitFor();
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menu', { name: 'Door panel 2' }).waitFor();
  await page.keyboard.press('Escape');
  // Back where the keys were, it is taken away by one.
  await page.keyboard.press('Delete');
  await row('Door panel 2').waitFor({ state: 'detached' });

  await row('Door panel').dblclick();
  await page.keyboard.type('Left door');
  await page.keyboard.press('Enter');
  await row('Left door').waitFor();
  await row('Left door').dblclick();
  await page.keyboard.type('Not so');
  await page.keyboard.press('Escape');
  await expect.poll(names).toEqual(['Left stile', 'Right stile', 'Left door']);

  const [from, to] = [await row('Left door').boundingBox(), await row('Left stile').boundingBox()];
  if (!from || !to) throw new Error('no rows');
  await page.mouse.move(from.x + 80, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + 80, to.y + 3, { steps: 4 });
  await page.locator('[data-drop=before]').waitFor();
  await page.mouse.up();
  await expect.poll(names).toEqual(['Left door', 'Left stile', 'Right stile']);
  await page.mouse.move(from.x + 80, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + 80, to.y + to.height / 2, { steps: 4 });
  await page.locator('[data-drop=onto]').waitFor();
  await page.mouse.up();
  await expect.poll(() => field(page, 'Lies on').inputValue()).toBe('panel');
  expect(errors).toEqual([]);
  await page.context().close();
});
