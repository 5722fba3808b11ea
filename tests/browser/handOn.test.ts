import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { starter } from '../plan/starters.ts';
import { drop, exported, openBrowser, visit } from './bench.ts';

const { context } = openBrowser();

describe('what is handed on', () => {
  it('opens again by a drop of the one file that holds everything', async () => {
    const { page, errors } = await visit(await context());
    const design = starter('puppet-theater');
    await drop(page, design);
    const zip = await exported(page, 'Everything, in one file (ZIP)');
    expect(Object.keys(unzipSync(new Uint8Array(zip)))).toContain('puppet-theater-one-page.pdf');
    const there = await visit(await context());
    await there.page.evaluate(
      (bytes) => {
        const transfer = new DataTransfer();
        transfer.items.add(
          new File([new Uint8Array(bytes)], 'from-a-friend.zip', { type: 'application/zip' }),
        );
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
      },
      [...zip],
    );
    await there.page.waitForFunction((name) => document.title.includes(name), design.name);
    await there.page.locator('.canvas canvas').first().waitFor();
    expect([...errors, ...there.errors]).toEqual([]);
    await page.context().close();
    await there.page.context().close();
  });

  it('goes by the board for sharing of a system that has one, at a press of its own, and is offered by no other', async () => {
    const without = await visit(await context());
    await drop(without.page, starter('puppet-theater'));
    await without.page.getByRole('button', { name: 'Print & export' }).click();
    expect(await without.page.getByRole('menuitem', { name: /^Share/ }).count()).toBe(0);
    await without.page.context().close();
    const own = await context();
    await own.addInitScript(() => {
      const shared: string[] = [];
      Object.assign(window, { shared });
      Object.assign(navigator, {
        canShare: () => true,
        share: async ({ title, files }: { title: string; files: File[] }) => {
          if (!navigator.userActivation.isActive) throw new Error('not pressed');
          shared.push(title, ...files.map(({ name, type, size }) => `${name} ${type} ${size > 1000}`));
        },
      });
    });
    const { page, errors } = await visit(own);
    await drop(page, starter('puppet-theater'));
    await page.getByRole('button', { name: 'Print & export' }).click();
    await page.getByRole('menuitem', { name: 'Share picture and page…' }).click();
    await page.getByRole('button', { name: 'Choose where' }).click({ timeout: 60_000 });
    await page.getByRole('dialog', { name: 'Share' }).waitFor({ state: 'detached' });
    const shared = await page.evaluate(() => (window as unknown as { shared: string[] }).shared);
    expect(shared).toEqual([
      'Puppet theater',
      'puppet-theater-face.png image/png true',
      'puppet-theater-one-page.pdf application/pdf true',
    ]);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
