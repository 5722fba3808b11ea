import { readFileSync } from 'node:fs';
import type { LyingEnd } from '../../../src/cutting/boards/ends.ts';
import { jointsOf } from '../../../src/cutting/boards/joints.ts';
import type { Problem } from '../../../src/cutting/boards/problem.ts';
import { solve } from '../../../src/cutting/boards/solve.ts';
import { budgetOf } from '../../../src/cutting/budget.ts';
import { bestGuillotine } from '../../../src/cutting/sheets/best.ts';
import { packSheet } from '../../../src/cutting/sheets/blocks.ts';
import { leaves, type SheetItem } from '../../../src/cutting/sheets/problem.ts';
import type { ValuedType } from '../../../src/cutting/sheets/valued.ts';
import { weigh } from '../../../src/cutting/weigh.ts';
import type { Row, Section } from '../table.ts';

/**
 * Outside answers. Boards: OR-Library uniform sets u120 and u500 (E. Falkenauer, Journal of Heuristics 2,
 * 1996). Sheets: OR-Library gcut, cgcut, ngcut. Best-known values and their sources: README.md of the data.
 */
const DATA = new URL('../data/', import.meta.url);

const numbersOf = (file: string): string[] =>
  readFileSync(new URL(file, DATA), 'utf8')
    .split(/\s+/)
    .filter((t) => t !== '');

interface Instance {
  readonly name: string;
  readonly capacity: number;
  readonly sizes: readonly number[];
  readonly known: number;
}

function instancesOf(file: string): Instance[] {
  const tokens = numbersOf(file);
  let k = 0;
  const next = (): string => tokens[k++] ?? '';
  return Array.from({ length: Number(next()) }, () => {
    const name = next();
    const [capacity, count, known] = [Number(next()), Number(next()), Number(next())];
    return { name, capacity, known, sizes: Array.from({ length: count }, () => Number(next())) };
  });
}

const SQUARE: LyingEnd = { recess: [{ y: 0, back: 0 }], miter: 0, kerf: 0, settings: ['0.000000/0.000000'] };

/** Boards of one length, no kerf. */
function problemOf({ capacity, sizes }: Instance): Problem {
  const counts = new Map<number, number>();
  for (const s of sizes) counts.set(s, (counts.get(s) ?? 0) + 1);
  const weighed = weigh([{ amount: capacity, price: 0 }]);
  return {
    items: [...counts]
      .sort((a, b) => b[0] - a[0])
      .map(([length, count]) => ({ length, size: length, shape: 0, count })),
    bins: [{ capacity, room: capacity, weight: weighed.weight[0] ?? 1, limit: Infinity }],
    joints: jointsOf([[{ left: SQUARE, right: SQUARE, flipped: false }]]),
    shapes: 1,
    roundUp: weighed.roundUp,
  };
}

/** Boards taken, once every piece is on one, no board is over its length, and the bound proves the count. */
function boardsOf(instance: Instance): number | string {
  const problem = problemOf(instance);
  const plan = solve(problem, budgetOf(1_000_000));
  for (const { counts } of plan.loads) {
    const used = counts.reduce((sum, n, i) => sum + n * (problem.items[i]?.length ?? 0), 0);
    if (used > instance.capacity) return `a board of ${used}`;
  }
  const lost = problem.items.some(
    (item, i) => plan.loads.reduce((sum, l) => sum + (l.counts[i] ?? 0), 0) !== item.count,
  );
  if (lost) return 'pieces lost or doubled';
  return plan.bound === plan.weight ? plan.loads.length : `${plan.loads.length}, not proved`;
}

function boards(): Row[] {
  return ['binpack1', 'binpack3'].flatMap((file) =>
    instancesOf(`${file}.txt`).map((instance) => ({
      check: `${instance.name}: boards, proved least`,
      source: `OR-Library ${file} (E. Falkenauer, Journal of Heuristics 2, 1996), best known`,
      expected: instance.known,
      found: boardsOf(instance),
    })),
  );
}

/** Fixed, turn; from the README, where all but cgcut2 and cgcut3 with turning are given. */
const KNOWN: Readonly<Record<string, readonly [number, number | null]>> = {
  gcut1: [56460, 58136],
  gcut2: [60536, 60611],
  gcut3: [61036, 61626],
  gcut4: [61698, 62265],
  ngcut1: [164, 193],
  ngcut2: [230, 250],
  ngcut3: [247, 259],
  ngcut4: [268, 268],
  ngcut5: [358, 370],
  ngcut6: [289, 298],
  ngcut7: [430, 430],
  ngcut8: [834, 886],
  ngcut9: [924, 924],
  ngcut10: [1452, 1452],
  ngcut11: [1688, 1786],
  ngcut12: [1865, 1932],
  cgcut1: [244, 260],
  cgcut2: [2892, null],
  cgcut3: [1860, null],
};

