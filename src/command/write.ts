import { createHash } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** What writing asks of the file system, each one call of it that changes something; exchanged in tests. */
export interface Disk {
  readonly mkdir: (path: string) => void;
  readonly open: (path: string) => number;
  /** Gives how many bytes it took. */
  readonly write: (file: number, bytes: Uint8Array) => number;
  readonly sync: (file: number) => void;
  readonly close: (file: number) => void;
  readonly rename: (from: string, to: string) => void;
  readonly unlink: (path: string) => void;
  readonly rmdir: (path: string) => void;
}

export const DISK: Disk = {
  mkdir: (path) => mkdirSync(path),
  open: (path) => openSync(path, 'wx'),
  write: (file, bytes) => writeSync(file, bytes),
  sync: fsyncSync,
  close: closeSync,
  rename: renameSync,
  unlink: unlinkSync,
  rmdir: rmdirSync,
};

/** Stands beside the files: their names and sums, as `sha256sum` writes them, so that the next set replaces this one. */
const LISTING = '.showface-files';
const stageName = (pid: number): string => `.showface-${pid}`;
const STAGE = /^\.showface-(\d+)$/;

/**
 * Writes a set of files into a folder: all of them or none, in the place of the set that an earlier run wrote there,
 * with what that one had and this one has not. Other files are left alone.
 *
 * The set is written whole inside the folder first, in a stage, so nothing but the folder itself has to be writable
 * and no move crosses disks. Then the old files are moved out, all of them, before the first new one is moved in: at
 * no moment do files of two sets stand together. What a run left that was killed is brought to an end by the next
 * one: back to the old set while the new one was not whole, else on to the new one. An error brings the old set back.
 *
 * Throws what the file system threw, or an error that says what stands in the way: a folder in a file's place, or
 * another run that writes there.
 */
export function writeWhole(folder: string, files: ReadonlyMap<string, Uint8Array>, disk: Disk = DISK): void {
  const target = resolve(folder);
  refuseFolders(target, files.keys());
  const made: string[] = [];
  try {
    makeFolders(target, disk, made);
    endEarlierRuns(target, disk);
    const stage = join(target, stageName(process.pid));
    try {
      disk.mkdir(stage);
      for (const sub of ['new', 'old']) disk.mkdir(join(stage, sub));
      for (const [name, bytes] of files) put(join(stage, 'new', name), bytes, disk);
      put(join(stage, 'new', LISTING), listingOf(files), disk);
      disk.rename(join(stage, 'new'), join(stage, 'ready'));
      goOn(target, stage, disk);
    } catch (error) {
      attempt(() => end(target, stage, disk, true));
      throw error;
    }
    attempt(() => clear(stage, disk));
  } catch (error) {
    // A folder that something else has come into stays.
    attempt(() => {
      for (const path of made.reverse()) disk.rmdir(path);
    });
    throw error;
  }
}

/** What fails here is left to the next run, which cleans up. */
function attempt(act: () => void): void {
  try {
    act();
  } catch {
    // The fault that led here, if any, is told; this one changes nothing of it.
  }
}

/** Ends what runs that were killed left in the folder. Throws where one of them is still at work. */
function endEarlierRuns(target: string, disk: Disk): void {
  for (const name of readdirSync(target)) {
    const stage = STAGE.exec(name);
    if (!stage) continue;
    const pid = Number(stage[1]);
    if (pid !== process.pid && isAlive(pid)) {
      throw new Error(`another run writes into it (process ${pid}); wait for it, or choose another --out`);
    }
    end(target, join(target, name), disk, false);
  }
}

