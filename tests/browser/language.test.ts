import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { de, starterNames } from '../../src/editor/words/de.ts';
import { es } from '../../src/editor/words/es.ts';
import { violations } from './axe.ts';
import { drop, openBrowser, openStep, plainDesign, resize, starterName, visit } from './bench.ts';

const { context } = openBrowser();

const STEPS = ['bed', 'layout', 'checks', 'wood', 'paint', 'lettering', 'fixing', 'pages'] as const;

/** Colors are no matter of language: they are looked at in English. */
const faults = (page: Page) => violations(page, undefined, false);

const language = (page: Page) => page.evaluate(() => document.documentElement.lang);

/** What is cut off at its own edge, or stands outside the window. */
const clipped = (page: Page) =>
  page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const look = '.title-block *, .rail-step, .pane-head *, .tray, .btn, .section-title, label, .tool-name';
    return [...document.querySelectorAll<HTMLElement>(look)]
      .filter((el) => {
        const r = el.getBoundingClientRect();
        if (r.width <= 2 || r.height <= 2 || !el.checkVisibility()) return false;
        const style = getComputedStyle(el);
        // Names of designs are cut with an ellipsis on purpose; what scrolls is not cut.
        const cut =
          (style.overflowX === 'hidden' || style.overflowX === 'clip') &&
          style.textOverflow !== 'ellipsis' &&
          el.scrollWidth > el.clientWidth + 1;
        return r.right > wide + 1 || r.left < -1 || cut;
      })
      .map((el) => `${el.tagName}.${el.getAttribute('class')}: ${el.textContent?.slice(0, 40)}`);
  });

describe('German', () => {
  const name = starterName('harbor-ticket-kiosk');

  it.skipIf(name === null)('is chosen, shown at once, measures in millimeters, and stays', async () => {
    const { page, errors } = await visit(await context());
    expect(await language(page)).toBe('en');
    await page.getByRole('radio', { name: 'Deutsch' }).click();
    await page.getByText(de['first.lead']).waitFor();
    expect(await language(page)).toBe('de');
    expect(await faults(page)).toEqual([]);
    // Starters and what is in them come with German names.
    await page.getByRole('button', { name: starterNames[name ?? ''] ?? '' }).click();
    await page.getByRole('treeitem', { name: /^Leisten/ }).waitFor();
    for (const step of STEPS) {
      await page
        .getByRole('navigation')
        .getByRole('button', { name: de[`step.${step}`] })
        .waitFor();
    }
    await expect.poll(() => page.locator('.face-cell').textContent()).toMatch(/\d+,\d mm × \d/);
    await page.getByRole('navigation').getByRole('button', { name: de['step.fixing'] }).click();
    await page.getByText(/mit den Anreißlatten ab den beiden Bezugskanten/).waitFor({ timeout: 60_000 });
    await page.getByRole('navigation').getByRole('button', { name: de['step.wood'] }).click();
    await page
      .getByText(/Kiefer/)
      .first()
      .waitFor();
    await page.reload();
    await page.getByRole('navigation').getByRole('button', { name: de['step.paint'] }).waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('is what a browser that asks for it gets, and is left in the settings', async () => {
    const { page } = await visit(await context({ locale: 'de-AT' }));
    expect(await language(page)).toBe('de');
    await drop(page, plainDesign());
    await page.getByRole('button', { name: de['menu.settings'] }).click();
    await page.getByRole('menuitemradio', { name: 'English' }).click();
    await page.getByRole('navigation').getByRole('button', { name: 'Paint' }).waitFor();
    expect(await language(page)).toBe('en');
    await page.context().close();
  });

  it('is neither clipped nor faulty on any step, in a narrow window and in a wide one', async () => {
    const { page } = await visit(await context({ locale: 'de-DE' }));
    const look = async (step: string, check: (page: Page) => Promise<string[]>) => {
      for (const width of [390, 1440]) {
        await resize(page, width, 900);
        expect({ step, width, found: await check(page) }).toEqual({ step, width, found: [] });
      }
    };
    await look('first', clipped);
    await drop(page, plainDesign());
    for (const step of STEPS) {
      await openStep(page, de[`step.${step}`]);
      await look(step, async () => [...(await clipped(page)), ...(await faults(page))]);
    }
    // The same page in Spanish: what is spoken of it differs in words alone.
    await page.getByRole('button', { name: de['menu.settings'] }).click();
    await page.getByRole('menuitemradio', { name: 'Español' }).click();
    await page.getByRole('navigation').getByRole('button', { name: es['step.paint'] }).waitFor();
    for (const step of STEPS) {
      await openStep(page, es[`step.${step}`]);
      await look(`es ${step}`, clipped);
    }
    await page.context().close();
  });
});
