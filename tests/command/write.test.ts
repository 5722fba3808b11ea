import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ts from 'typescript';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DISK, type Disk, writeWhole } from '../../src/command/write.ts';
import { runs } from '../runs.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const setOf = (design: string, names: readonly string[]) =>
  new Map(names.map((name) => [name, bytes(`${design} ${name}`)]));

/** An earlier design had a sign that the later one has not. */
const OLD = ['plan.json', 'packet.pdf', 'sign-shop.svg'];
const NEW = ['plan.json', 'packet.pdf', 'sign-bar.svg', 'sign-bar-mm.dxf'];
const MINE = ['mine.txt', 'sign-mine.svg'];

/** Nothing here loses its power: what is written need not be pressed onto the disk. */
const QUICK: Disk = { ...DISK, sync: () => {} };
const CALLS = Object.keys(DISK) as (keyof Disk)[];

/** A disk that does something at its nth call, counted from 0, instead of it. */
function diskThat(nth: number, instead: () => void): { readonly disk: Disk; readonly calls: () => number } {
  let n = 0;
  const at =
    (call: keyof Disk) =>
    (...args: never[]) => {
      if (n++ === nth) instead();
      return (QUICK[call] as (...a: never[]) => unknown)(...args);
    };
  return {
    disk: Object.fromEntries(CALLS.map((call) => [call, at(call)])) as unknown as Disk,
    calls: () => n,
  };
}

/** A disk that nothing reaches any more from its nth call on: all that is left of a process that was killed there. */
function diskUntil(nth: number): Disk {
  let n = 0;
  const at =
    (call: keyof Disk) =>
    (...args: never[]) => {
      if (n++ >= nth) throw new Error('killed');
      return (QUICK[call] as (...a: never[]) => unknown)(...args);
    };
  return Object.fromEntries(CALLS.map((call) => [call, at(call)])) as unknown as Disk;
}

const fails = () => {
  throw new Error('disk full');
};

/** What a person sees in a folder. */
const seen = (folder: string) =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((name) => !name.startsWith('.showface'))
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );
const expected = (design: string, names: readonly string[]) =>
  Object.fromEntries([
    ...[...names, ...MINE]
      .sort()
      .map((name) => [name, MINE.includes(name) ? 'mine' : `${design} ${name}`] as const),
  ]);
const traces = (folder: string) => readdirSync(folder).filter((name) => /^\.showface-\d/.test(name));

