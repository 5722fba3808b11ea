import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
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
 * A folder that stands where a file is to go is left alone: writing is refused. Throws what the file system
 * threw, or an error that says what stands in the way.
 */
export function writeWhole(folder: string, files: ReadonlyMap<string, Uint8Array>, disk: Disk = DISK): void {
  const target = resolve(folder);
  refuseFolders(target, files.keys());
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
    // Should this fail too, the old files are still in the stage, which then stays.
    for (const name of saved) renameSync(join(stage, 'old', name), join(target, name));
    if (madeTarget) rmSync(target, { recursive: true, force: true });
    rmSync(stage, { recursive: true, force: true });
    throw error;
  }
  rmSync(stage, { recursive: true, force: true });
}

function refuseFolders(target: string, names: Iterable<string>): void {
  for (const name of names) {
    const path = join(target, name);
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) {
      throw new Error(`${path} is a folder; move it away, or choose another --out`);
    }
  }
}
