// Asks the registry for known advisories about the locked packages. One of high or critical severity in what is
// shipped fails the run; a registry that does not answer is reported and does not. What can be checked
// without a network stands in tests/dependencies.test.ts.
import { spawnSync } from 'node:child_process';

const run = spawnSync('npm', ['audit', '--json', '--omit=dev'], {
  encoding: 'utf8',
  timeout: 60_000,
  maxBuffer: 1 << 28,
});
const answer = parsed(run.stdout);
const counts = answer?.metadata?.vulnerabilities;
if (!counts) {
  const why = answer?.message ?? answer?.error?.summary ?? run.error?.message ?? `exit ${run.status}`;
  console.log(`audit: the registry gave no advisories (${String(why).trim().split('\n')[0]}); nothing was checked`);
  process.exit(0);
}
const found = Object.values(answer.vulnerabilities ?? {});
for (const { name, severity, range } of found) console.log(`audit: ${severity}: ${name} ${range}`);
console.log(`audit: ${found.length} shipped packages with advisories`);
process.exit(counts.high + counts.critical > 0 ? 1 : 0);

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
