import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BenchRow } from './row.ts';

/**
 * Runs every bench of this folder (or those named in the call), prints a table and writes it into the README
 * here. Figures are ratios within one run, so that they mean the same on a fast and on a slow machine. Each
 * bench has a process of its own: its memory is its own, and one that fails does not take the others along.
 */
const HERE = new URL('./', import.meta.url);
const OTHERS = ['run.ts', 'row.ts'];
/** A bench that hangs is ended; on a loaded machine one may take many minutes. */
const LONGEST_MS = 2_400_000;

interface Outcome {
  readonly rows: readonly BenchRow[];
  readonly peakMb: number;
}

function all(named: readonly string[]): boolean {
  const known = readdirSync(HERE)
    .filter((file) => file.endsWith('.ts') && !OTHERS.includes(file))
    .map((file) => file.replace('.ts', ''))
    .sort();
  const unknown = named.filter((name) => !known.includes(name));
  if (unknown.length > 0) {
    process.stdout.write(`No bench is called ${unknown.join(', ')}; there are ${known.join(', ')}.\n`);
    return false;
  }
  const page = new URL('README.md', HERE);
  const rows = existsSync(page) ? rowsOf(readFileSync(page, 'utf8'), known) : new Map<string, string[]>();
  const failed: string[] = [];
  for (const name of known.filter((one) => named.length === 0 || named.includes(one))) {
    const outcome = one(name);
    if (outcome === null) {
      failed.push(name);
      continue;
    }
    const lines = [...outcome.rows.map((row) => lineOf(name, row)), memoryLine(name, outcome.peakMb)];
    process.stdout.write(`${lines.join('\n')}\n`);
    rows.set(name, lines);
    writeFileSync(page, pageOf(known.flatMap((each) => rows.get(each) ?? [])));
  }
  if (failed.length > 0)
    process.stdout.write(`Failed, their rows left as they were: ${failed.join(', ')}.\n`);
  return failed.length === 0;
}

const lineOf = (name: string, row: BenchRow): string =>
  `| ${name} | ${row.name} | ${row.size} | ${row.ratio.toPrecision(3)} | ${row.against} | ${row.note ?? ''} |`;

const memoryLine = (name: string, mb: number): string =>
  `| ${name} | most memory | | | | ${mb} MB, Node itself included |`;

/** The rows of an earlier page, by bench. */
function rowsOf(page: string, known: readonly string[]): Map<string, string[]> {
  const lines = page.split('\n');
  return new Map(known.map((name) => [name, lines.filter((line) => line.startsWith(`| ${name} |`))]));
}

/** A bench in a process of its own; null where it failed, with what it said. */
function one(name: string): Outcome | null {
  const file = join(tmpdir(), `showface-bench-${process.pid}-${name}.json`);
  const run = spawnSync(
    process.execPath,
    [...process.execArgv, fileURLToPath(import.meta.url), '--one', name, file],
    { stdio: ['ignore', 'ignore', 'inherit'], timeout: LONGEST_MS },
  );
  if (run.status !== 0) {
    process.stdout.write(`${name} failed: ${run.error?.message ?? `exit ${run.status ?? run.signal}`}\n`);
    return null;
  }
  const outcome = JSON.parse(readFileSync(file, 'utf8')) as Outcome;
  rmSync(file);
  return outcome;
}

const pageOf = (rows: readonly string[]): string =>
  [
    '# Benches',
    '',
    '`npm run bench` runs all of them and writes this page; `npm run bench -- layout` runs one and replaces its',
    'rows. Data is seeded. A ratio compares two things measured in the same run, so it holds on other machines',
    'where a time would not; the times in the notes are of the machine that made this page and of whatever else',
    'ran on it. The figures of a bench are of one run.',
    '',
    '| bench | case | size | ratio | against | note |',
    '|---|---|---|---|---|---|',
    ...rows,
    '',
  ].join('\n');

const [first, ...rest] = process.argv.slice(2);
if (first === '--one') {
  const [name, file] = rest as [string, string];
  const { bench } = (await import(new URL(`${name}.ts`, HERE).href)) as { bench: () => Promise<BenchRow[]> };
  const rows = await bench();
  const outcome: Outcome = { rows, peakMb: Math.round(process.resourceUsage().maxRSS / 1024) };
  writeFileSync(file, JSON.stringify(outcome));
} else {
  process.exitCode = all(process.argv.slice(2)) ? 0 : 1;
}
