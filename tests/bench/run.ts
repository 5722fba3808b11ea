import { readdirSync, writeFileSync } from 'node:fs';
import type { BenchRow } from './row.ts';

/**
 * Runs every bench of this folder (or those named in the call), prints a table and writes it into the README
 * here. Figures are ratios within one run, so that they mean the same on a fast and on a slow machine.
 */
const HERE = new URL('./', import.meta.url);
const OTHERS = ['run.ts', 'row.ts'];

const named = process.argv.slice(2);
const benches = readdirSync(HERE)
  .filter((file) => file.endsWith('.ts') && !OTHERS.includes(file))
  .map((file) => file.replace('.ts', ''))
  .filter((name) => named.length === 0 || named.includes(name))
  .sort();

const lines = ['| bench | case | size | ratio | against | note |', '|---|---|---|---|---|---|'];
for (const name of benches) {
  const { bench } = (await import(new URL(`${name}.ts`, HERE).href)) as { bench: () => Promise<BenchRow[]> };
  for (const row of await bench()) {
    const line = `| ${name} | ${row.name} | ${row.size} | ${row.ratio.toPrecision(3)} | ${row.against} | ${row.note ?? ''} |`;
    process.stdout.write(`${line}\n`);
    lines.push(line);
  }
}
const peak = Math.round(process.resourceUsage().maxRSS / 1024);
const closing = `Most memory of the whole run: ${peak} MB.`;
process.stdout.write(`${closing}\n`);

if (named.length === 0) {
  const page = [
    '# Benches',
    '',
    '`npm run bench` runs all of them and writes this page; `npm run bench -- layout` runs one. Data is seeded.',
    'A ratio compares two things measured in the same run: it holds on other machines, a time would not.',
    '',
    ...lines,
    '',
    closing,
    '',
  ].join('\n');
  writeFileSync(new URL('README.md', HERE), page);
}
