import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { inches } from '../../src/measure/units.ts';
import { plan } from '../../src/plan/plan.ts';
import { fingerOn, mouseOn, Person } from './acts.ts';
import { bytesOf, openBrowser, visit } from './bench.ts';
import { Fingers } from './fingers.ts';

const { context } = openBrowser();

/** A bed of a 38 by 75 in mattress between boards of 2 x 6, with a face of 42 1/2 by 79 in. */
async function enterBed(person: Person, page: Page): Promise<void> {
  await person.button(/^Empty bed/);
  await page.locator('.canvas canvas').first().waitFor();
  await person.choose('Mattress size', 'Twin');
  await person.choose('Boards of', '2 x 6');
  await person.type('Face width', '42 1/2');
  await person.type('Face height', '79');
  await person.type('Ceiling', '97');
  await expect.poll(() => page.locator('.face-cell').textContent()).toContain('42');
}

/**
 * Border, arch and nine battens under it, a framed sign, a center stile, and a paneled door with its knob and stripe. The
 * field of the face begins 3 in from its edges; stock of 1 x 3 is 2 1/2 in wide (PS 20), the molding 1 1/4.
 */
async function layOut(person: Person, page: Page): Promise<void> {
  await person.step('Layout');
  await person.tool('Draw a trim frame');
  await person.button(/^Pine 1 x 3/);
  await person.pull([3, 3], [39.5, 76], 'the border');
  await person.press('the tab Layout', page.getByRole('tab', { name: 'Layout' }));
  await person.button(/^Pine 1 x 3/);
  await person.tool('Draw a trim frame');
  await person.pull([5.5, 47], [37, 73.5], 'the arch');
  await person.choose('Path', 'Arched head');
  await person.tool('Draw a row of strips');
  await person.pull([6.75, 48.25], [35.75, 72.25], 'the battens');
  await person.button(/gap between the parts of/);
  await person.keys('9', 'Enter');
  await person.tool('Draw a sign');
  await person.pull([5.5, 39], [37, 47], 'the sign');
  await person.twice([21.25, 43]);
  await page.locator('.letter-field').waitFor();
  await person.keys('NORTH SHED', 'Control+Enter');
  await person.tool('Draw a trim frame');
  await person.pull([5.5, 39], [37, 47], 'its frame');
  await person.tool('Draw a strip');
  await person.pull([21.25, 5.5], [21.25, 39], 'the stile');
  await person.tool('Draw a panel');
  await person.pull([5.5, 5.5], [20, 39], 'a door');
  await person.tool('Draw a trim frame');
  await person.pull([8, 8], [17.5, 36.5], 'its molding');
  await person.tool('Place hardware');
  await person.pull([18.25, 20], [19.25, 21.5], 'its knob');
  await person.choose('Outline', 'Round');
  await person.tool('Paint a shape');
  await person.pull([9.25, 12], [16.25, 15], 'its stripe');
}

/** The same face of building parts: doors and a window are carried into the room that border and sign leave. */
async function build(person: Person, page: Page): Promise<void> {
  const shelf = async (name: string) => {
    await person.press('the tab Layout', page.getByRole('tab', { name: 'Layout' }));
    return page.getByRole('toolbar', { name: 'Building parts' }).getByRole('button', { name });
  };
  await person.step('Layout');
  await person.tool('Draw a trim frame');
  await person.button(/^Pine 1 x 3/);
  await person.pull([3, 3], [39.5, 76], 'the border');
  await person.press('the sign board', await shelf('Sign board'));
  await person.pull([5.5, 39], [37, 47], 'the sign');
  await person.keys('NORTH SHED', 'Control+Enter');
  await person.choose('Shape', 'Arched');
  await person.carry(await shelf('Window'), [20, 60], 'the window');
  await person.choose('Head', 'Arched');
  await person.carry(await shelf('Pair of doors'), [20, 20], 'the doors');
  await person.tool('Paint a shape');
  await person.pull([3.5, 3.75], [39, 4.75], 'a stripe');
}

