import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/measure/units.ts';
import { bytesOf, drop, onPage, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const dropFile = (page: Page, text: string) =>
  page.evaluate((json) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([json], 'part.json', { type: 'application/json' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
  }, text);

const card = (page: Page, name: string) => page.locator('.own').getByRole('button', { name, exact: true });
const group = (page: Page, name: RegExp) => page.getByRole('treeitem', { name });

async function act(page: Page, name: string, entry: string): Promise<void> {
  await page.getByRole('button', { name: `Actions on ${name}` }).click();
  await page.getByRole('menuitem', { name: entry }).click();
}

describe('building parts of one’s own', () => {
  it('are kept of what is selected, found, named, put on the face, saved, deleted and dropped again', async () => {
    const device = await context({ acceptDownloads: true });
    const { page, errors } = await visit(device);
    await drop(page, plainDesign());
    await page.locator('.canvas').focus();
    await page.keyboard.press('Control+a');
    await page.getByRole('button', { name: 'Keep as a building part' }).first().click();
    await act(page, 'My building part', 'Rename');
    await page.getByLabel('Name of the building part').fill('Shed front');
    await page.keyboard.press('Enter');
    await card(page, 'Shed front').waitFor();

    const search = page.getByRole('searchbox', { name: 'Search building parts' });
    await search.fill('SHED');
    await expect.poll(() => page.locator('.built').count()).toBe(1);
    await search.fill('no such thing');
    await page.getByText('No building part is called so.').waitFor();
    await search.fill('');

    // By the mouse into the face, back by one step, and by a key.
    await card(page, 'Shed front').scrollIntoViewIfNeeded();
    const from = await card(page, 'Shed front').boundingBox();
    const to = await onPage(page, inches(20), inches(40));
    if (!from) throw new Error('no card');
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 5 });
    await page.mouse.up();
    await group(page, /^Shed front 1/).waitFor();
    await page.keyboard.press('Control+z');
    await group(page, /^Shed front 1/).waitFor({ state: 'detached' });
    await page.getByRole('tab', { name: 'Layout' }).click();
    await card(page, 'Shed front').focus();
    await page.keyboard.press('Enter');
    await group(page, /^Shed front 1/).waitFor();
    await page.getByRole('tab', { name: 'Layout' }).click();

    const saving = page.waitForEvent('download');
    await act(page, 'Shed front', 'Save to a file');
    const file = (await bytesOf(await saving)).toString('utf8');
    await act(page, 'Shed front', 'Delete');
    await card(page, 'Shed front').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Put it back' }).click();
    await card(page, 'Shed front').waitFor();
    await act(page, 'Shed front', 'Delete');
    await dropFile(page, file);
    await card(page, 'Shed front').waitFor();
    await dropFile(page, file.replace('"showfaceAssembly": 1', '"showfaceAssembly": 2'));
    await page.getByText(/newer version of this tool/).waitFor();
    await expect.poll(() => page.locator('.own').count()).toBe(1);

    // It is of the device, not of the design.
    await page.reload();
    await page.getByRole('tab', { name: 'Layout' }).click();
    await card(page, 'Shed front').waitFor();
    expect(errors).toEqual([]);
    await device.close();
  });
});

describe('a building part that was altered', () => {
  it('keeps that under other answers, tells what is lost, comes back by undo, and is taken apart', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, { ...plainDesign(), parts: [] });
    await page.getByRole('tab', { name: 'Layout' }).click();
    await page.getByRole('button', { name: 'Paneled door', exact: true }).focus();
    await page.keyboard.press('Enter');
    await group(page, /^Paneled door 1/).waitFor();
    // One part has a finish of its own, as has one that single panels have no place for.
    for (const name of [/^Left stile/, /^Muntin 1/]) {
      await group(page, name).click();
      await page.getByLabel('Finish', { exact: true }).selectOption({ label: 'Ground' });
    }
    await group(page, /^Paneled door 1/).click();
    await page.getByLabel('Panels', { exact: true }).fill('1');
    await page.keyboard.press('Enter');
    const lost = page.getByRole('alert').filter({ hasText: 'Muntin 1 (Paneled door 1)' });
    await lost.waitFor();
    await group(page, /^Muntin 1/).waitFor({ state: 'detached' });
    const finish = async () => {
      await group(page, /^Left stile/).click();
      return page.getByLabel('Finish', { exact: true }).locator('option:checked').textContent();
    };
    expect(await finish()).toBe('Ground');
    await page.keyboard.press('Control+z');
    await group(page, /^Muntin 1/).waitFor();
    expect(await finish()).toBe('Ground');
    await group(page, /^Paneled door 1/).click();
    await page.getByRole('button', { name: 'Take apart' }).click();
    await page.getByLabel('Panels', { exact: true }).waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
    await page.getByLabel('Panels', { exact: true }).waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
