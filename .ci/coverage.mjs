// Runs all tests and counts the lines of every room that they run through, in Node and in pages of the browser:
// `npm run coverage`. The table comes where tests fail too; it fails where a room that hands work in has fewer than the
// least share of them. Workers of the page are counted by their tests in Node.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';

/** The least share of lines that must run, in percent. */
const LEAST = { 'editor/state': 90, 'editor/gesture': 90, 'editor/canvas': 85 };

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
// Where the run was broken off, or no browser was found, there may be none.
const ifThere = (none, ...path) => (existsSync(join(folder, ...path)) ? read(...path) : none);
const inNode = Object.entries(ifThere({}, 'node', 'coverage-final.json'));
const inPages = ifThere([], 'pages.json').map((told) => new Map(Object.entries(told)));
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
const fewer = Object.entries(LEAST).filter(([room, least]) => {
  const { lines, ran } = rooms.get(room) ?? { lines: 1, ran: 0 };
  return (100 * ran) / lines < least;
});
for (const [room, least] of fewer) console.error(`${room}: fewer than ${least} % of the lines ran.`);
process.exit(status === 0 && fewer.length > 0 ? 1 : (status ?? 1));
