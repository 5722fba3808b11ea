import { describe, expect, it } from 'vitest';
import { faceFigures } from '../../src/output/packet/sideBySide.ts';
import { planned, starter } from '../plan/starters.ts';
import { violations } from './axe.ts';
import { bytesOf, drop, openBrowser, openStep, visit } from './bench.ts';

const { context } = openBrowser();

describe('faces side by side', () => {
  it('show what each costs as a plan made alone has it, other designs too, and leave as one sheet', async () => {
    const { page, errors } = await visit(await context());
    await drop(page, starter('puppet-theater'));
    await drop(page, starter('bread-shop'));
    await openStep(page, 'Paint');
    await page.getByRole('tab', { name: 'Finishes' }).click();
    await page.getByRole('button', { name: 'Side by side' }).click();
    const board = page.getByRole('dialog', { name: 'Side by side' });
    for (const other of ['Puppet theater', 'Chalk']) await board.getByRole('button', { name: other }).click();
    await board.locator('img').nth(4).waitFor({ timeout: 60_000 });
    const cells = (term: string) =>
      board.getByRole('row', { name: term }).getByRole('cell').allTextContents();
    const costs = ['bread-shop', 'puppet-theater'].map(
      (name) => faceFigures(planned(starter(name))).rows.find(({ term }) => term === 'Total cost')?.words,
    );
    const [own, theater] = costs;
    expect(await cells('Total cost')).toEqual([own, own, own, own, theater]);
    expect((await cells('Paint to buy'))[0]).toContain('Olive green');
    const small = board.getByRole('button', { name: 'Save as one sheet to print' });
    const download = page.waitForEvent('download');
    await small.click();
    const file = await download;
    expect(file.suggestedFilename()).toBe('bread-shop-side-by-side.pdf');
    expect((await bytesOf(file)).subarray(0, 5).toString()).toBe('%PDF-');
    expect(await violations(page)).toEqual([]);
    // Two at least make a comparison, and six at most have room.
    await board.getByRole('button', { name: 'Harbor' }).click();
    expect(await board.getByRole('button', { name: 'Orchard' }).isDisabled()).toBe(true);
    for (const other of ['Harbor', 'Chalk', 'Evening', 'Day', 'Puppet theater']) {
      await board.getByRole('button', { name: other }).click();
    }
    expect(await small.isDisabled()).toBe(true);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
