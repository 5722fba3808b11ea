// Runs all tests and counts the lines of every room that they run through, in Node and in pages of the browser:
// `npm run coverage`. The table comes where tests fail too. Workers of the page are counted by their tests in Node.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'showface-coverage-'));
// The projects by their names: else only files under the root of the build, the editor's folder, are counted.
const command = 'vitest run --project core --project browser --coverage --coverage.reportsDirectory'.split(' ');
const { status } = spawnSync('npx', [...command, join(folder, 'node'), ...process.argv.slice(2)], {
  stdio: 'inherit',
  env: { ...process.env, SHOWFACE_COVERAGE: folder },
});

/** How often each line with a statement on it ran, from what one run tells of a file. */
function linesOf({ statementMap, s }) {
  const lines = new Map();
  for (const [id, { start }] of Object.entries(statementMap))
    lines.set(start.line, Math.max(lines.get(start.line) ?? 0, s[id]));
  return lines;
}

const read = (...path) => JSON.parse(readFileSync(join(folder, ...path), 'utf8'));
const inNode = Object.entries(read('node', 'coverage-final.json'));
// Where the run was broken off, or no browser was found, there may be none.
const inPages = (existsSync(join(folder, 'pages.json')) ? read('pages.json') : []).map((told) => new Map(Object.entries(told)));
rmSync(folder, { recursive: true });

/** Lines with statements and how many of them ran, by room; the editor's rooms each for itself. */
const rooms = new Map();
const add = (room, lines, ran) => {
  const sum = rooms.get(room) ?? { lines: 0, ran: 0 };
  rooms.set(room, { lines: sum.lines + lines, ran: sum.ran + ran });
};
for (const [file, told] of inNode) {
  const [, first, second] = relative('.', file).split(sep);
  const shown = inPages.flatMap((page) => (page.has(file) ? [linesOf(page.get(file))] : []));
  const lines = [...linesOf(told)];
  const ran = lines.filter(([line, times]) => times > 0 || shown.some((page) => page.get(line) > 0)).length;
  add(first === 'editor' ? `editor/${second.includes('.') ? '' : second}` : first, lines.length, ran);
  add(first === 'editor' ? 'the editor' : 'all other rooms', lines.length, ran);
}
console.log('\nlines that ran, in Node or in a page:');
for (const [room, { lines, ran }] of [...rooms].sort(([a], [b]) => a.localeCompare(b)))
  console.log(`${room.padEnd(20)} ${`${ran} of ${lines}`.padStart(16)} ${((100 * ran) / lines).toFixed(1).padStart(6)} %`);
process.exit(status ?? 1);