/** Brings a stage to its end and takes it away: back where that was begun or is asked for, else on where it was whole. */
function end(target: string, stage: string, disk: Disk, back: boolean): void {
  const has = (sub: string) => exists(join(stage, sub));
  // All of it is in its place once the listing is.
  const begun = exists(join(stage, 'ready', LISTING));
  if (begun && back) disk.rename(join(stage, 'ready'), join(stage, 'undo'));
  else if (begun) goOn(target, stage, disk);
  if (has('undo')) {
    goBack(target, stage, disk);
    disk.rename(join(stage, 'undo'), join(stage, 'gone'));
  }
  if (exists(stage)) clear(stage, disk);
}

/** Moves the old set out and then the new one in, from wherever that was left; the listings go last each time. */
function goOn(target: string, stage: string, disk: Disk): void {
  const [ready, old] = [join(stage, 'ready'), join(stage, 'old')];
  const names = withListingLast(readdirSync(ready));
  const listed = listedIn(join(target, LISTING));
  // While the old listing stands, whatever stands is of the old set.
  const stale = [...listed]
    .filter(([name, sum]) => !names.includes(name) && sumOf(join(target, name)) === sum)
    .map(([name]) => name);
  for (const name of [...stale, ...names]) {
    if (exists(join(target, name))) disk.rename(join(target, name), join(old, name));
  }
  for (const name of names) disk.rename(join(ready, name), join(target, name));
}

/** Moves what is there of the new set out again and then the old set in, from wherever that was left. */
function goBack(target: string, stage: string, disk: Disk): void {
  const [undo, old] = [join(stage, 'undo'), join(stage, 'old')];
  const out = new Set(readdirSync(undo));
  for (const name of listedIn(join(undo, LISTING)).keys()) {
    if (!out.has(name) && exists(join(target, name))) disk.rename(join(target, name), join(undo, name));
  }
  for (const name of withListingLast(readdirSync(old))) disk.rename(join(old, name), join(target, name));
}

const withListingLast = (names: readonly string[]): string[] => [
  ...names.filter((name) => name !== LISTING),
  ...names.filter((name) => name === LISTING),
];

function put(path: string, bytes: Uint8Array, disk: Disk): void {
  const file = disk.open(path);
  try {
    for (let at = 0; at < bytes.length; ) at += disk.write(file, bytes.subarray(at));
    disk.sync(file);
  } finally {
    disk.close(file);
  }
}

/** Makes a folder and those above it that are missing, and adds them to those made, from above. */
function makeFolders(path: string, disk: Disk, made: string[]): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = dirname(path);
  if (above !== path) makeFolders(above, disk, made);
  disk.mkdir(path);
  made.push(path);
}

/** Takes a stage away. */
function clear(path: string, disk: Disk): void {
  for (const entry of readdirSync(path, { withFileTypes: true })) {
    if (entry.isDirectory()) clear(join(path, entry.name), disk);
    else disk.unlink(join(path, entry.name));
  }
  disk.rmdir(path);
}

const exists = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false }) !== undefined;

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // It is there, but another person's.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Sum of a file; null where there is none. */
const sumOf = (path: string): string | null =>
  lstatSync(path, { throwIfNoEntry: false })?.isFile() ? sha256(readFileSync(path)) : null;

const listingOf = (files: ReadonlyMap<string, Uint8Array>): Uint8Array =>
  new TextEncoder().encode([...files].map(([name, bytes]) => `${sha256(bytes)}  ${name}\n`).join(''));

/** Names and sums of a listing; none where there is no listing. A name that leads elsewhere is none of ours. */
function listedIn(path: string): Map<string, string> {
  if (!exists(path)) return new Map();
  const lines = readFileSync(path, 'utf8').split('\n');
  return new Map(
    lines.flatMap((line) => {
      const [, sum, name] = /^([0-9a-f]{64}) {2}([^/\\]+)$/.exec(line) ?? [];
      return sum && name ? [[name, sum] as const] : [];
    }),
  );
}

function refuseFolders(target: string, names: Iterable<string>): void {
  for (const name of names) {
    const path = join(target, name);
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) {
      throw new Error(`${path} is a folder; move it away, or choose another --out`);
    }
  }
}
