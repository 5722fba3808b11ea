import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
const LONGEST_MS = 600_000;

interface Outcome {
  readonly rows: readonly BenchRow[];
  readonly peakMb: number;
}

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

function all(named: readonly string[]): boolean {
  const benches = readdirSync(HERE)
    .filter((file) => file.endsWith('.ts') && !OTHERS.includes(file))
    .map((file) => file.replace('.ts', ''))
    .filter((name) => named.length === 0 || named.includes(name))
    .sort();
  const lines = ['| bench | case | size | ratio | against | note |', '|---|---|---|---|---|---|'];
  const memory: string[] = [];
  const failed: string[] = [];
  for (const name of benches) {
    const outcome = one(name);
    if (outcome === null) failed.push(name);
    for (const row of outcome?.rows ?? []) {
      const line = `| ${name} | ${row.name} | ${row.size} | ${row.ratio.toPrecision(3)} | ${row.against} | ${row.note ?? ''} |`;
      process.stdout.write(`${line}\n`);
      lines.push(line);
    }
    if (outcome) memory.push(`${name} ${outcome.peakMb} MB`);
  }
  const closing = `Most memory of each bench, the tool that runs it included: ${memory.join(', ')}.`;
  process.stdout.write(`${closing}\n`);
  if (failed.length > 0) process.stdout.write(`Failed: ${failed.join(', ')}; the page is left as it was.\n`);
  else if (named.length === 0) writeFileSync(new URL('README.md', HERE), pageOf(lines, closing));
  return failed.length === 0;
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

const pageOf = (lines: readonly string[], closing: string): string =>
  [
    '# Benches',
    '',
    '`npm run bench` runs all of them and writes this page; `npm run bench -- layout` runs one. Data is seeded.',
    'A ratio compares two things measured in the same run, so it holds on other machines where a time would',
    'not; the times in the notes are of the machine that made this page and whatever else ran on it. All',
    'figures are of one run.',
    '',
    ...lines,
    '',
    closing,
    '',
  ].join('\n');
