import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { run } from '../../src/command/run.ts';
import { saveDesign } from '../../src/design/save.ts';
import { everyKind } from '../design/damage.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** A file as it is; a PDF with its streams unpacked, each length and the table of places (ISO 32000-1, 7.5.4) left out. */
function contentOf(path: string): string {
  const text = readFileSync(path, 'latin1');
  if (!path.endsWith('.pdf')) return text;
  const objects = text.slice(0, text.lastIndexOf('xref', text.lastIndexOf('startxref') - 1));
  return objects
    .replace(/\/Length \d+/g, '')
    .replace(/stream\n([\s\S]*?)\nendstream/g, (_, packed) =>
      inflateSync(Buffer.from(packed, 'latin1')).toString('latin1'),
    );
}

it('writes, made into one file, what it writes from its sources', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'showface-start-'));
  try {
    const design = join(folder, 'design.json');
    const { parts, ...every } = everyKind();
    const sound = parts.filter(({ kind }) => kind === 'strip' || kind === 'sign' || kind === 'array');
    writeFileSync(design, saveDesign({ ...every, parts: sound, rules: [], joints: [], groups: [] }));
    const [made, compiled] = [join(folder, 'made'), join(folder, 'compiled')];
    const start = () =>
      spawnSync(process.execPath, [join(ROOT, 'src/command/start.mjs'), design, '--out', made], {
        encoding: 'utf8',
      });
    // The first time it may have to be made; the second time it is there.
    for (let i = 0; i < 2; i++) expect(start()).toMatchObject({ status: 0, stderr: '' });
    expect(await run([design, '--out', compiled], { out: () => {}, err: () => {} })).toBe(0);
    expect(readdirSync(made)).toEqual(readdirSync(compiled));
    // The listing tells sums of the bytes, and those of packed streams are the packer's.
    for (const name of readdirSync(made).filter((name) => !name.startsWith('.')))
      expect(contentOf(join(made, name)) === contentOf(join(compiled, name))).toBe(true);
    const cache = readdirSync(join(ROOT, 'node_modules/.cache/showface'));
    // The made file, and what the engine read out of it.
    for (const kind of ['.cjs', '.read']) expect(cache.filter((name) => name.endsWith(kind))).toHaveLength(1);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

it('ends, with nothing written, where errors forbid a plan', () => {
  const folder = mkdtempSync(join(tmpdir(), 'showface-start-'));
  try {
    const design = join(folder, 'design.json');
    const { parts, ...every } = everyKind();
    const [strip] = parts.filter(({ kind }) => kind === 'strip');
    if (!strip) throw new Error('no strip');
    // Two rules that fight.
    const rules = [10, 20].map((distance) => ({
      ...{ id: `r${distance}`, kind: 'set' as const, axis: 'x' as const, distance },
      ...{ edge: { of: strip.id, side: 'low' as const }, from: { of: 'face', side: 'low' as const } },
    }));
    writeFileSync(design, saveDesign({ ...every, parts: [strip], rules, joints: [], groups: [] }));
    const out = join(folder, 'out');
    const script = join(ROOT, 'src/command/start.mjs');
    // The first time it may have to be made, and by the second time a second thread has begun.
    for (let i = 0; i < 2; i++) {
      const { status, stderr } = spawnSync(process.execPath, [script, design, '--out', out], {
        ...{ encoding: 'utf8' as const, timeout: 100_000 },
      });
      expect(stderr).toMatch(/forbid/);
      expect(status).toBe(1);
    }
    expect(readdirSync(folder)).toEqual(['design.json']);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
