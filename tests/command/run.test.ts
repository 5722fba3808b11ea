import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../../src/command/run.ts';

const KIOSK = new URL('../../assets/starters/harbor-ticket-kiosk.json', import.meta.url).pathname;

describe('the command', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'showface-run-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  async function call(...words: string[]) {
    const out: string[] = [];
    const err: string[] = [];
    const code = await run(words, { out: (l) => out.push(l), err: (l) => err.push(l) });
    return { code, out: out.join('\n'), err: err.join('\n') };
  }

  function broken(change: (data: Record<string, unknown>) => void): string {
    const data = JSON.parse(readFileSync(KIOSK, 'utf8')) as Record<string, unknown>;
    change(data);
    const path = join(folder, 'broken.json');
    writeFileSync(path, JSON.stringify(data));
    return path;
  }

  it('writes every file of the contract for the kiosk', async () => {
    const { code, err, out } = await call(KIOSK, '--out', join(folder, 'out'));
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^This packet plans decoration\. It says nothing about the strength of the bed, .*latch/m,
    );
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(
      [
        '.showface-files',
        'cut-list.csv',
        'face-outlines.svg',
        'face.dxf',
        'face.svg',
        'room.svg',
        'labels.pdf',
        'one-page.pdf',
        'packet.pdf',
        'paint.csv',
        'on-hand.csv',
        'patterns.pdf',
        'plan.json',
        'prices.csv',
        'shopping.csv',
        'sign-sign-mm.dxf',
        'sign-sign.svg',
      ].sort(),
    );
    for (const name of ['packet.pdf', 'patterns.pdf']) {
      expect(
        readFileSync(join(folder, 'out', name))
          .subarray(0, 5)
          .toString(),
      ).toBe('%PDF-');
    }
  });

  it('takes paper and unit from the call', async () => {
    const { code } = await call(KIOSK, '--out', join(folder, 'out'), '--paper', 'a4', '--unit', 'mm');
    expect(code).toBe(0);
    const plan = JSON.parse(readFileSync(join(folder, 'out', 'plan.json'), 'utf8')) as {
      patterns: { paper: string }[];
    };
    expect(plan.patterns.every((p) => p.paper === 'a4')).toBe(true);
    expect(readFileSync(join(folder, 'out', 'cut-list.csv'), 'utf8')).toMatch(/\d mm/);
  });

  it('draws patterns for the printer that the call tells of, and a page to measure it by', async () => {
    const out = join(folder, 'out');
    const printed = () => readFileSync(join(out, 'patterns.pdf'));
    await call(KIOSK, '--out', out, '--correct', '100,100');
    const straight = printed();
    const { code, err } = await call(KIOSK, '--out', out, '--correct', '99.2,100.6', '--test-page');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(printed().equals(straight)).toBe(false);
    const [page] = (await PDFDocument.load(readFileSync(join(out, 'printer-test.pdf')))).getPages();
    // US Letter, 8 1/2 by 11 in at 72 points each.
    expect(page?.getWidth()).toBeCloseTo(612, 3);
    expect(page?.getHeight()).toBeCloseTo(792, 3);
  });

  it('speaks the language of the call in every file that people read', async () => {
    const { code, out } = await call(KIOSK, '--out', join(folder, 'out'), '--language', 'de', '--unit', 'mm');
    expect(code).toBe(0);
    const plan = JSON.parse(readFileSync(join(folder, 'out', 'plan.json'), 'utf8')) as {
      steps: { text: string }[];
      checks: { message: string }[];
    };
    expect(JSON.stringify(plan.steps)).toContain('mit den Anreißlatten ab den beiden Bezugskanten');
    for (const { message } of plan.checks) expect(out).toContain(message);
    expect(readFileSync(join(folder, 'out', 'shopping.csv'), 'utf8')).toContain('Leisten und Profile');
    expect(readFileSync(join(folder, 'out', 'cut-list.csv'), 'utf8')).toMatch(/"\d+,\d mm"/);
  });

  it('2: a file that is not there, not JSON, of another version, or with a negative width', async () => {
    const cases: [string, RegExp][] = [
      [join(folder, 'nowhere.json'), /cannot be read/],
      [join(folder, 'half.json'), /line 1, column \d+/],
      [broken((d) => Object.assign(d, { showface: 7 })), /found format version 7/],
    ];
    writeFileSync(join(folder, 'half.json'), '{"showface": 1, "name"');
    for (const [path, message] of cases) {
      const { code, err } = await call(path, '--out', join(folder, 'out'));
      expect(code).toBe(2);
      expect(err).toMatch(message);
    }
    const negative = broken((d) => {
      (d.parts as { id: string; box: { w: number } }[]).find((p) => p.id === 'plinth')!.box.w = -3;
    });
    const { code, err } = await call(negative, '--out', join(folder, 'out'));
    expect(code).toBe(2);
    expect(err).toMatch(/box\.w \(“Plinth”\): found -3; expected a number of at least 0/);
    expect(readdirSync(folder)).not.toContain('out');
  });

  it('2: a wrong call, with the usage', async () => {
    expect(await call('--out', 'x')).toMatchObject({ code: 2, err: expect.stringContaining('Usage:') });
    const paper = await call(KIOSK, '--out', join(folder, 'out'), '--paper', 'napkin');
    expect(paper).toMatchObject({ code: 2, err: expect.stringContaining('found “napkin”') });
  });

  it('1: a text with a glyph that the font does not have; named, and nothing written', async () => {
    const path = broken((d) => {
      const sign = (d.parts as { kind: string; lettering: { lines: object[] } }[]).find(
        (p) => p.kind === 'sign',
      );
      sign!.lettering.lines = [{ text: 'HARBOR ☂' }];
    });
    const { code, err } = await call(path, '--out', join(folder, 'out'));
    expect(code).toBe(1);
    expect(err).toMatch(/lettering\.missing-glyph: The font of Sign has no .*☂/);
    expect(err).toContain('nothing was written');
    expect(readdirSync(folder)).toEqual(['broken.json']);
  });

  it('helps', async () => {
    expect(await call('--help')).toMatchObject({ code: 0, out: expect.stringContaining('Exit code 0') });
  });
});
