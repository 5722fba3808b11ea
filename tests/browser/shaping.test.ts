import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/command/run.ts';
import { newPart } from '../../src/design/defaults.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design } from '../../src/design/schema.ts';
import { featuredFont } from '../lettering/featured.ts';
import { scriptBytes } from '../lettering/shaping.ts';
import { drop, exported, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

const FEATURED = featuredFont(
  [
    { tag: 'ss01', forms: [['a', 'e']], named: 300 },
    { tag: 'aalt', forms: [['a', 'bcd']] },
  ],
  [[300, 'Open a']],
);

/** A sign in a font of the person's own. */
function lettered(text: string, bytes: Uint8Array): Design {
  const sign = newPart('sign', { id: 's', name: 'S', box: { x: 100, y: 600, w: 700, h: 200 } });
  const lettering = {
    ...{ ...sign.lettering, lines: [{ text }], font: 'own:font-1' },
    ...{ fit: 'both' as const, make: 'trace' as const },
  };
  const data = Buffer.from(bytes).toString('base64');
  return { ...plainDesign(), fonts: [{ id: 'font-1', name: 'Own', data }], parts: [{ ...sign, lettering }] };
}

describe('letters that are set together', () => {
  it('are the same in the page, under its own policy, and by the command, byte for byte', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'showface-shaping-'));
    const design = lettered('مكتبة السلام', scriptBytes('arabic'));
    const file = join(folder, 'design.json');
    writeFileSync(file, saveDesign(design));
    const problems: string[] = [];
    const out = join(folder, 'out');
    const code = await run([file, '--out', out], { out: () => {}, err: (line) => problems.push(line) });
    expect({ code, problems }).toEqual({ code: 0, problems: [] });
    const { page, errors } = await visit(await context({ locale: 'en-US' }));
    await drop(page, design);
    for (const [name, entry] of [
      ['plan.json', 'Whole plan (JSON)'],
      ['patterns.pdf', 'Full-size patterns (PDF)'],
    ] as const) {
      const bytes = await exported(page, entry);
      expect({ name, same: bytes.equals(readFileSync(join(out, name))) }).toEqual({ name, same: true });
    }
    expect(errors).toEqual([]);
    await page.context().close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('take the features of their font, and a form of a single letter, and can be undone', async () => {
    const { page, errors } = await visit(await context({ locale: 'en-US' }));
    await drop(page, lettered('banana', FEATURED));
    await openStep(page, 'Letters');
    const outlines = () => page.locator('.letter-view path').last().getAttribute('d');
    await expect.poll(outlines).not.toBeNull();
    const first = await outlines();
    /** Waits until the letters are drawn otherwise, and gives how. */
    const redrawn = async (before: string | null) => {
      await expect.poll(outlines, { timeout: 60_000 }).not.toBe(before);
      return outlines();
    };
    // The last letter: that is where the caret is.
    await page.getByRole('button', { name: 'Give “a” another form of the font' }).click();
    const formed = await redrawn(first);
    await page.getByRole('button', { name: 'Form 3 of “a”', exact: true }).click();
    const other = await redrawn(formed);
    await page.getByRole('button', { name: 'Give “a” its usual form' }).click();
    expect(await redrawn(other)).toBe(first);

    await page.locator('.sub-list').getByRole('tab', { name: 'Look', exact: true }).click();
    const set = page.getByRole('checkbox', { name: 'Stylistic set 1: Open a' });
    await set.check();
    const open = await redrawn(first);
    expect(open).not.toBe(formed);
    await page.keyboard.press('Control+z');
    expect(await redrawn(open)).toBe(first);
    expect(await set.isChecked()).toBe(false);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
