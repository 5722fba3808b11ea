import { describe, expect, it } from 'vitest';
import { drop, openBrowser, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

describe('a design removed from the device', () => {
  it('is put back whole, is not begun with again, and goes for good when asked', async () => {
    const device = await context();
    const { page } = await visit(device);
    await drop(page, plainDesign());
    await expect.poll(() => page.locator('.saved-cell').textContent()).toContain('Yes');
    const { name } = plainDesign();

    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Other designs' }).click();
    await page.getByRole('button', { name: `Remove “${name}”` }).click();
    const again = await device.newPage();
    await again.goto(page.url());
    await again.getByRole('button', { name: `Put back “${name}”` }).click();
    await again.locator('button.kept-open', { hasText: name }).click();
    await again.getByRole('treeitem', { name: /Left stile/ }).waitFor();

    await again.getByRole('button', { name: 'File' }).click();
    await again.getByRole('menuitem', { name: 'Other designs' }).click();
    await again.getByRole('button', { name: `Remove “${name}”` }).click();
    await again.getByRole('button', { name: 'Delete for good' }).click();
    await expect.poll(() => again.getByText('Saved on this device').count()).toBe(0);
    await device.close();
  });
});