/** The same sheets with no limit on copies. */
const UNLIMITED: Readonly<Record<string, readonly [number, number]>> = {
  cgcut1: [249, 278],
  cgcut2: [3076, 3147],
  cgcut3: [2240, 2280],
};

function sheetOf(name: string): { w: number; h: number; types: ValuedType[] } {
  const [m = 0, w = 0, h = 0, ...rest] = numbersOf(`${name}.txt`).map(Number);
  const limited = !name.startsWith('gcut');
  const width = limited ? 4 : 3;
  const types = Array.from({ length: m }, (_, i): ValuedType => {
    const [a = 0, b = 0, c = 0, d = 0] = rest.slice(i * width, (i + 1) * width);
    return limited ? { w: a, h: b, max: c, value: d } : { w: a, h: b, value: c };
  });
  return { w, h, types };
}

/** Worth of the sheet, once its pieces lie apart and inside, none is cut more often than asked, and it is proved. */
function worthOf(name: string, types: readonly ValuedType[], turn: boolean): number | string {
  const { w, h } = sheetOf(name);
  const { layout, value, proved } = bestGuillotine({ w, h }, types, { turn });
  const counts = types.map(() => 0);
  let worth = 0;
  for (const p of layout) {
    worth += types[p.type]?.value ?? 0;
    counts[p.type] = (counts[p.type] ?? 0) + 1;
    if (p.x + p.w > w || p.y + p.h > h) return 'a piece beyond the sheet';
    const apart = layout.every(
      (q) => p === q || p.x + p.w <= q.x || q.x + q.w <= p.x || p.y + p.h <= q.y || q.y + q.h <= p.y,
    );
    if (!apart) return 'pieces over each other';
  }
  if (counts.some((n, i) => n > (types[i]?.max ?? Infinity))) return 'a piece too often';
  if (worth !== value) return `said ${value}, laid ${worth}`;
  return proved ? value : `${value}, not proved`;
}

/** Parts put together are quick and not exact; these sets are like real ones, where a piece is worth its area. */
const PUT_TOGETHER = ['gcut1', 'gcut2', 'gcut3', 'gcut4'] as const;
const NEAR_BEST = 0.01;

/** Worth of the sheet that is filled by putting parts together, pieces as they lie. */
function togetherOn(name: string): number | string {
  const { w, h, types } = sheetOf(name);
  const items = types.map((t): SheetItem => {
    const area = t.w * t.h;
    return { ways: [{ w: t.w, h: t.h, turned: false }], count: t.max ?? Math.floor((w * h) / area), area };
  });
  const bin = { w, h, weight: 1, limit: Infinity };
  const problem = { items, bins: [bin], roundUp: Math.ceil };
  const worth = (i: number) => (types[i]?.value ?? 0) / (items[i]?.area ?? 1);
  const need = items.map((i) => i.count);
  const filled = packSheet(problem, 0, need, worth, budgetOf(1_000_000));
  if (filled === null) return 'nothing laid';
  const laid = leaves(filled.root).filter((b) => b.item >= 0);
  const often = need.map((_, i) => laid.filter((b) => b.item === i).length);
  if (often.some((n, i) => n > (need[i] ?? 0) || n !== filled.counts[i])) return 'a piece too often';
  return laid.reduce((sum, b) => sum + (types[b.item]?.value ?? 0), 0);
}

function sheets(): Row[] {
  const source = 'OR-Library gcut, cgcut, ngcut; best-known values of data/README.md';
  const row = (
    name: string,
    types: readonly ValuedType[],
    turn: boolean,
    expected: number,
    free = '',
  ): Row => ({
    check: `${name}${free}, ${turn ? 'pieces may be turned' : 'pieces as they lie'}: worth of one sheet, proved`,
    source,
    expected,
    found: worthOf(name, types, turn),
  });
  const limited = Object.entries(KNOWN).flatMap(([name, [fixed, turned]]) => {
    const { types } = sheetOf(name);
    const asLying = row(name, types, false, fixed);
    return turned === null ? [asLying] : [asLying, row(name, types, true, turned)];
  });
  const unlimited = Object.entries(UNLIMITED).flatMap(([name, [fixed, turned]]) => {
    const types = sheetOf(name).types.map(({ w, h, value }) => ({ w, h, value }));
    const free = ' without limits on copies';
    return [row(name, types, false, fixed, free), row(name, types, true, turned, free)];
  });
  const together = PUT_TOGETHER.map((name): Row => {
    const expected = KNOWN[name]?.[0] ?? 0;
    return {
      check: `${name}, parts put together: worth of one sheet, within a hundredth`,
      source,
      expected,
      tolerance: NEAR_BEST * expected,
      found: togetherOn(name),
    };
  });
  return [...limited, ...unlimited, ...together];
}

export const cutting: Section = {
  number: 10,
  title: 'Cutting stock and sheets',
  rows: () => [...boards(), ...sheets()],
};
