import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drop, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

/** Writes a value of its own under the key of the shelf's list, as a damaged disk or another tool would. */
const damageList = (page: Page, value: unknown): Promise<void> =>
  page.evaluate(
    (list) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('showface');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('designs', 'readwrite');
          transaction.objectStore('designs').put(list, 'list');
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    value,
  );

describe('the list of kept designs', () => {
  it('is rebuilt from the designs, however it is damaged, and written whole again', async () => {
    const device = await context();
    const { page, errors } = await visit(device);
    const names = ['First face', 'Second face'];
    for (const name of names) {
      await drop(page, { ...plainDesign(), name });
      await page.locator('.saved-cell', { hasText: 'Yes' }).waitFor();
    }
    const damages: unknown[] = [
      null,
      'torn',
      { length: 3 },
      [],
      [null, 7, { id: 4 }, { id: 'gone', name: 'Gone', at: 1 }, { id: 'x', name: {}, at: 'then' }],
    ];
    for (const damage of damages) {
      await page.getByRole('button', { name: 'File' }).click();
      await page.getByRole('menuitem', { name: 'Other designs' }).click();
      await page.locator('.first').waitFor();
      await damageList(page, damage);
      await page.reload();
      const shelf = page.locator('button.kept-open');
      // The last one is on the bench again, or both are on the shelf; either way none is hidden.
      await page.locator('.first, .bench').first().waitFor();
      if ((await page.locator('.bench').count()) > 0) {
        await page.getByRole('button', { name: 'File' }).click();
        await page.getByRole('menuitem', { name: 'Other designs' }).click();
      }
      await shelf.first().waitFor();
      const shown = await shelf.locator('.first-name').allTextContents();
      expect(shown.toSorted(), JSON.stringify(damage)).toEqual(names);
      // Each with its picture, before the faces to begin with.
      await expect.poll(() => shelf.locator('.first-picture canvas').count()).toBe(2);
      const cards = await page.locator('button.kept-open, button.first-card').allTextContents();
      expect(
        cards
          .slice(0, 2)
          .map((text) => text.slice(0, 5))
          .toSorted(),
      ).toEqual(['First', 'Secon']);
      await shelf.filter({ hasText: 'First face' }).click();
      await page.getByRole('treeitem', { name: /Door panel/ }).waitFor();
    }
    expect(errors).toEqual([]);
    await device.close();
  });
});
