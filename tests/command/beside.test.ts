import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { oneThread, type Second, twoThreads } from '../../src/command/beside.ts';
import type { PlanFile } from '../../src/output/files.ts';
import { stockCuts } from '../../src/plan/cuttingStage.ts';
import { type Done, plan } from '../../src/plan/plan.ts';
import { SUPPLIES, starter } from '../plan/starters.ts';

const DESIGN = starter('harbor-ticket-kiosk');
/** None of these files asks anything of it. */
const PLAN = plan(DESIGN, SUPPLIES, { effort: { nodes: 2000 } });
const NAMES = ['a', 'b', 'c', 'd', 'e'];
const LETTER: Readonly<Record<string, number>> = { a: 1, b: 2, c: 3, d: 4, e: 5 };

describe('a second thread that makes files too', () => {
  let folder = '';
  /** How many second threads there were: each has a script and a sign of its own. */
  let threads = 0;
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

  /** A thread that does this once it is told of this part of the plan. */
  function handsThat(act: string, part = 'rest') {
    threads += 1;
    const path = join(folder, `second-${threads}.mjs`);
    writeFileSync(
      path,
      `import { parentPort } from 'node:worker_threads';
      import { writeFileSync } from 'node:fs';
      const began = () => writeFileSync(${JSON.stringify(sign())}, '');
      let begun, done;
      const [FILES, CUTTING, PATTERNS] = [0, 1, 2];
      parentPort.on('message', (told) => {
        if ('start' in told) ({ begun, done } = told.start);
        if (${JSON.stringify(part)} in told) { ${act} }
      });`,
    );
    return twoThreads(secondBy(path), DESIGN);
  }
  /** As `start.mjs` starts it. */
  function secondBy(path: string): Second {
    const worker = new Worker(pathToFileURL(path));
    const gone = new Promise((resolve) => {
      for (const end of ['error', 'exit'] as const) worker.once(end, resolve);
    });
    worker.unref();
    return { worker, gone };
  }
  const sign = () => join(folder, `began-${threads}`);
  const began = () => existsSync(sign());
  const all = new Map(NAMES.map((name) => [name, bytesOf(name)]));

  it('brings what it took, and each file is made once', async () => {
    const hands = handsThat(`
      const at = Atomics.add(begun, FILES, 1);
      began();
      parentPort.postMessage(new Map([['abcde'[at], new Uint8Array([at + 1])]]));
      parentPort.close();`);
    hands.beside?.planned(PLAN);
    const made: string[] = [];
    expect([...(await hands.make(filesOf(made, began)))]).toEqual([...all]);
    expect(made).toHaveLength(NAMES.length - 1);
  });

  it('that dies with files in its hands leaves none out', async () => {
    const hands = handsThat('Atomics.add(begun, FILES, 3); began(); process.exit(1);');
    hands.beside?.planned(PLAN);
    const made: string[] = [];
    expect([...(await hands.make(filesOf(made, began)))]).toEqual([...all]);
    expect(made.sort()).toEqual(NAMES);
  });

  it('that cannot start changes nothing', async () => {
    const made: string[] = [];
    const { make } = twoThreads(secondBy(join(folder, 'nowhere.mjs')), DESIGN);
    expect([...(await make(filesOf(made, () => true)))]).toEqual([...all]);
    expect(made).toEqual(NAMES);
  });

  it('a fault is that of the file, as by one thread', async () => {
    const faulty = filesOf([], () => true).map((file) =>
      file.name === 'c' ? { ...file, make: () => Promise.reject(new Error('c failed')) } : file,
    );
    for (const { beside, make } of [oneThread, handsThat('began(); throw new Error("another");')]) {
      beside?.planned(PLAN);
      await expect(make(faulty)).rejects.toThrow('c failed');
    }
  });

  /** What a second thread that does this brings when a work is asked for, after it has begun. */
  async function broughtBy(act: string, ...order: (keyof Done)[]): Promise<(Done[keyof Done] | null)[]> {
    const { beside } = handsThat(act, 'joined');
    const { joinery, stocks } = PLAN;
    const { owned, shop, job, pages, measure, name } = DESIGN;
    const { tables, correction, language } = SUPPLIES;
    const cuts = stockCuts({ pieces: joinery.pieces, stocks, owned, shop });
    const asked = beside?.joined(PLAN, {
      cutting: { cuts, pieces: joinery.pieces, job, nodes: 2000 },
      patterns: {
        requests: [],
        page: { papers: tables.papers, pages, measure, name, correction, language },
      },
    });
    while (act && !began()) await new Promise((resolve) => setImmediate(resolve));
    return order.map((what) => asked?.[what]() ?? null);
  }
  const takes = (what: string) => `Atomics.store(begun, ${what}, 1);`;
  const ends = (what: string) => `Atomics.store(begun, ${what}, -1); Atomics.notify(begun, ${what});`;

  it('cuts and lays out patterns while the plan goes on, and is waited for, whichever is asked for first', async () => {
    const cuts = `for (let i = 0; i < 99; i++) Atomics.add(begun, CUTTING, 1);
      done.postMessage({ cutting: { sheets: ['cut'] } });`;
    const draws = `done.postMessage({ patterns: ['drawn'] });`;
    const act = `${takes('PATTERNS')} ${takes('CUTTING')} began(); ${cuts} ${ends('CUTTING')} ${draws} ${ends('PATTERNS')}`;
    const [cut, drawn] = [{ sheets: ['cut'] }, ['drawn']];
    expect(await broughtBy(act, 'patterns', 'cutting')).toEqual([drawn, cut]);
    expect(await broughtBy(act, 'cutting', 'patterns')).toEqual([cut, drawn]);
  });

  it.each(['cutting', 'patterns'] as const)(
    'leaves the %s to the planner where it has not begun, comes to a fault, or dies over it',
    async (what) => {
      const slot = what.toUpperCase();
      expect(await broughtBy('', what)).toEqual([null]);
      expect(await broughtBy(`${takes(slot)} began(); ${ends(slot)}`, what)).toEqual([null]);
      expect(await broughtBy(`${takes(slot)} began(); process.exit(1);`, what)).toEqual([null]);
    },
  );
});
