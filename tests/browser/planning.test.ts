import type { Page, Worker } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { bytesOf, drop, exported, field, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const planWorker = (page: Page): Worker | undefined => page.workers().find((w) => /worker-/.test(w.url()));

/** Ends the worker from inside, as want of memory does: no event tells of it. */
const dieFromInside = async (page: Page): Promise<void> => {
  await expect.poll(() => planWorker(page)).toBeDefined();
  // The answer may be lost with the worker.
  await planWorker(page)
    ?.evaluate(() => self.close())
    .catch(() => undefined);
};

/** Sets the width of the door panel, which is selected. */
async function setWidth(page: Page, text: string): Promise<void> {
  await field(page, 'Width').fill(text);
  await field(page, 'Width').press('Enter');
}

const exportedText = async (page: Page, item: string): Promise<string> =>
  (await exported(page, item)).toString('latin1');

describe('an export asked for right after an edit', () => {
  it('waits for the plan of the design as it is, for every output that names the width', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, plainDesign());
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await exportedText(page, 'Cut list (CSV)');
    const outputs = ['Cut list (CSV)', 'Whole plan (JSON)'];
    let n = 10;
    for (const item of outputs) {
      n++;
      await setWidth(page, String(n));
      const text = await exportedText(page, item);
      expect(text, `${item} at ${n} in`).toContain(String(Math.round(n * 254) / 10));
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it('is canceled while it waits, and writes nothing then', async () => {
    const { page } = await visit(await context());
    await drop(page, longLettering());
    await page.getByRole('button', { name: 'Print & export' }).click();
    await page.getByRole('menuitem', { name: 'Shop packet (PDF)' }).click();
    let downloads = 0;
    page.on('download', () => downloads++);
    const status = page.locator('.export-status');
    await status.getByText(/working out the plan/).waitFor();
    await status.getByRole('button', { name: 'Cancel' }).click();
    await status.waitFor({ state: 'detached' });
    await page.getByText('was not written.').first().waitFor({ state: 'attached' });
    await openStep(page, 'Wood');
    expect(downloads).toBe(0);
    await page.context().close();
  });
});

describe('an export of a design with errors', () => {
  it('is held back until it is wanted all the same, and says which errors the command would refuse', async () => {
    const plain = plainDesign();
    const [panel] = plain.parts.filter((p) => p.kind === 'panel');
    if (!panel) throw new Error('no panel');
    const second = { ...panel, id: 'second', name: 'Second panel', box: { ...panel.box, y: inches(40) } };
    const { page, errors } = await visit(await context());
    let downloads = 0;
    page.on('download', () => downloads++);
    await drop(page, { ...plain, parts: [...plain.parts, second] });
    const doubt = page.getByRole('dialog', { name: 'Fix these errors first' });
    const ask = async () => {
      await page.getByRole('button', { name: 'Print & export' }).click();
      await page.getByRole('menuitem', { name: 'Cut list (CSV)' }).click();
      await doubt.waitFor({ timeout: 60_000 });
    };
    await ask();
    const said = await doubt.getByRole('listitem').allInnerTexts();
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/Door panel.*Second panel|Second panel.*Door panel/);
    await doubt.getByRole('button', { name: 'Cancel' }).click();
    await doubt.waitFor({ state: 'detached' });
    await ask();
    await doubt.getByRole('button', { name: 'Go to the checks' }).click();
    await doubt.waitFor({ state: 'detached' });
    // The same sentence stands there.
    await page
      .getByRole('tabpanel', { name: 'Checks' })
      .getByText(said[0] ?? '')
      .first()
      .waitFor();
    await ask();
    expect(downloads).toBe(0);
    const coming = page.waitForEvent('download');
    await doubt.getByRole('button', { name: 'Write it anyway' }).click();
    expect((await bytesOf(await coming)).toString('utf8')).toContain('Second panel');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

/** A sign of so many letters that its plan takes a while. */
function longLettering(): Design {
  const design = plainDesign();
  const panel = design.parts.find((p) => p.id === 'panel');
  if (panel?.kind !== 'panel') throw new Error('no panel');
  const text = 'HARBOR TICKETS '.repeat(12);
  const sign: Design['parts'][number] = {
    ...panel,
    id: 'sign',
    name: 'Long sign',
    kind: 'sign',
    box: { x: inches(2), y: inches(4), w: inches(36), h: inches(60) },
    lettering: {
      font: 'alfa-slab-one',
      lines: Array.from({ length: 2 }, () => ({ text: text.slice(0, 40) })),
      capHeight: 20,
      tracking: 0,
      wordSpace: 0,
      lineSpace: 2,
      align: 'center',
      kerning: true,
      arcRise: 0,
      fit: 'none',
      margin: 10,
      shift: { x: 0, y: 0 },
      finish: 'trim',
      outline: null,
      inline: null,
      shade: null,
      make: 'stencil',
      stencil: { bridgeWidth: 3, bridges: 2, direction: 'thinnest', tongue: 0, frame: 20, placed: [] },
    },
  };
  return { ...design, parts: [sign] };
}

describe('planning that is edited while it runs', () => {
  it('comes to the plan of the last of many edits in a row', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, longLettering());
    await page.getByRole('treeitem', { name: /Long sign/ }).click();
    for (let n = 0; n < 6; n++) {
      await setWidth(page, `${30 + n}`);
      // Some of these come while a plan is worked out, some when it has just ended.
      await page.locator('.saved-cell', { hasText: 'Yes' }).waitFor();
    }
    const text = await exportedText(page, 'Whole plan (JSON)');
    expect(text).toContain(`"width_mm": ${35 * 25.4}`);
    await openStep(page, 'Wood');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('a worker that is gone', () => {
  it('is noticed when it ends with nothing to do: another plans the next edit', async () => {
    const { page } = await visit(await context());
    await drop(page, plainDesign());
    await openStep(page, 'Wood');
    await dieFromInside(page);
    await page.getByRole('treeitem', { name: /Door panel/ }).click();
    await page.getByRole('tab', { name: 'Door panel' }).click();
    await setWidth(page, '13');
    expect(await exportedText(page, 'Whole plan (JSON)')).toContain(`"width_mm": ${13 * 25.4}`);
    await page.context().close();
  });

  it('says that it was started again, and then offers the file and another try', async () => {
    const { page } = await visit(await context());
    // Every worker ends as soon as it is given a plan to make, until the second message stands.
    let deadly = true;
    await page.route(/worker-.*\.js/, async (route) => {
      const response = await route.fetch();
      const body = await response.text();
      const dead =
        "addEventListener('message', (e) => { if (e.data?.path?.[0] === 'plan') { e.stopImmediatePropagation(); self.close(); } });";
      await route.fulfill({ response, body: deadly ? dead + body : body });
    });
    await drop(page, plainDesign());
    await page.getByText('was started again').or(page.getByText('stopped again by itself')).first().waitFor();
    const notice = page.locator('.notice.bad');
    // The first message gives way to the second.
    await page
      .locator('.notice.warn')
      .getByRole('button', { name: 'Close' })
      .click({ timeout: 5000 })
      .catch(() => undefined);
    await notice.getByText('stopped again by itself').waitFor();
    deadly = false;
    const saved = page.waitForEvent('download');
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await notice.getByRole('button', { name: 'Save to a file' }).click();
    expect(JSON.parse((await bytesOf(await saved)).toString('utf8'))).toEqual(plainDesign());
    await notice.getByRole('button', { name: 'Try again' }).click();
    await notice.waitFor({ state: 'detached' });
    await openStep(page, 'Wood');
    await page.context().close();
  });

  it('whose script cannot be loaded says so, and plans when it can', async () => {
    const { page } = await visit(await context());
    await page.route(/worker-.*\.js/, (route) => route.abort());
    await drop(page, plainDesign());
    const notice = page.locator('.notice.bad');
    await notice.getByText('could not be loaded').waitFor();
    await page.unroute(/worker-.*\.js/);
    await notice.getByRole('button', { name: 'Try again' }).click();
    await openStep(page, 'Wood');
    expect(await notice.count()).toBe(0);
    await page.context().close();
  });
});
