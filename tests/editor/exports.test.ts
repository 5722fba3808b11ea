import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, it, vi } from 'vitest';
import { MOST_CHARACTERS } from '../../src/design/limits.ts';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { EXPORTS } from '../../src/editor/kept/export/exports.ts';
import { designIn } from '../../src/editor/kept/packed.ts';
import type { CurrentPlan } from '../../src/editor/planning/planner.ts';
import { starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

// What a worker and a canvas of the browser make, by its name; a journey in `invented.test.ts` has the true ones.
const made = (name: string) => ({ name, type: '', bytes: new TextEncoder().encode(`made: ${name}`) });
const FILES = ['plan.json', 'packet.pdf', 'cut-list.csv', 'sign-sign.svg'];
vi.mock('../../src/editor/kept/export/makeFiles.ts', () => ({
  makeFiles: async (_: unknown, stems: string[]) => ({
    files: FILES.filter((name) => stems.some((stem) => name.startsWith(stem))).map(made),
    warnings: ['read me'],
  }),
}));
vi.mock('../../src/editor/kept/export/facePicture.ts', () => ({
  facePicture: async () => [made('face.png')],
}));

const KIOSK = starter('harbor-ticket-kiosk');
const written = (id: string, design: Design) =>
  EXPORTS.find((entry) => entry.id === id)?.write({ design } as CurrentPlan, {} as never);

it('writes each file under the name of its design, and all in one under its date too (reader: fflate)', async () => {
  const design = { ...KIOSK, name: 'Harbor Ticket Kiosk', date: '2026-03-02' };
  expect((await written('packet', design))?.files.map(({ name }) => name)).toEqual([
    'harbor-ticket-kiosk-packet.pdf',
  ]);
  const all = await written('all', design);
  expect(all?.warnings).toEqual(['read me']);
  expect(all?.files.map(({ name }) => name)).toEqual(['harbor-ticket-kiosk-2026-03-02.zip']);
  const unpacked = unzipSync(all?.files[0]?.bytes ?? new Uint8Array());
  const names = [...FILES, 'face.png'].map((name) => `harbor-ticket-kiosk-${name}`);
  expect(Object.keys(unpacked).sort()).toEqual(['harbor-ticket-kiosk.json', ...names].sort());
  expect(strFromU8(unpacked['harbor-ticket-kiosk-packet.pdf'] ?? new Uint8Array())).toBe('made: packet.pdf');
  const opened = openDesign(strFromU8(unpacked['harbor-ticket-kiosk.json'] ?? new Uint8Array()));
  expect(opened).toMatchObject({ ok: true, design, repairs: [] });
  // The same again, whatever the clock says.
  expect((await written('all', design))?.files[0]?.bytes).toEqual(all?.files[0]?.bytes);
});

it('gives the design back out of the one file, whatever it is called, and out of no other', async () => {
  for (const name of ['Kiosk', 'Floor plan', 'plan', 'ファサード']) {
    const design = { ...KIOSK, name };
    const [all] = (await written('all', design))?.files ?? [];
    const text = designIn(all?.bytes ?? new Uint8Array());
    expect(openDesign(text ?? ''), name).toMatchObject({ ok: true, design: { name } });
  }
  const zip = (files: Record<string, string>) =>
    designIn(zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)]))));
  expect(zip({ 'photo.png': 'a', 'folder/design.json': '{}' })).toBe(null);
  // 64 MB of blanks unfold from a few kilobytes: passed over, not unfolded.
  expect(zip({ 'a.json': ' '.repeat(4 * MOST_CHARACTERS + 1), 'longer.json': '{}' })).toBe('{}');
});

it('names them by what every file system takes, whatever a design is called and dated', async () => {
  const text = fc.string({ unit: 'grapheme', maxLength: 90 });
  await fc.assert(
    fc.asyncProperty(text, text, async (name, date) => {
      const all = await written('all', { ...KIOSK, name, date });
      for (const file of [
        all?.files[0]?.name ?? '',
        ...Object.keys(unzipSync(all?.files[0]?.bytes ?? new Uint8Array())),
      ])
        expect(file).toMatch(/^[\p{L}\p{N}][\p{L}\p{N}-]*\.[a-z]+$/u);
    }),
    { numRuns: runs(30) },
  );
});
