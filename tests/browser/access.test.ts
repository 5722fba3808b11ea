import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drop, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const STEPS = ['Bed', 'Layout', 'Checks', 'Wood', 'Paint', 'Letters', 'Fixing', 'Pages'] as const;

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`);
}

describe.each(['light', 'dark'] as const)('without violations, %s', (colorScheme) => {
  it('on the first page', async () => {
    const { page } = await visit(await context({ colorScheme }));
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });

  it('on every step', async () => {
    const { page } = await visit(await context({ colorScheme }));
    await drop(page, plainDesign());
    for (const step of STEPS) {
      await openStep(page, step);
      expect({ step, found: await violations(page) }).toEqual({ step, found: [] });
    }
    await page.context().close();
  });

  it('with a part selected, and on a small screen', async () => {
    const { page } = await visit(await context({ colorScheme }));
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.getByRole('tabpanel', { name: 'Left stile' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    // So narrow, the list of parts is a tab of the pane.
    await page.getByRole('tab', { name: 'Parts' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });
});

describe('the page is as high as the window', () => {
  it.each([
    [844, 390],
    [390, 844],
    [1280, 720],
    [2560, 1440],
  ])('on every step at %i x %i', async (width, height) => {
    const { page } = await visit(await context({ viewport: { width, height } }));
    await drop(page, plainDesign());
    for (const step of STEPS) {
      await openStep(page, step);
      const high = await page.evaluate(() => document.documentElement.scrollHeight);
      expect({ step, high }).toEqual({ step, high: height });
    }
    await page.context().close();
  });
});

describe('nothing is clipped', () => {
  it.each([320, 360, 390, 760, 1024, 1200, 1920, 2560])('at %i pixels', async (width) => {
    const { page } = await visit(await context({ viewport: { width, height: 860 } }));
    await drop(page, plainDesign());
    const outside = await page.evaluate(() => {
      const wide = document.documentElement.clientWidth;
      return [...document.querySelectorAll('.title-block *, .rail-step, .pane-head *, .tray')]
        .filter((el) => {
          const r = el.getBoundingClientRect();
          return r.width > 1 && r.height > 1 && (r.right > wide + 1 || r.left < -1);
        })
        .map((el) => `${el.tagName}.${el.getAttribute('class')}`);
    });
    expect(outside).toEqual([]);
    await page.context().close();
  });
});
