import { type CurvePoint, type Loop, pointsOf } from '../geometry/loop.ts';
import { add, leftNormal, lerp, scale, subtract } from '../geometry/point.ts';
import type { Point, Quad } from '../geometry/shape.ts';
import { lineTo, type Stretch } from '../geometry/stretch.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/** The edges of a rectangle counterclockwise, as its corners are counted: each from one of them to the next. */
export const EDGES = ['bottom', 'right', 'top', 'left'] as const;
export type EdgeName = (typeof EDGES)[number];

/** Where along an edge its bow is read, as shares of it: from its left or lower end. */
export const PLACES = { first: 1 / 4, middle: 1 / 2, last: 3 / 4 } as const;
export type Place = keyof typeof PLACES;
const IN_ORDER: readonly Place[] = ['first', 'middle', 'last'];

/** How far an edge lies out of a string between its ends; less than 0: in. What is left out was not read. */
export type Bow = { readonly [P in Place]?: Mm | undefined };
export type Bows = { readonly [E in EdgeName]?: Bow | undefined };

/** An edge between two corners, walked counterclockwise: two points of a straight one. */
export type EdgePoints = readonly Point[];
export type Edges = readonly [EdgePoints, EdgePoints, EdgePoints, EdgePoints];

/** What was read of an edge, from its left or lower end. */
export const readingsOf = (bow: Bow | undefined): { readonly place: Place; readonly out: Mm }[] =>
  IN_ORDER.flatMap((place) => {
    const out = bow?.[place];
    return out === undefined ? [] : [{ place, out }];
  });

/** Whether an edge is told to lie off its string anywhere. */
export const isBowed = (bow: Bow | undefined): boolean =>
  readingsOf(bow).some(({ out }) => Math.abs(out) > SAME_LENGTH);

/** How far an edge lies out at a place, by what was read of it elsewhere. */
export function outAt(bow: Bow, place: Place): Mm {
  const read = readingsOf(bow).map((one): Node => ({ at: PLACES[one.place], out: one.out }));
  return through([{ at: 0, out: 0 }, ...read, { at: 1, out: 0 }], PLACES[place]).out;
}

/** The polynomial of least degree through places, at `t`, with its slope there; by Lagrange's formula. */
function through(nodes: readonly Node[], t: number): { readonly out: Mm; readonly slope: number } {
  let [out, slope] = [0, 0];
  for (const node of nodes) {
    const others = nodes.filter((one) => one !== node);
    const share = (of: readonly Node[]) =>
      of.reduce((product, one) => (product * (t - one.at)) / (node.at - one.at), 1);
    out += node.out * share(others);
    for (const one of others)
      slope += (node.out / (node.at - one.at)) * share(others.filter((two) => two !== one));
  }
  return { out, slope };
}
interface Node {
  readonly at: number;
  readonly out: Mm;
}

/**
 * An edge from one corner to the next as its readings have it, `out` to the right of its way: through every reading, as
 * flat as can be; the parabola where only one was read. Between readings a cubic with the slopes of that.
 */
export function stretchesOf(from: Point, to: Point, bow: Bow | undefined, backward: boolean): Loop {
  if (!isBowed(bow)) return [lineTo(from, to)];
  const read = readingsOf(bow).map(
    ({ place, out }): Node => ({ at: backward ? 1 - PLACES[place] : PLACES[place], out }),
  );
  const nodes = [{ at: 0, out: 0 }, ...(backward ? read.toReversed() : read), { at: 1, out: 0 }];
  const out = scale(leftNormal(subtract(to, from)), -1);
  const at = (t: number, off: Mm): Point => add(lerp(from, to, t), scale(out, off));
  return nodes.slice(1).map((next, i): Stretch => {
    const node = pick(nodes, i);
    const third = (next.at - node.at) / 3;
    const [near, far] = [through(nodes, node.at).slope, through(nodes, next.at).slope];
    return {
      kind: 'cubic',
      from: i === 0 ? from : at(node.at, node.out),
      h1: at(node.at + third, node.out + near * third),
      h2: at(next.at - third, next.out - far * third),
      to: next.at === 1 ? to : at(next.at, next.out),
    };
  });
}

/** The points of an edge that stand for its curve, both ends among them; those on a curve tell it. */
function pointsAlong(loop: Loop): EdgePoints {
  const curved = loop.filter((stretch) => stretch.kind !== 'line');
  if (curved.length === 0) return loop.flatMap(({ from, to }) => [from, to]);
  return curved.flatMap((stretch, i) => {
    const points = pointsOf(stretch);
    return points.slice(0, i === curved.length - 1 ? points.length : -1).map(
      ({ x, y }, k): CurvePoint => ({
        x,
        y,
        on: k === 0 && i > 0 ? [pick(curved, i - 1), stretch] : [stretch],
      }),
    );
  });
}

/** The four edges between corners, with what each is bowed by. */
export function edgesWith(corners: Quad, bows: Bows): Edges {
  const edge = (i: number): EdgePoints => {
    // The upper edge and the left one are walked from the end that readings are counted to.
    const name = cyclic(EDGES, i);
    return pointsAlong(
      stretchesOf(cyclic(corners, i), cyclic(corners, i + 1), bows[name], name === 'top' || name === 'left'),
    );
  };
  return [edge(0), edge(1), edge(2), edge(3)];
}

/** The outline that four edges are. */
export const outlineOf = (edges: Edges): Point[] =>
  edges.flatMap((edge, i) => {
    const before = cyclic(edges, i - 1).at(-1);
    const on = [before, edge[0]].flatMap((p) => (p && 'on' in p ? (p as CurvePoint).on : []));
    return edge.slice(0, -1).map((p, k) => (k === 0 && on.length > 0 ? { x: p.x, y: p.y, on } : p));
  });
