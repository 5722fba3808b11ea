import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { run } from '../../src/command/run.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const KIOSK = join(ROOT, 'assets/starters/harbor-ticket-kiosk.json');

it('writes, made into one file, what it writes from its sources, byte for byte', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'showface-start-'));
  try {
    const [made, compiled] = [join(folder, 'made'), join(folder, 'compiled')];
    const start = () =>
      spawnSync(process.execPath, [join(ROOT, 'src/command/start.mjs'), KIOSK, '--out', made], {
        encoding: 'utf8',
      });
    // The first time it may have to be made; the second time it is there.
    for (let i = 0; i < 2; i++) expect(start()).toMatchObject({ status: 0, stderr: '' });
    expect(await run([KIOSK, '--out', compiled], { out: () => {}, err: () => {} })).toBe(0);
    expect(readdirSync(made)).toEqual(readdirSync(compiled));
    for (const name of readdirSync(made))
      expect(readFileSync(join(made, name)).equals(readFileSync(join(compiled, name)))).toBe(true);
    const cache = readdirSync(join(ROOT, 'node_modules/.cache/showface'));
    expect(cache.filter((name) => name.endsWith('.mjs'))).toHaveLength(1);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