describe('writing whole or not at all', () => {
  let folder = '';
  let out = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'showface-write-'));
    out = join(folder, 'out');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  /** A folder that holds the old set and files of the person's own. */
  function begin(): void {
    rmSync(out, { recursive: true, force: true });
    writeWhole(out, setOf('old', OLD), QUICK);
    for (const name of MINE) writeFileSync(join(out, name), 'mine');
  }

  /** How many calls it takes to put the new set into the place of the old one. */
  function callsNeeded(): number {
    begin();
    const { disk, calls } = diskThat(-1, fails);
    writeWhole(out, setOf('new', NEW), disk);
    return calls();
  }

  /** Lets a run clean up and no more: it fails before it writes anything of its own. Tells what it ended with. */
  function cleanUp(disk: Disk = QUICK): string {
    const mkdir = () => {
      throw new Error('cleaned up');
    };
    try {
      writeWhole(out, setOf('none', NEW), { ...disk, mkdir });
      return 'written';
    } catch (error) {
      return (error as Error).message;
    }
  }

  it('makes the folder and everything in it', () => {
    writeWhole(join(out, 'deep'), setOf('new', NEW));
    expect(readdirSync(out)).toEqual(['deep']);
    expect(seen(join(out, 'deep'))['packet.pdf']).toBe('new packet.pdf');
  });

  it('changes the whole set: signs of an earlier design go, files of the person stay', () => {
    begin();
    writeWhole(out, setOf('new', NEW));
    expect(seen(out)).toEqual(expected('new', NEW));
    expect(traces(out)).toEqual([]);
    // The listing is in the format of coreutils: their program finds every file as it is listed.
    const sums = spawnSync('sha256sum', ['-c', '.showface-files'], { cwd: out, encoding: 'utf8' });
    if (!sums.error) expect(sums.stdout.match(/: OK/g)).toHaveLength(NEW.length);
  });

  it('keeps a sign of an earlier design that the person has changed since', () => {
    begin();
    writeFileSync(join(out, 'sign-shop.svg'), 'drawn over');
    writeWhole(out, setOf('new', NEW));
    expect(seen(out)).toEqual({ ...expected('new', NEW), 'sign-shop.svg': 'drawn over' });
  });

  it('leaves a folder alone that stands where a file is to go', () => {
    mkdirSync(join(out, 'packet.pdf'), { recursive: true });
    writeFileSync(join(out, 'packet.pdf', 'mine.txt'), 'mine');
    expect(() => writeWhole(out, setOf('new', NEW))).toThrow(/packet\.pdf is a folder/);
    expect(readdirSync(out)).toEqual(['packet.pdf']);
    expect(readFileSync(join(out, 'packet.pdf', 'mine.txt'), 'utf8')).toBe('mine');
  });

  it('says so where another run is at work there, and leaves it alone', () => {
    begin();
    const stage = join(out, `.showface-${process.ppid}`);
    mkdirSync(stage);
    expect(() => writeWhole(out, setOf('new', NEW))).toThrow(/another run writes into it/);
    expect(existsSync(stage)).toBe(true);
    expect(seen(out)).toEqual(expected('old', OLD));
  });

  it('an error at any call leaves the old set, or no folder where none was', () => {
    const needed = callsNeeded();
    for (let n = 0; n < needed; n++) {
      begin();
      let thrown = false;
      try {
        writeWhole(out, setOf('new', NEW), diskThat(n, fails).disk);
      } catch {
        thrown = true;
      }
      // Once the new set stands, taking the stage away is left to the next run.
      expect(seen(out)).toEqual(thrown ? expected('old', OLD) : expected('new', NEW));
      if (thrown) expect(traces(out)).toEqual([]);
      rmSync(out, { recursive: true, force: true });
      const deep = join(out, 'deep');
      try {
        writeWhole(deep, setOf('new', NEW), diskThat(n, fails).disk);
        expect(seen(deep)).toEqual(Object.fromEntries(NEW.map((name) => [name, `new ${name}`]).sort()));
      } catch {
        expect(existsSync(out)).toBe(false);
      }
    }
    expect(needed).toBeGreaterThan(30);
  });

  it('is ended by the next run wherever it was killed, and wherever that one was killed too', () => {
    const needed = callsNeeded();
    let pairs = 0;
    for (let n = 0; n <= needed; n++) {
      for (let again = 0, ended = ''; ended !== 'cleaned up'; again++) {
        begin();
        try {
          writeWhole(out, setOf('new', NEW), diskUntil(n));
        } catch {
          // Killed.
        }
        // Never of two designs.
        const texts = Object.entries(seen(out)).filter(([name]) => !MINE.includes(name));
        expect(new Set(texts.map(([, text]) => text.split(' ')[0])).size).toBeLessThan(2);
        ended = cleanUp(diskUntil(again));
        expect(cleanUp()).toBe('cleaned up');
        expect([expected('old', OLD), expected('new', NEW)]).toContainEqual(seen(out));
        expect(traces(out)).toEqual([]);
        pairs++;
      }
    }
    expect(pairs).toBeGreaterThan(300);
  });

  /** The room's own file as a program: it writes the new set and is killed at its nth call to the disk. */
  function program(): string {
    const source = readFileSync(new URL('../../src/command/write.ts', import.meta.url), 'utf8');
    const { outputText } = ts.transpileModule(source, {
      compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
    });
    writeFileSync(join(folder, 'write.mjs'), outputText);
    writeFileSync(
      join(folder, 'program.mjs'),
      `import { DISK, writeWhole } from './write.mjs';
      const [out, nth] = process.argv.slice(2);
      let n = 0;
      const die = () => process.kill(process.pid, 'SIGKILL');
      const disk = Object.fromEntries(Object.entries(DISK).map(([call, act]) => [call, (...args) => {
        if (n++ !== Number(nth)) return act(...args);
        // Half of what is written is on the disk by then.
        if (call === 'write') act(args[0], args[1].subarray(0, args[1].length >> 1));
        die();
      }]));
      const bytes = (text) => new TextEncoder().encode(text);
      writeWhole(out, new Map(${JSON.stringify(NEW)}.map((name) => [name, bytes('new ' + name)])), disk);
      process.stdout.write(String(n));`,
    );
    // Another person has to read it too.
    chmodSync(folder, 0o755);
    return join(folder, 'program.mjs');
  }

  it('a process killed at its calls leaves nothing mixed, and the next run cleans up', () => {
    const needed = callsNeeded();
    const path = program();
    const found = { old: 0, new: 0 };
    // One call in four: each of them is ended by an error above.
    const step = Math.max(1, 5 - runs(1));
    for (let n = needed; n >= 0; n -= step) {
      begin();
      const child = spawnSync(process.execPath, [path, out, String(n)], { encoding: 'utf8' });
      expect(child.signal).toBe(n < needed ? 'SIGKILL' : null);
      const texts = Object.entries(seen(out)).filter(([name]) => !MINE.includes(name));
      for (const [name, text] of texts) expect(['old', 'new'].map((d) => `${d} ${name}`)).toContain(text);
      expect(new Set(texts.map(([, text]) => text.split(' ')[0])).size).toBeLessThan(2);
      const copy = join(folder, 'copy');
      cpSync(out, copy, { recursive: true });
      writeWhole(copy, setOf('third', OLD));
      expect(seen(copy)).toEqual(expected('third', OLD));
      expect(traces(copy)).toEqual([]);
      rmSync(copy, { recursive: true });
      expect(cleanUp()).toBe('cleaned up');
      const design = seen(out)['plan.json'] === 'old plan.json' ? 'old' : 'new';
      expect(seen(out)).toEqual(expected(design, design === 'old' ? OLD : NEW));
      found[design]++;
    }
    expect(found.old).toBeGreaterThan(2);
    expect(found.new).toBeGreaterThan(2);
  });

  it('needs no more than the folder itself', () => {
    const path = program();
    const closed = join(folder, 'closed');
    const inside = join(closed, 'out');
    mkdirSync(inside, { recursive: true });
    const root = process.getuid?.() === 0;
    // Root may write anywhere: somebody else does it then.
    if (root) chownSync(inside, 65534, 65534);
    else chmodSync(closed, 0o555);
    const child = spawnSync(process.execPath, [path, inside, '-1'], {
      encoding: 'utf8',
      ...(root ? { uid: 65534, gid: 65534 } : {}),
    });
    chmodSync(closed, 0o755);
    expect(child.stderr).toBe('');
    expect(Object.keys(seen(inside))).toEqual([...NEW].sort());
    expect(readdirSync(closed)).toEqual(['out']);
  });

  const OTHER_DISK = '/dev/shm';
  const other = existsSync(OTHER_DISK) && statSync(OTHER_DISK).dev !== statSync(tmpdir()).dev;
  it.skipIf(!other)(`writes through a link to another disk (${OTHER_DISK})`, () => {
    const there = mkdtempSync(join(OTHER_DISK, 'showface-write-'));
    symlinkSync(there, out);
    try {
      writeWhole(out, setOf('old', OLD));
      writeWhole(out, setOf('new', NEW));
      expect(Object.keys(seen(there))).toEqual([...NEW].sort());
      expect(traces(there)).toEqual([]);
    } finally {
      rmSync(there, { recursive: true });
    }
  });

  const mounts =
    spawnSync('unshare', ['-m', 'sh', '-c', 'mount -t tmpfs none /mnt'], { stdio: 'ignore' }).status === 0;
  it.skipIf(!mounts)('writes into a mount point', () => {
    const path = program();
    mkdirSync(out);
    const script =
      'mount -t tmpfs none "$1" && "$2" "$3" "$1" -1 >/dev/null && "$2" "$3" "$1" -1 >/dev/null && ls -A "$1"';
    const child = spawnSync('unshare', ['-m', 'sh', '-c', script, 'sh', out, process.execPath, path], {
      encoding: 'utf8',
    });
    expect(child.stderr).toBe('');
    expect(child.stdout.trim().split('\n').sort()).toEqual(['.showface-files', ...NEW].sort());
  });
});
