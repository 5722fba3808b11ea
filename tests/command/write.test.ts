import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeWhole } from '../../src/command/write.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const files = new Map([
  ['a.txt', bytes('new a')],
  ['b.txt', bytes('new b')],
  ['c.txt', bytes('new c')],
]);

describe('writing whole or not at all', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'showface-write-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('makes the folder and everything in it', () => {
    writeWhole(join(folder, 'deep', 'out'), files);
    expect(readdirSync(join(folder, 'deep'))).toEqual(['out']);
    expect(readFileSync(join(folder, 'deep', 'out', 'b.txt'), 'utf8')).toBe('new b');
  });

  it('leaves a folder alone that stands where a file is to go', () => {
    const out = join(folder, 'out');
    mkdirSync(join(out, 'b.txt'), { recursive: true });
    writeFileSync(join(out, 'b.txt', 'mine.txt'), 'mine');
    expect(() => writeWhole(out, files)).toThrow(/b\.txt is a folder/);
    expect(readdirSync(out)).toEqual(['b.txt']);
    expect(readFileSync(join(out, 'b.txt', 'mine.txt'), 'utf8')).toBe('mine');
    expect(readdirSync(folder)).toEqual(['out']);
  });

  it.each([0, 1, 2])('a write that fails at file %i leaves no trace', (failing) => {
    let n = 0;
    const disk = {
      write: (path: string, data: Uint8Array) => {
        if (n++ === failing) throw new Error('disk full');
        writeFileSync(path, data);
      },
      rename: renameSync,
    };
    expect(() => writeWhole(join(folder, 'out'), files, disk)).toThrow('disk full');
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([0, 1, 2, 3, 4])('a move that fails at step %i brings the old files back', (failing) => {
    const out = join(folder, 'out');
    mkdirSync(out);
    writeFileSync(join(out, 'a.txt'), 'old a');
    writeFileSync(join(out, 'c.txt'), 'old c');
    writeFileSync(join(out, 'mine.txt'), 'mine');
    let n = 0;
    const disk = {
      write: writeFileSync,
      rename: (from: string, to: string) => {
        if (n++ === failing) throw new Error('refused');
        renameSync(from, to);
      },
    };
    expect(() => writeWhole(out, files, disk)).toThrow('refused');
    expect(readdirSync(out).sort()).toEqual(['a.txt', 'c.txt', 'mine.txt']);
    expect(readFileSync(join(out, 'a.txt'), 'utf8')).toBe('old a');
    expect(readFileSync(join(out, 'c.txt'), 'utf8')).toBe('old c');
    expect(existsSync(join(out, 'mine.txt'))).toBe(true);
    expect(readdirSync(folder)).toEqual(['out']);
  });
});
