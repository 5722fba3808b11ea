import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packetPages } from '../../src/output/packet/packet.ts';
import { patternPages } from '../../src/output/packet/patternPages.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { planOf } from '../plan/starters.ts';
import { printerTools } from './raster.ts';
import { LETTERS } from './setWith.ts';

const qpdf = spawnSync('qpdf', ['--version']).error === undefined;
if (!qpdf) console.error('skipped: qpdf is not installed');

const plan = planOf('bread-shop');

/** Both files with what they must be called and lead to. */
const FILES = [
  ['packet', packetPages(plan)],
  ['patterns', patternPages(plan)],
] as const;

describe.each(FILES)('the %s as two other programs read it', (name, pages) => {
  let dir = '';
  let file = '';
  beforeAll(async () => {
    dir = mkdtempSync(join(tmpdir(), 'showface-'));
    file = join(dir, `${name}.pdf`);
    writeFileSync(file, await pdfOf(pages, { title: `Pages (${name})`, date: '', language: 'de' }, LETTERS));
  });
  afterAll(() => rmSync(dir, { recursive: true }));
  const told = (...call: [string, ...string[]]) =>
    execFileSync(call[0], [...call.slice(1), file], { encoding: 'utf8', maxBuffer: 1e8 });

  it.skipIf(!printerTools)('is tagged, titled and whole to the first', () => {
    const info = told('pdfinfo');
    expect(info).toMatch(new RegExp(`^Title: +Pages \\(${name}\\)$`, 'm'));
    expect(info).toMatch(/^Tagged: +yes$/m);
    expect(info).toMatch(new RegExp(`^Pages: +${pages.length}$`, 'm'));
  });

  it.skipIf(!qpdf)('is sound to the second, which finds its outline, its language and its tags', () => {
    expect(told('qpdf', '--check')).toContain('No syntax or stream encoding errors found');
    const { outlines } = JSON.parse(told('qpdf', '--json=2', '--json-key=outlines')) as {
      outlines: { title: string; destpageposfrom1: number }[];
    };
    const wanted = pages.flatMap(({ begins = [] }, i) => begins.map((title) => ({ title, page: i + 1 })));
    expect(outlines.map(({ title, destpageposfrom1 }) => ({ title, page: destpageposfrom1 }))).toEqual(
      wanted,
    );
    const objects = told('qpdf', '--json=2', '--json-key=qpdf');
    expect(objects).toMatch(/"\/Lang": "u:de"/);
    expect(objects).toMatch(/"\/Marked": true/);
    expect(objects).toMatch(/"\/DisplayDocTitle": true/);
  });
});
