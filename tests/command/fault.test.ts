import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { run } from '../../src/command/run.ts';

const KIOSK = new URL('../../assets/starters/harbor-ticket-kiosk.json', import.meta.url).pathname;

describe('a fault of the tool itself', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'showface-fault-'));
  });
  afterEach(() => {
    vi.restoreAllMocks();
    rmSync(folder, { recursive: true, force: true });
  });

  it('is told in a sentence, not as a stack, and nothing is written', async () => {
    // No plan is made without a distance.
    vi.spyOn(Math, 'hypot').mockImplementation(() => {
      throw new RangeError('part x is not in this component');
    });
    const err: string[] = [];
    const code = await run([KIOSK, '--out', join(folder, 'out')], {
      out: () => {},
      err: (line) => err.push(line),
    });
    expect(code).toBe(2);
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(
      /^This design stopped the tool: part x is not in this component\. .*nothing was written\.$/,
    );
    expect(readdirSync(folder)).toEqual([]);
  });
});
