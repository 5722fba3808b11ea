import { type EdgePoints, type Edges, edgesWith } from '../../bed/bows.ts';
import type { Face } from '../../bed/face.ts';
import { movedIn } from '../../bed/realEdges.ts';
import type { Axis } from '../../design/schema.ts';
import { curvesAt } from '../../geometry/loop.ts';
import { cross, dot, leftNormal, lerp, scale, subtract } from '../../geometry/point.ts';
import { intersectLines, lineToLeft } from '../../geometry/segment.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { lastOf, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Scribe } from '../laid.ts';

/** Edges this near to each other lie on one another. */
export const ON: Mm = 0.01;

export type Line = readonly [Point, Point];

/** An edge of the true layout with where it really is: along it lies what lay along it. */
export interface Edge {
  /** The axis across it: x of an upright one. */
  readonly axis: Axis;
  readonly at: Mm;
  readonly from: Mm;
  readonly to: Mm;
  /** Between its ends. */
  readonly line: Line;
  /** Where it bows: its points from the lower or left end. */
  readonly curve?: EdgePoints;
}

export const other = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');
export const spanOn = (box: Box, axis: Axis): readonly [Mm, Mm] =>
  axis === 'x' ? [box.x, box.x + box.w] : [box.y, box.y + box.h];
export const at = (axis: Axis, across: Mm, along: Mm): Point =>
  axis === 'x' ? { x: across, y: along } : { x: along, y: across };

/** The four edges of a box by where they really are. */
function edgesOf(box: Box, [bottom, right, top, left]: Edges): Edge[] {
  const edge = (axis: Axis, end: 0 | 1, points: EdgePoints): Edge => {
    const [from, to] = spanOn(box, other(axis));
    const line: Line = [pick(points, 0), lastOf(points)];
    const curve = points.length > 2 ? { curve: points } : {};
    return { axis, at: spanOn(box, axis)[end], from, to, line, ...curve };
  };
  return [
    edge('x', 0, left.toReversed()),
    edge('x', 1, right),
    edge('y', 0, bottom),
    edge('y', 1, top.toReversed()),
  ];
}

/** Those that the bed has: the outside of the rim, the inside of its boards, the field. */
export function edgesOfFace({ real = [], levels }: Face): Edge[] {
  return real.flatMap(({ of, box, corners, bows, edges }) => {
    const inner = of === 'rim' ? levels.find(({ id }) => id === 'rim')?.inner : null;
    const within = inner ? edgesOf(inner, edgesWith(movedIn(corners, inner.x - box.x), bows)) : [];
    return [...edgesOf(box, edges), ...within];
  });
}

export const isAt = (edge: Edge, axis: Axis, place: Mm): boolean =>
  edge.axis === axis && Math.abs(edge.at - place) <= ON;

/** The edge that a stretch lies along. */
export const edgeAlong = (
  edges: readonly Edge[],
  axis: Axis,
  place: Mm,
  [from, to]: readonly [Mm, Mm],
): Edge | undefined =>
  edges.find((edge) => isAt(edge, axis, place) && from >= edge.from - ON && to <= edge.to + ON);

/** The edge that a straight stretch between two points lies along. */
export function edgeBetween(edges: readonly Edge[], p: Point, q: Point): Edge | undefined {
  const axis: Axis | null = Math.abs(p.x - q.x) <= ON ? 'x' : Math.abs(p.y - q.y) <= ON ? 'y' : null;
  if (axis === null) return undefined;
  const [one, two] = [p[other(axis)], q[other(axis)]];
  return edgeAlong(edges, axis, p[axis], [Math.min(one, two), Math.max(one, two)]);
}

/** A line beside another, on the side of a point. */
export function beside([a, b]: Line, by: Mm, side: Point): Line {
  return lineToLeft(a, b, cross(subtract(b, a), subtract(side, a)) > 0 ? by : -by);
}

/** The nearest line along an edge that a straight board on the side of a point covers all of it from. */
export function boardLine({ line, curve }: Edge, side: Point): Line {
  if (!curve) return line;
  const [a, b] = line;
  const normal = leftNormal(subtract(b, a));
  const away = dot(normal, subtract(side, a)) > 0 ? -1 : 1;
  const most = Math.max(...curve.map((p) => away * dot(normal, subtract(p, a))));
  return most > 0 ? lineToLeft(a, b, away * most) : line;
}

/** Where a line crosses an edge; beyond its ends it goes straight on. */
export function crossing({ line, curve }: Edge, [p, q]: Line): Point | null {
  const way = subtract(q, p);
  if (curve)
    for (let i = 1; i < curve.length; i++) {
      const [a, b] = [pick(curve, i - 1), pick(curve, i)];
      const [da, db] = [cross(way, subtract(a, p)), cross(way, subtract(b, p))];
      if (da === 0) return a;
      if (db === 0) return b;
      if (da * db > 0) continue;
      const on = curvesAt(a).filter((one) => curvesAt(b).includes(one));
      const found = lerp(a, b, da / (da - db));
      return on.length > 0 ? ({ ...found, on } as Point) : found;
    }
  return intersectLines(...line, p, q);
}

/** The edge as a straight line over a stretch of it. */
export function lineOver(edge: Edge, [from, to]: readonly [Mm, Mm]): Line {
  if (!edge.curve) return edge.line;
  const on = (along: Mm) =>
    crossing(edge, [at(edge.axis, edge.at - 1, along), at(edge.axis, edge.at + 1, along)]);
  const [p, q] = [on(from), on(to)];
  return p && q ? [p, q] : edge.line;
}

/** Where a corner of the true layout is that lies on real edges; null where it lies on none. */
export function imageOf(p: Point, edges: readonly Edge[]): Point | null {
  const on = (axis: Axis) => edgeAlong(edges, axis, p[axis], [p[other(axis)], p[other(axis)]]);
  const [upright, level] = [on('x'), on('y')];
  if (upright && level)
    return crossing(upright.curve ? upright : level, (upright.curve ? level : upright).line);
  if (upright) return crossing(upright, [p, { x: p.x + 1, y: p.y }]);
  return level ? crossing(level, [p, { x: p.x, y: p.y + 1 }]) : null;
}

/** How a leg is scribed to an edge that bows, the stock of it lying on the side of a point; nothing for a straight one. */
export function scribeTo(
  { axis, curve, line }: Edge,
  { leg, side, way, stock }: Pick<Scribe, 'leg' | 'side'> & { readonly way: Point; readonly stock: Point },
): readonly Scribe[] {
  if (!curve) return [];
  const normal = leftNormal(subtract(line[1], line[0]));
  const out = scale(normal, dot(normal, subtract(stock, line[0])) > 0 ? -1 : 1);
  return [{ leg, side, line: way[other(axis)] > 0 ? curve : curve.toReversed(), out }];
}
