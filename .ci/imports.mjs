// Runs the import checker and refuses a run that looked at nothing: with an unsupported compiler version
// the checker passes silently with no module read.
import { spawnSync } from 'node:child_process';

const run = spawnSync('npx', ['depcruise', 'src', '--config', '.dependency-cruiser.cjs', '--output-type', 'json'], {
  encoding: 'utf8',
  maxBuffer: 1 << 28,
});
if (!run.stdout) {
  console.error(run.stderr);
  process.exit(2);
}
const { summary } = JSON.parse(run.stdout);
for (const v of summary.violations) {
  console.error(`${v.from} → ${v.to}\n  ${v.rule.name}: ${v.comment ?? ''}`);
}
console.log(`imports: ${summary.totalCruised} modules, ${summary.violations.length} broken rules`);
process.exit(summary.totalCruised < 20 ? 2 : summary.error > 0 ? 1 : 0);
