import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { run } from '../../src/command/run.ts';
import { saveDesign } from '../../src/design/save.ts';
import { everyKind } from '../design/damage.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

it('writes, made into one file, what it writes from its sources, byte for byte', async () => {
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
    for (const name of readdirSync(made))
      expect(readFileSync(join(made, name)).equals(readFileSync(join(compiled, name)))).toBe(true);
    const cache = readdirSync(join(ROOT, 'node_modules/.cache/showface'));
    // The made file, and what the engine read out of it.
    for (const kind of ['.cjs', '.read']) expect(cache.filter((name) => name.endsWith(kind))).toHaveLength(1);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
