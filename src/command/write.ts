import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** File-system calls that writing needs; exchanged in tests to fail at a chosen moment. */
export interface Disk {
  readonly write: (path: string, bytes: Uint8Array) => void;
  readonly rename: (from: string, to: string) => void;
}

const DISK: Disk = { write: writeFileSync, rename: renameSync };

/**
 * Writes files into a folder, all of them or none. They are written whole beside the folder first and then
 * moved into place; if a move fails, those already made are taken back and what stood there returns.
 * Throws what the file system threw.
 */
export function writeWhole(folder: string, files: ReadonlyMap<string, Uint8Array>, disk: Disk = DISK): void {
  const target = resolve(folder);
  const parent = dirname(target);
  mkdirSync(parent, { recursive: true });
  const stage = mkdtempSync(join(parent, `.${basename(target)}-`));
  const madeTarget = !existsSync(target);
  const moved: string[] = [];
  const saved: string[] = [];
  try {
    mkdirSync(join(stage, 'new'));
    mkdirSync(join(stage, 'old'));
    for (const [name, bytes] of files) disk.write(join(stage, 'new', name), bytes);
    mkdirSync(target, { recursive: true });
    for (const name of files.keys()) {
      if (existsSync(join(target, name))) {
        disk.rename(join(target, name), join(stage, 'old', name));
        saved.push(name);
      }
      disk.rename(join(stage, 'new', name), join(target, name));
      moved.push(name);
    }
  } catch (error) {
    for (const name of moved) rmSync(join(target, name), { force: true });
    for (const name of saved) renameSync(join(stage, 'old', name), join(target, name));
    if (madeTarget) rmSync(target, { recursive: true, force: true });
    throw error;
  } finally {
    rmSync(stage, { recursive: true, force: true });
  }
}
