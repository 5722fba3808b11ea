import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import { assemble, tablesOf } from '../../src/lettering/font/tables.ts';
import { collectionOf } from '../lettering/collection.ts';
import { bytesOf } from '../lettering/fonts.ts';
import { drop, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const packages = fileURLToPath(new URL('../../node_modules', import.meta.url));
const plainOf = (id: string): Uint8Array => {
  const { cff, tables } = tablesOf(bytesOf(id));
  const parts = [...tables].map(([tag, { data }]) => [tag, data] as const);
  return new Uint8Array(assemble(parts, cff));
};

describe('a font of the person’s own', () => {
  it('is chosen from a collection, from a variable font, and from a file packed as WOFF 2, under the page’s own policy', async () => {
    const { page, errors } = await visit(await context());
    const sign = newPart('sign', { id: 's', name: 'S', box: { x: 100, y: 600, w: 600, h: 200 } });
    const lettering = { ...sign.lettering, lines: [{ text: 'HAMBURG' }] };
    await drop(page, { ...plainDesign(), parts: [{ ...sign, lettering }] });
    await openStep(page, 'Letters');
    await page.locator('.sub-list').getByRole('tab', { name: 'Look', exact: true }).click();
    const input = page.locator('input[type="file"]');
    const opens = (name: string, bytes: Uint8Array) =>
      input.setInputFiles({ name, mimeType: 'font/ttf', buffer: Buffer.from(bytes) });
    const outlines = () => page.locator('.letter-view path').last().getAttribute('d');
    const chosen = async (name: string) => {
      const radio = page.getByRole('radio', { name, exact: true });
      await radio.waitFor();
      await expect.poll(() => radio.isChecked()).toBe(true);
    };
    /** Waits until the letters are others than before, and gives how they are drawn. */
    const redrawn = async (before: string | null) => {
      await expect.poll(outlines, { timeout: 30_000 }).not.toBe(before);
      return outlines();
    };
    const first = await outlines();

    // Each of three fonts in one file by its name.
    await opens('three.ttc', collectionOf(['lato', 'rye', 'bebas-neue'].map(plainOf)));
    await page.getByRole('button', { name: 'Rye Regular', exact: true }).waitFor();
    expect(await page.getByRole('button', { name: 'Bebas Neue Regular', exact: true }).count()).toBe(1);
    await page.getByRole('button', { name: 'Rye Regular', exact: true }).click();
    const rye = await redrawn(first);

    // One of the weights that a variable font names, itself packed as WOFF 2.
    const variable = `${packages}/@fontsource-variable/domine/files/domine-latin-wght-normal.woff2`;
    await opens('domine.woff2', readFileSync(variable));
    await page.getByRole('button', { name: 'Domine Bold', exact: true }).click();
    await chosen('Domine Bold');
    const bold = await redrawn(rye);

    // The same font as of the collection, packed: it is drawn as that was.
    const packed = `${packages}/@fontsource/rye/files/rye-latin-400-normal.woff2`;
    await opens('packed.woff2', readFileSync(packed));
    await chosen('packed');
    await expect.poll(outlines, { timeout: 30_000 }).toBe(rye);
    expect(bold).not.toBe(rye);

    await opens('cut.woff2', readFileSync(packed).subarray(0, 9000));
    await page.getByRole('alert').filter({ hasText: 'cut.woff2' }).waitFor();
    expect(errors).toEqual([]);
  });
});
