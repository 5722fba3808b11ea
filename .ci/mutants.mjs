// Changes one room's code on purpose, one small change at a time, and counts the changes that its tests notice:
// `npm run mutants -- measure`. Slow, so it is no part of the gate; figures stand in tests/README.md.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const ROOMS = ['measure', 'geometry', 'joinery', 'finish', 'fold'];
const rooms = process.argv.slice(2);
if (rooms.length === 0 || rooms.some((room) => !existsSync(`src/${room}`))) {
  console.error(`usage: npm run mutants -- ROOM …, such as ${ROOMS.join(', ')}`);
  process.exit(2);
}
for (const room of rooms) {
  const run = spawnSync(
    'npx',
    ['stryker', 'run', '.stryker.conf.json', '--mutate', `src/${room}/**/*.ts`],
    { stdio: 'inherit', env: { ...process.env, MUTANTS_ROOM: room } },
  );
  if (run.status !== 0) process.exit(run.status ?? 1);
}
