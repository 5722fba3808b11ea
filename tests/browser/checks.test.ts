import { expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import { inches } from '../../src/measure/units.ts';
import { drop, openBrowser, openStep, plainDesign, visit } from './bench.ts';

const { context } = openBrowser();

it('an overlap is mended in two acts: its pane opens at the top, shows each way on the drawing, and takes it', async () => {
  const { page, errors } = await visit(await context());
  const plain = plainDesign();
  const knob = (i: number) =>
    newPart('panel', {
      id: `plate-${i}`,
      name: `Plate ${i + 1}`,
      box: { x: inches(14 + 4 * i), y: inches(45), w: inches(2), h: inches(10) },
    });
  await drop(page, { ...plain, parts: [...plain.parts, knob(0), knob(1), knob(2)] });
  const step = (name: string) => page.getByRole('navigation').getByRole('button', { name }).click();
  await openStep(page, 'Bed');
  await page.getByLabel('Width', { exact: true }).first().waitFor();
  const body = page.locator('.pane-body');
  await body.evaluate((el) => el.scrollTo({ top: el.scrollHeight }));
  await expect.poll(() => body.evaluate((el) => el.scrollTop)).toBeGreaterThan(100);

  await step('Checks');
  // Three plates in the door panel are one message.
  await page.getByText('The same in 2 more places.').waitFor();
  expect(await body.evaluate((el) => el.scrollTop)).toBe(0);
  await page.getByText('1 error', { exact: true }).waitFor();
  // Nothing says below that all is clear of each other.
  expect(await page.getByText(/clear of each other/).count()).toBe(0);
  const mend = page.locator('.mends button').first();
  await mend.hover();
  const undo = page.getByRole('button', { name: /^Undo/ });
  expect(await undo.isDisabled()).toBe(true);
  await mend.click();
  await page.getByText('The same in 2 more places.').waitFor({ state: 'detached' });
  await page.getByText('0 errors', { exact: true }).waitFor();
  await page.getByText(/clear of each other/).waitFor();
  await undo.click();
  await page.getByText('1 error', { exact: true }).waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
});

it('a bed that cannot be says so at the measure to mend, and its check leads there', async () => {
  const { page } = await visit(await context());
  const plain = plainDesign();
  await drop(page, { ...plain, bed: { ...plain.bed, cleats: { ...plain.bed.cleats, below: inches(9) } } });
  await openStep(page, 'Checks');
  await page.getByRole('button', { name: /measurements leave no room for the cleats/ }).click();
  const wrong = page.locator('.field.wrong', { hasText: /leave no room for the cleats/ });
  await wrong.waitFor();
  expect(await wrong.locator('input').getAttribute('aria-invalid')).toBe('true');
  const below = wrong.locator('input');
  await below.fill('2');
  await below.press('Enter');
  await wrong.waitFor({ state: 'detached' });
  await page.context().close();
});
