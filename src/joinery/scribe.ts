import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { legsOf } from '../layout/laid.ts';
import { scribed } from '../layout/scribe.ts';
import { pick } from '../list/at.ts';
import { type Bar, toBar } from './bar.ts';
import type { Scribed } from './piece.ts';

/** What is left of a bar's footprint once its edges are scribed. */
export const scribedOff = ({ laid }: Bar, seen: Region): Region =>
  laid.scribed ? scribed(seen, laid.scribed, legsOf(laid)) : seen;

/** What comes off the long edges of a length, in coordinates of its piece; edges that nothing comes off are left out. */
export function scribedEdges(bar: Bar, outline: readonly Point[]): Scribed[] {
  const { x, y, w, h } = boxOfPoints(outline);
  return (bar.laid.scribed ?? []).flatMap(({ leg, side, line }): Scribed[] => {
    if (leg !== bar.leg || side === null) return [];
    const own = line.map((p) => {
      const at = toBar(bar, p);
      return { x: at.x - x, y: at.y - y };
    });
    const kept = own.flatMap((p, i): Point[] => {
      const next = own[i + 1];
      // Where the piece begins and ends between two of the points.
      const between = next
        ? [0, w].filter((end) => (p.x - end) * (next.x - end) < 0).sort((a, b) => (next.x - p.x) * (a - b))
        : [];
      const cut = between.map(
        (end): Point => ({
          x: end,
          y: p.y + ((pick(own, i + 1).y - p.y) * (end - p.x)) / (pick(own, i + 1).x - p.x),
        }),
      );
      return [...(p.x >= 0 && p.x <= w ? [p] : []), ...cut];
    });
    const off = (p: Point) => (side === 'left' ? h - p.y : p.y);
    const deepest = kept.reduce<Point | null>((most, p) => (most && off(most) >= off(p) ? most : p), null);
    if (!deepest || off(deepest) <= SAME_LENGTH) return [];
    return [{ edge: side, most: off(deepest), at: deepest.x, line: kept }];
  });
}
