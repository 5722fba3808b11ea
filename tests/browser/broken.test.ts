import { describe, expect, it } from 'vitest';
import { drop, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const WOOD = /WoodPane-.*\.js/;

describe('a part of the page that cannot be shown', () => {
  it('says so where its file does not come, and is there when it comes', async () => {
    const { page } = await visit(await context());
    await page.route(WOOD, (route) => route.abort());
    await drop(page, plainDesign());
    await page.getByRole('navigation').getByRole('button', { name: 'Wood' }).click();
    const broken = page.locator('.pane .broken');
    await broken.getByText('could not be loaded').waitFor();
    // Everything else works on.
    expect(await page.getByRole('treeitem', { name: /Door panel/ }).isVisible()).toBe(true);
    await page.getByRole('navigation').getByRole('button', { name: 'Checks' }).click();
    await page.locator('.job-pane').waitFor();
    await page.getByRole('navigation').getByRole('button', { name: 'Wood' }).click();
    await page.unroute(WOOD);
    await broken.getByRole('button', { name: 'Try again' }).click();
    const wood = page
      .getByRole('tabpanel', { name: 'Wood' })
      .getByRole('heading', { name: 'Wood', exact: true });
    await wood.or(broken).first().waitFor({ state: 'attached' });
    // Some browsers remember of a file that it did not come for as long as the page is open.
    if ((await wood.count()) === 0) {
      await page.locator('.saved-cell', { hasText: 'Yes' }).waitFor();
      await broken.getByRole('button', { name: 'Reload' }).click();
      await page.getByRole('treeitem', { name: /Door panel/ }).waitFor();
    }
    await openStep(page, 'Wood');
    expect(await broken.count()).toBe(0);
    await page.context().close();
  });

  it('leaves a way to the shelf, and the next start opens the shelf instead of that design', async () => {
    const device = await context();
    const { page } = await visit(device);
    await drop(page, plainDesign());
    await page.locator('.saved-cell', { hasText: 'Yes' }).waitFor();
    // A drawing that throws while it is put up.
    await page.addInitScript(() => {
      if (location.hash !== '#throw') return;
      window.ResizeObserver = class {
        constructor() {
          throw new Error('no surface');
        }
      } as unknown as typeof ResizeObserver;
    });
    await page.goto(`${page.url().split('#')[0]}?again#throw`);
    const broken = page.locator('.broken').first();
    await broken.getByText('Nothing of the design is lost').waitFor();
    expect(await broken.textContent()).toContain('no surface');
    // The next start, sound again, stands at the shelf and says why; the design opens from there.
    await page.goto(`${page.url().split('?')[0]}?sound`);
    await page.getByText('it was not opened again').waitFor();
    await page.locator('button.kept-open', { hasText: plainDesign().name }).click();
    await page.locator('.canvas canvas').first().waitFor();
    // It stood, so it is begun with again from now on.
    await page.locator('.saved-cell', { hasText: 'Yes' }).waitFor();
    await page.reload();
    await page.getByRole('treeitem', { name: /Door panel/ }).waitFor();
    await device.close();
  });

  it('gives its way to the shelf by a button', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    await page.route(WOOD, (route) => route.abort());
    await page.getByRole('navigation').getByRole('button', { name: 'Wood' }).click();
    await page.locator('.pane .broken').getByRole('button', { name: 'Other designs' }).click();
    await page.locator('button.kept-open', { hasText: plainDesign().name }).waitFor();
    await page.context().close();
  });
});
