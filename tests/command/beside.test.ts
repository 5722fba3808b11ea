import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeHere, makeWithSecond } from '../../src/command/beside.ts';
import type { PlanFile } from '../../src/output/files.ts';
import type { Plan } from '../../src/plan/types.ts';
import { starter } from '../plan/starters.ts';

const DESIGN = starter('harbor-ticket-kiosk');
/** No file of these asks anything of it. */
const PLAN = { design: DESIGN } as Plan;
const NAMES = ['a', 'b', 'c', 'd', 'e'];
const LETTER: Readonly<Record<string, number>> = { a: 1, b: 2, c: 3, d: 4, e: 5 };

describe('a second thread that makes files too', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'showface-beside-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const bytesOf = (name: string) => new Uint8Array([LETTER[name] ?? 0]);

  /** The files; the first of them waits until `until` says so. `made` tells which were made in this thread. */
  function filesOf(made: string[], until: () => boolean): PlanFile[] {
    return NAMES.map((name, i) => ({
      name,
      type: 'text/csv',
      make: async () => {
        while (i === 0 && !until()) await new Promise((resolve) => setImmediate(resolve));
        made.push(name);
        return bytesOf(name);
      },
    }));
  }

  /** A thread that does this with what it is told of. */
  function scriptOf(act: string): string {
    const path = join(folder, 'second.mjs');
    writeFileSync(
      path,
      `import { parentPort } from 'node:worker_threads';
      import { writeFileSync } from 'node:fs';
      const began = () => writeFileSync(${JSON.stringify(join(folder, 'began'))}, '');
      parentPort.once('message', ({ taken }) => { ${act} });`,
    );
    return pathToFileURL(path).href;
  }
  const began = () => existsSync(join(folder, 'began'));
  const all = new Map(NAMES.map((name) => [name, bytesOf(name)]));

  it('brings what it took, and each file is made once', async () => {
    const script = scriptOf(`
      const at = Atomics.add(taken, 0, 1);
      began();
      parentPort.postMessage(new Map([['abcde'[at], new Uint8Array([at + 1])]]));`);
    const made: string[] = [];
    const files = await makeWithSecond({ script, made: '' }, DESIGN)(PLAN, filesOf(made, began));
    expect([...files]).toEqual([...all]);
    expect(made).toHaveLength(NAMES.length - 1);
  });

  it('that dies with files in its hands leaves none out', async () => {
    const script = scriptOf('Atomics.add(taken, 0, 3); began(); process.exit(1);');
    const made: string[] = [];
    const files = await makeWithSecond({ script, made: '' }, DESIGN)(PLAN, filesOf(made, began));
    expect([...files]).toEqual([...all]);
    expect(made.sort()).toEqual(NAMES);
  });

  it('that cannot start changes nothing', async () => {
    const script = pathToFileURL(join(folder, 'nowhere.mjs')).href;
    const made: string[] = [];
    const files = await makeWithSecond({ script, made: '' }, DESIGN)(
      PLAN,
      filesOf(made, () => true),
    );
    expect([...files]).toEqual([...all]);
    expect(made).toEqual(NAMES);
  });

  it('a fault is that of the file, as by one thread', async () => {
    const script = scriptOf('began(); throw new Error("another");');
    const faulty = filesOf([], () => true).map((file) =>
      file.name === 'c' ? { ...file, make: () => Promise.reject(new Error('c failed')) } : file,
    );
    for (const make of [makeHere, makeWithSecond({ script, made: '' }, DESIGN)])
      await expect(make(PLAN, faulty)).rejects.toThrow('c failed');
  });
});
