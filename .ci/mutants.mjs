// Changes one room's code on purpose, one small change at a time, and counts the changes that its tests notice:
// `npm run mutants -- measure`. Slow, so it is no part of the gate; figures stand in tests/README.md.
// `--sample 10` changes about a tenth of the room's lines, in blocks drawn by a fixed seed: the same ones each time.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const ROOMS = ['measure', 'geometry', 'joinery', 'finish', 'fold'];
const BLOCK = 8;

const given = process.argv.slice(2);
const sampled = given.indexOf('--sample');
const share = sampled < 0 ? 1 : 1 / Number(given[sampled + 1]);
const rooms = sampled < 0 ? given : given.toSpliced(sampled, 2);
if (rooms.length === 0 || rooms.some((room) => !existsSync(`src/${room}`)) || !(share > 0 && share <= 1)) {
  console.error(`usage: npm run mutants -- ROOM … [--sample N], such as ${ROOMS.join(', ')}`);
  process.exit(2);
}

/** Numbers from 0 to 1 (xorshift of 32 bits), the same on every machine. */
let state = 0x9e3779b1;
function chance() {
  state ^= state << 13;
  state ^= state >>> 17;
  state ^= state << 5;
  return (state >>> 0) / 2 ** 32;
}

/** Blocks of lines of the room's files, `file:from-to`. */
function blocksOf(room) {
  const files = readdirSync(`src/${room}`, { recursive: true }).filter((name) => name.endsWith('.ts')).sort();
  return files.flatMap((name) => {
    const file = join('src', room, name);
    const lines = readFileSync(file, 'utf8').split('\n').length;
    return Array.from({ length: Math.ceil(lines / BLOCK) }, (_, k) => `${file}:${k * BLOCK + 1}-${(k + 1) * BLOCK}`);
  });
}

for (const room of rooms) {
  const mutate = share === 1 ? `src/${room}/**/*.ts` : blocksOf(room).filter(() => chance() < share).join();
  const run = spawnSync('npx', ['stryker', 'run', '.stryker.conf.json', '--mutate', mutate], {
    stdio: 'inherit',
    env: { ...process.env, MUTANTS_ROOM: room },
  });
  if (run.status !== 0) process.exit(run.status ?? 1);
}