/** A device on which files come as downloads. */
async function downloading(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  const device = await context({ ...options, acceptDownloads: true });
  await device.addInitScript(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  return device;
}

/** Everything in two acts: the one file that comes holds all that is exported. */
async function exportAll(person: Person, page: Page): Promise<void> {
  await person.button('Print & export');
  const file = page.waitForEvent('download', { timeout: 90_000 });
  await person.press('Everything', page.getByRole('menuitem', { name: /^Everything/ }));
  // The names of what a ZIP file holds stand in it as they are.
  const all = (await bytesOf(await file)).toString('latin1');
  for (const name of ['packet.pdf', 'patterns.pdf', 'cut-list.csv', 'face.dxf', 'face.png', 'plan.json'])
    expect(all).toContain(name);
}

async function savedDesign(page: Page): Promise<Design> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  const opened = openDesign((await bytesOf(file)).toString('utf8'));
  if (!opened.ok) throw new Error('what was saved does not open');
  return opened.design;
}

/** What the plan has to say of a design, by code and parts; how its boards are cut is not looked for long. */
const checksOf = (design: Design): string[] =>
  plan(design, readSupplies(design), { effort: { nodes: 200 } })
    .checks.filter(({ code }) => code !== 'cutting.not-proved')
    .map(({ severity, code, parts }) => `${severity}: ${code} ${[...parts].sort().join()}`);

const larger = (design: Design, by: number): Design => {
  const { mattress } = design.bed;
  const { width, length } = mattress;
  return {
    ...design,
    bed: { ...design.bed, mattress: { ...mattress, width: width + by, length: length + by } },
  };
};

/** No check may come when the bed changes that was not there before. */
function staysAsMeant(design: Design): void {
  const before = checksOf(design);
  expect(before.filter((check) => !check.startsWith('note'))).toEqual([]);
  for (const by of [3 / 8, -1, 2])
    expect(checksOf(larger(design, inches(by))).filter((check) => !before.includes(check))).toEqual([]);
}

describe('an invented face from nothing', () => {
  it('takes at most 45 acts by mouse, a bed in 6 of them, and stays as it was meant when the bed changes', async () => {
    const device = await downloading();
    const { page, errors } = await visit(device);
    const person = new Person(page, mouseOn(page));
    await enterBed(person, page);
    expect(person.acts.length).toBeLessThanOrEqual(6);
    await layOut(person, page);
    // A frame around the door and what is on it; the border and the stile are not wholly inside.
    await person.pull([-4, 4], [20.5, 40.5], 'a frame around the door');
    await page.getByRole('tab', { name: '4 selected' }).waitFor();
    await person.button('Mirror copy to the other side');
    await page.getByRole('treeitem', { name: /^Right door hardware/ }).waitFor();
    await exportAll(person, page);
    process.stdout.write(`By mouse, ${person.acts.length} acts: ${person.acts.join('; ')}.\n`);
    expect(person.acts.length).toBeLessThanOrEqual(45);
    staysAsMeant(await savedDesign(page));
    expect(errors).toEqual([]);
    await device.close();
  });

  it('takes at most 25 acts of building parts, bed and files included, and stays as it was meant', async () => {
    const device = await downloading();
    const { page, errors } = await visit(device);
    const person = new Person(page, mouseOn(page));
    await enterBed(person, page);
    await build(person, page);
    await exportAll(person, page);
    process.stdout.write(`Of building parts, ${person.acts.length} acts: ${person.acts.join('; ')}.\n`);
    expect(person.acts.length).toBeLessThanOrEqual(25);
    staysAsMeant(await savedDesign(page));
    expect(errors).toEqual([]);
    await device.close();
  });

  it('takes no more by touch: what lies on a door is mirrored with it from its menu', async () => {
    const device = await downloading({ viewport: { width: 1180, height: 820 }, hasTouch: true });
    const { page, errors } = await visit(device);
    const person = new Person(page, fingerOn(await Fingers.on(device, page)));
    await enterBed(person, page);
    await layOut(person, page);
    await person.ask([7, 8], /to the other side, with what lies on it/);
    await page.getByRole('tab', { name: '4 selected' }).waitFor();
    await exportAll(person, page);
    process.stdout.write(`By touch, ${person.acts.length} acts with all files.\n`);
    expect(person.acts.length).toBeLessThanOrEqual(45);
    expect(errors).toEqual([]);
    await device.close();
  });
});
