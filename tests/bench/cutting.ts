import { planCutting } from '../../src/cutting/cutting.ts';
import { shuffler } from '../../src/cutting/random.ts';
import type { Cutting } from '../../src/cutting/result.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { boardPiece, flat, sheet, sheetPiece, shop, stockMap } from '../cutting/make.ts';
import { openOracle } from '../cutting/oracle.ts';
import type { BenchRow } from './row.ts';

const KERF = 3;
const NODES = 200_000;
const LENGTHS = [
  { length: 2440, price: 6 },
  { length: 3050, price: 8 },
  { length: 3660, price: 9 },
];
const SIZES = [
  { length: 2440, width: 1220, price: 40 },
  { length: 1220, width: 1220, price: 24 },
  { length: 1220, width: 610, price: 14 },
];

/** Middle of three runs in milliseconds, after one to warm up, and what the last one gave. */
function timed<T>(run: () => T): { ms: number; value: T } {
  let value = run();
  const times = [0, 1, 2].map(() => {
    const start = performance.now();
    value = run();
    return performance.now() - start;
  });
  return { ms: times.sort((a, b) => a - b)[1] ?? 0, value };
}

interface Lengths {
  readonly lengths: readonly number[];
  readonly of: readonly number[];
}

function lengthsFor(count: number, kinds: number, seed: number): Lengths {
  const random = shuffler(seed);
  const lengths = Array.from({ length: kinds }, () => Math.round(400 + random() * 1300));
  return { lengths, of: Array.from({ length: count }, () => Math.floor(random() * kinds)) };
}

const plan = (
  pieces: readonly Piece[],
  stock: ReturnType<typeof flat> | ReturnType<typeof sheet>,
  soon = false,
): Cutting =>
  planCutting({
    pieces,
    stocks: stockMap(stock),
    owned: [],
    shop: shop({ boardKerf: KERF }),
    effort: { nodes: NODES },
    soon,
  });

/** Boards against the integer program on the same pieces; time and money. */
async function againstOracle(): Promise<BenchRow[]> {
  const oracle = await openOracle();
  return [20, 60, 120].flatMap((count): BenchRow[] => {
    const { lengths, of } = lengthsFor(count, 8, count);
    const pieces = of.map((k, i) => boardPiece(`p${i}`, lengths[k] ?? 0));
    const ours = timed(() => plan(pieces, flat(LENGTHS)));
    const sizes = lengths.map((size, k) => ({ size: size + KERF, count: of.filter((o) => o === k).length }));
    const boards = LENGTHS.map((b) => ({ room: b.length + KERF, price: b.price }));
    const theirs = timed(() =>
      oracle(
        sizes.filter((s) => s.count > 0),
        boards,
      ),
    );
    const bound = ours.value.boardsBound[0];
    const note = `${bound?.proved ? 'proved' : 'not proved'}, ${theirs.value.patterns} patterns`;
    return [
      {
        name: 'boards, money',
        size: count,
        ratio: (bound?.cost ?? 0) / theirs.value.cost,
        against: 'highs',
        note,
      },
      {
        name: 'boards, time',
        size: count,
        ratio: ours.ms / theirs.ms,
        against: 'highs',
        note: `${ours.ms.toFixed(0)} ms`,
      },
    ];
  });
}

/** Time against the smallest size, and money against the lower bound. */
function growing(
  name: string,
  sizes: readonly number[],
  make: (count: number) => { pieces: Piece[]; stock: ReturnType<typeof flat> | ReturnType<typeof sheet> },
): BenchRow[] {
  let first = 0;
  return sizes.flatMap((size): BenchRow[] => {
    const { pieces, stock } = make(size);
    const { ms, value } = timed(() => plan(pieces, stock));
    first ||= ms;
    const bound = value.boardsBound[0] ?? value.sheetsBound[0];
    return [
      {
        name: `${name}, time`,
        size,
        ratio: ms / first,
        against: `size ${sizes[0]}`,
        note: `${ms.toFixed(0)} ms`,
      },
      {
        name: `${name}, money`,
        size,
        ratio: (bound?.cost ?? 0) / (bound?.lowerCost ?? 1),
        against: 'own lower bound',
        note: bound?.proved ? 'proved' : 'not proved',
      },
    ];
  });
}

const MITERS = [0, 45, 30] as const;

function mitered(count: number): { pieces: Piece[]; stock: ReturnType<typeof flat> } {
  const { lengths, of } = lengthsFor(count, Math.min(20, count / 3), count + 1);
  const pieces = of.map((k, i) => {
    const m = MITERS[k % MITERS.length] ?? 0;
    return boardPiece(`p${i}`, lengths[k] ?? 0, [m, m]);
  });
  return { pieces, stock: flat(LENGTHS) };
}

function panels(count: number): { pieces: Piece[]; stock: ReturnType<typeof sheet> } {
  const random = shuffler(count);
  const kinds = Array.from({ length: Math.ceil(count / 3) }, () => [
    120 + random() * 800,
    100 + random() * 500,
  ]);
  const pieces = Array.from({ length: count }, (_, i) => {
    const [w = 0, h = 0] = kinds[Math.floor(random() * kinds.length)] ?? [];
    return sheetPiece(`p${i}`, Math.round(w), Math.round(h));
  });
  return { pieces, stock: sheet(SIZES) };
}

/** The first answer against the whole search, in time and in money. */
function firstAnswer(
  name: string,
  size: number,
  { pieces, stock }: { pieces: Piece[]; stock: ReturnType<typeof flat> | ReturnType<typeof sheet> },
): BenchRow[] {
  const soon = timed(() => plan(pieces, stock, true));
  const whole = timed(() => plan(pieces, stock));
  const cost = (c: Cutting) => [...c.boardsBound, ...c.sheetsBound][0]?.cost ?? 0;
  const row = { size, against: 'the whole search' };
  return [
    {
      ...row,
      name: `${name}, time`,
      ratio: soon.ms / whole.ms,
      note: `${soon.ms.toFixed(0)} ms`,
    },
    { ...row, name: `${name}, money`, ratio: cost(soon.value) / cost(whole.value) },
  ];
}

function unlikeEnds(count: number): { pieces: Piece[]; stock: ReturnType<typeof flat> } {
  const random = shuffler(count);
  const angle = () => 80 * random() - 40;
  const pieces = Array.from({ length: count }, (_, i) =>
    boardPiece(`p${i}`, 300 + 900 * random(), [angle(), angle()]),
  );
  return { pieces, stock: flat(LENGTHS) };
}

/** Boards and sheets: time against size, money against the integer program or the own bound. */
export async function bench(): Promise<BenchRow[]> {
  return [
    ...(await againstOracle()),
    ...growing('mitered boards', [30, 120, 480], mitered),
    ...growing('sheets', [10, 40, 160], panels),
    ...firstAnswer('first boards', 125, unlikeEnds(125)),
    ...[40, 80, 160].flatMap((count) => firstAnswer('first sheets', count, panels(count))),
  ];
}
