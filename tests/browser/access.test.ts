import { describe, expect, it } from 'vitest';
import { starter } from '../plan/starters.ts';
import { violations } from './axe.ts';
import { drop, openBrowser, openStep, plainDesign, resize, visit } from './bench.ts';
import { misnamed } from './names.ts';

const { context } = openBrowser();

const STEPS = ['Bed', 'Layout', 'Checks', 'Wood', 'Paint', 'Letters', 'Fastening', 'Pages'] as const;

describe.each(['light', 'dark'] as const)('without violations, %s', (colorScheme) => {
  it('on the first page, on every step, with a part selected, and on a small screen', async () => {
    const { page } = await visit(await context({ colorScheme }));
    const find = async (where: string) =>
      expect({ where, found: await violations(page) }).toEqual({ where, found: [] });
    await find('the first page');
    await drop(page, plainDesign());
    // The panes of the other steps are looked at with all that they hold in their own test.
    for (const step of ['Bed', 'Layout'] as const) {
      await openStep(page, step);
      await find(step);
    }
    await page.getByRole('treeitem', { name: /Left stile/ }).click();
    await page.getByRole('tabpanel', { name: 'Left stile' }).waitFor();
    await find('a part selected');
    await resize(page, 390, 844);
    // So narrow, the list of parts is a tab of the pane.
    await page.getByRole('tab', { name: 'Parts' }).waitFor();
    await find('a small screen');
    await page.context().close();
  });
});

it('what is seen of a control is in its name, in menus, dialogs and every kind of part', async () => {
  const { page } = await visit(await context());
  const look = async (where: string) =>
    expect({ where, found: await misnamed(page) }).toEqual({ where, found: [] });
  await look('the first page');
  await drop(page, starter('harbor-ticket-kiosk'));
  for (const part of [
    'Ledge filler',
    'Ground',
    'Plinth',
    'Left door',
    'Door pull',
    'Mullions',
    'Sign molding',
  ]) {
    await page
      .getByRole('treeitem', { name: new RegExp(`^${part}\\b`) })
      .first()
      .click();
    await page.getByRole('tabpanel', { name: part }).waitFor();
    await look(part);
  }
  const menus = page.locator('[aria-haspopup=menu]');
  for (let i = 0; i < (await menus.count()); i++) {
    await menus.nth(i).press('Enter');
    await page.getByRole('menu').waitFor();
    await look(`menu ${i}`);
    await page.keyboard.press('Escape');
  }
  await page.locator('.parts-head > button').last().click();
  await page.getByRole('dialog').getByRole('table').waitFor();
  await look('the table of parts');
  await page.keyboard.press('Escape');
  await page.locator('.canvas').press('?');
  await page.getByRole('dialog').waitFor();
  await look('the keys');
  await page.context().close();
});

it('high contrast in dark is there where the device asks for both, and can be chosen', async () => {
  const { page } = await visit(await context({ colorScheme: 'dark', contrast: 'more' }));
  await drop(page, plainDesign());
  const theme = () => page.evaluate(() => document.documentElement.dataset.theme);
  expect(await theme()).toBe('contrast-dark');
  await page.getByRole('treeitem', { name: /Left stile/ }).click();
  await page.getByRole('tabpanel', { name: 'Left stile' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('menuitemradio', { name: 'High contrast, light' }).click();
  await expect.poll(theme).toBe('contrast');
  await page.context().close();
});

it('the checker finds what it should find', async () => {
  const page = await (await context()).newPage();
  await page.setContent('<main><button></button><p style="color: #ddd">Hardly to be read</p></main>');
  const found = (await violations(page)).map((v) => v.split(':')[0]);
  expect(found).toEqual(expect.arrayContaining(['button-name', 'color-contrast']));
  await page.context().close();
});

describe('in a window of any size', () => {
  it('the page is as high as the window on every step', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    const cautions = new Set<string>();
    const hear = async () => {
      for (const of of await page
        .locator('.caution[data-hazard]')
        .evaluateAll((all) => all.map((el) => `${(el as HTMLElement).dataset.hazard}: ${el.textContent}`)))
        cautions.add(of);
    };
    for (const step of STEPS) {
      await openStep(page, step);
      if (step === 'Fastening') {
        await page.getByRole('tab', { name: 'Weight' }).click();
        await page.locator('.caution[data-hazard=weight]').waitFor();
      }
      await hear();
      for (const [width, height] of [
        [844, 390],
        [390, 844],
        [1280, 720],
        [2560, 1440],
      ] as const) {
        await resize(page, width, height);
        const high = await page.evaluate(() => document.documentElement.scrollHeight);
        expect({ step, width, high }).toEqual({ step, width, high: height });
      }
    }
    await page.getByRole('button', { name: 'Print & export' }).click();
    await page.getByRole('menu').locator('.caution').waitFor();
    await hear();
    await page.keyboard.press('Escape');
    // Each hazard where the hand is; the one at the saw is in `reach.test.ts`, that of the first page in `journeys.test.ts`.
    expect([...cautions].sort()).toEqual([
      expect.stringMatching(/^bed: .*hardware manufacturer/),
      expect.stringMatching(/^export: .*not structure/),
      expect.stringMatching(/^fastening: .*wires and pipes/),
      expect.stringMatching(/^pages: .*printed square/),
      expect.stringMatching(/^swing: .*pinch/),
      expect.stringMatching(/^weight: .*latch/),
      expect.stringMatching(/^wood: MDF dust is harmful/),
    ]);
    // What only spoils paper can be put away, until the page is loaded again; what can hurt has no button.
    expect(await page.locator('.caution button').count()).toBe(1);
    await page.locator('.caution[data-hazard=pages] button').click();
    await page.locator('.caution[data-hazard=pages]').waitFor({ state: 'detached' });
    await openStep(page, 'Wood');
    await page.locator('.caution[data-hazard=wood]').waitFor();
    expect(await page.locator('.caution button').count()).toBe(0);
    await openStep(page, 'Pages');
    await page.locator('.thumb').first().waitFor();
    expect(await page.locator('.caution').count()).toBe(0);
    await page.context().close();
  });

  it('nothing is clipped', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    for (const width of [320, 360, 390, 760, 1024, 1200, 1920, 2560]) {
      await resize(page, width, 860);
      const outside = await page.evaluate(() => {
        const wide = document.documentElement.clientWidth;
        return [...document.querySelectorAll('.title-block *, .rail-step, .pane-head *, .tray')]
          .filter((el) => {
            const r = el.getBoundingClientRect();
            return r.width > 1 && r.height > 1 && (r.right > wide + 1 || r.left < -1);
          })
          .map((el) => `${el.tagName}.${el.getAttribute('class')}`);
      });
      expect({ width, outside }).toEqual({ width, outside: [] });
    }
    await page.context().close();
  });
});
