import { angleOf, distance, dot, lerp, rotate, subtract } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import type { Laid, SawnArc } from '../layout/laid.ts';
import { leanOf } from '../layout/place/sawnArcs.ts';
import type { Stock } from '../materials/types.ts';
import { type Mm, radians } from '../measure/units.ts';
import type { Placed } from './draft.ts';
import type { SawnArch } from './piece.ts';
import { sheetPiece } from './sheet.ts';

/**
 * The pieces that the arcs of a run are sawn in, each lying on the bench with its crown up, its grain along its chord:
 * along the arc no grain runs, and so the least of it is short.
 *
 * @param first how many pieces of the run come before them
 */
export function arcPieces(laid: Laid<'run'>, stock: Stock | null, first: number): Placed[] {
  if (!laid.sawn || !stock) return [];
  const grain = stock.form === 'sheet' && stock.grain ? 'along' : 'any';
  const all = laid.sawn.arcs.flatMap((arc) =>
    arc.pieces.map((outer, i) => {
      const lean = leanOf(arc, arc.pieces.length, i);
      return { outer, lay: (p: Point): Point => rotate(subtract(p, arc.center), -lean) };
    }),
  );
  return all.map(({ outer, lay }, i) => {
    const polygon = { outer, holes: [] };
    const id = `${laid.id}#${first + i + 1}`;
    // Turned on the face, they lie in no row of panels whose lengths add up.
    return { draft: sheetPiece({ laid, stock, polygon, id }, lay, grain), kind: 'stick', stretch: null };
  });
}

/** What an arc is laid out by: radii, the turn of one piece, and the lengths of its edges from cut to cut. */
export function sawnArch({ center, turn, near, far, pieces }: SawnArc): SawnArch {
  const arcOf = ([from, to]: SawnArc['near']): { readonly radius: Mm; readonly length: Mm } => {
    const radius = distance(center, from);
    const swept = angleOf(subtract(to, center)) - angleOf(subtract(from, center));
    return { radius, length: radius * radians((Math.sign(turn) * swept + 360) % 360) };
  };
  const [one, other] = [arcOf(near), arcOf(far)];
  const [inner, outer] = one.radius < other.radius ? [one, other] : [other, one];
  const middle = arcOf([halfway(center, near[0], far[0]), halfway(center, near[1], far[1])]);
  return {
    inner: inner.radius,
    outer: outer.radius,
    pieces: pieces.length,
    angle: Math.abs(turn),
    lengths: { inner: inner.length, middle: middle.length, outer: outer.length },
  };
}

/** Where the circle of the middle radius crosses the straight cut at an end of an arc. */
function halfway(center: Point, near: Point, far: Point): Point {
  const middle = (distance(center, near) + distance(center, far)) / 2;
  const [from, way] = [subtract(near, center), subtract(far, near)];
  // |from + t way| = middle.
  const [a, b, c] = [dot(way, way), dot(from, way), dot(from, from) - middle * middle];
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  // The radius rises or falls along the cut: of both roots the one that lies on it, which is the nearer to its middle.
  const roots = [(-b - root) / a, (-b + root) / a] as const;
  return lerp(near, far, Math.abs(roots[0] - 0.5) < Math.abs(roots[1] - 0.5) ? roots[0] : roots[1]);
}
