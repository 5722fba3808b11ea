import type { DrawItem } from '../../drawing/drawing.ts';
import { circle, diagonalsOf, lines, type PathLook, polyline } from '../../drawing/items.ts';
import { INK, WEIGHT } from '../../drawing/style.ts';
import type { Fastened } from '../../fastening/result.ts';
import { grownBox } from '../../geometry/box.ts';
import type { Point } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { addUp } from '../../list/totals.ts';
import type { Mm } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';

const R: Mm = 0.72;
const OPEN = { stroke: INK.line, width: WEIGHT.fine, fill: INK.paper };
const FULL = { stroke: INK.line, width: WEIGHT.fine, fill: INK.line };

const polygon = (p: Point, corners: readonly (readonly [number, number])[], look: PathLook): DrawItem =>
  polyline(
    corners.map(([x, y]) => ({ x: p.x + x * R, y: p.y + y * R })),
    true,
    look,
  );
const SQUARE = [
  [-0.9, -0.9],
  [0.9, -0.9],
  [0.9, 0.9],
  [-0.9, 0.9],
] as const;
const TRIANGLE = [
  [-1.15, -0.8],
  [1.15, -0.8],
  [0, 1.2],
] as const;
const DIAMOND = [
  [0, -1.35],
  [1.35, 0],
  [0, 1.35],
  [-1.35, 0],
] as const;
const cross = ({ x, y }: Point, r: Mm): DrawItem =>
  lines(diagonalsOf(grownBox({ x, y, w: 0, h: 0 }, r)), { stroke: INK.line, width: WEIGHT.middle });

type Mark = (p: Point) => DrawItem[];

/** Told apart by their outlines and by full and open, so that they can be read in black and white. */
const BRADS: readonly Mark[] = [
  (p) => [circle(p, R * 0.9, FULL)],
  (p) => [circle(p, R, OPEN)],
  (p) => [polygon(p, SQUARE, FULL)],
  (p) => [polygon(p, TRIANGLE, OPEN)],
  (p) => [polygon(p, DIAMOND, FULL)],
  (p) => [polygon(p, SQUARE, OPEN)],
  (p) => [polygon(p, TRIANGLE, FULL)],
  (p) => [polygon(p, DIAMOND, OPEN)],
];
const SCREWS_FRONT: readonly Mark[] = [
  (p) => [circle(p, R * 1.7, OPEN), cross(p, R * 0.9)],
  (p) => [circle(p, R * 1.7, OPEN), circle(p, R * 0.6, FULL)],
];
const SCREWS_BACK: readonly Mark[] = [
  (p) => [cross(p, R * 1.5)],
  (p) => [cross(p, R * 1.5), circle(p, R * 1.5, { stroke: INK.line, width: WEIGHT.fine })],
];

/** One way to fasten: what, how long, from where; with its mark and how many there are of it. */
export interface Way {
  readonly how: 'brads' | 'screws';
  readonly fastener: string;
  readonly length: Mm;
  readonly from: 'front' | 'back';
  readonly count: number;
  readonly mark: Mark;
}

const keyOf = ({ how, fastener, length, from }: Omit<Way, 'count' | 'mark'>): string =>
  `${how}|${fastener}|${length}|${from}`;

/** The ways in which parts of the plan are fastened, brads by length first, each with a mark of its own. */
export function waysOf(plan: Plan): Way[] {
  const ways = new Map<string, Omit<Way, 'mark'>>();
  for (const { how, fastener, length, from, at } of plan.fastening.parts) {
    if ((how !== 'brads' && how !== 'screws') || fastener === null || length === null) continue;
    const way = { how, fastener, length, from };
    const key = keyOf(way);
    ways.set(key, { ...way, count: (ways.get(key)?.count ?? 0) + at.length });
  }
  const marksOf = ({ how, from }: Omit<Way, 'mark'>) =>
    how === 'brads' ? BRADS : from === 'back' ? SCREWS_BACK : SCREWS_FRONT;
  const used = new Map<readonly Mark[], number>();
  return [...ways.values()]
    .sort(
      (a, b) =>
        (a.how === b.how ? 0 : a.how === 'brads' ? -1 : 1) ||
        a.length - b.length ||
        (keyOf(a) < keyOf(b) ? -1 : 1),
    )
    .flatMap((way) => {
      const marks = marksOf(way);
      return [{ ...way, mark: pick(marks, addUp(used, marks) % marks.length) }];
    });
}

/** The way in which something is fastened; undefined for glue and for fittings. */
export function wayOf(ways: readonly Way[], part: Fastened): Way | undefined {
  return ways.find(
    (way) =>
      way.how === part.how &&
      way.fastener === part.fastener &&
      way.length === part.length &&
      way.from === part.from,
  );
}
