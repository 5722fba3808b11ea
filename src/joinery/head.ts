import { distance, dot, rotate, subtract } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import type { Laid, SawnHead } from '../layout/laid.ts';
import { leanOf } from '../layout/place/head.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import type { Placed } from './draft.ts';
import type { SawnArch } from './piece.ts';
import { sheetPiece } from './sheet.ts';

/**
 * The pieces that the head of a run is sawn in, each lying on the bench with its crown up, its grain along its chord:
 * along the arc no grain runs, and so the least of it is short.
 *
 * @param first how many pieces of the run come before them
 */
export function headPieces(laid: Laid<'run'>, stock: Stock | null, first: number): Placed[] {
  const { head } = laid;
  if (!head || !stock) return [];
  const { center, pieces } = head;
  return pieces.map((outer, i) => {
    const lean = leanOf(head.turn, pieces.length, i);
    const lay = (p: Point): Point => rotate(subtract(p, center), -lean);
    const grain = stock.form === 'sheet' && stock.grain ? 'along' : 'any';
    const polygon = { outer, holes: [] };
    const id = `${laid.id}#${first + i + 1}`;
    // Turned on the face, they lie in no row of panels whose lengths add up.
    return { draft: sheetPiece({ laid, stock, polygon, id }, lay, grain), kind: 'stick', stretch: null };
  });
}

/** What a head is laid out by: radii, the turn of one piece, and the lengths of its arcs from stile to stile. */
export function sawnArch({ center, turn, near, far, pieces }: SawnHead): SawnArch {
  const over = arcOf(center);
  const [one, other] = [over(near), over(far)];
  const [inner, outer] = one.radius < other.radius ? [one, other] : [other, one];
  const middle = over(middleOf(center, near, far));
  return {
    inner: inner.radius,
    outer: outer.radius,
    pieces: pieces.length,
    angle: turn,
    lengths: { inner: inner.length, middle: middle.length, outer: outer.length },
  };
}

/** Radius and length of an arc over the crown, by where it ends: r times the angle in radians. */
const arcOf =
  (center: Point) =>
  ([right, left]: SawnHead['near']): { readonly radius: Mm; readonly length: Mm } => {
    const radius = distance(center, right);
    return { radius, length: radius * 2 * Math.asin(Math.min(1, distance(right, left) / (2 * radius))) };
  };

/** Where the arc of the middle radius ends, on the straight cuts between head and stiles. */
function middleOf(center: Point, near: SawnHead['near'], far: SawnHead['far']): SawnHead['near'] {
  const middle = (distance(center, near[0]) + distance(center, far[0])) / 2;
  const [from, way] = [subtract(near[0], center), subtract(far[0], near[0])];
  // |from + t way| = middle.
  const [a, b, c] = [dot(way, way), dot(from, way), dot(from, from) - middle * middle];
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  // The radius rises or falls along the cut: of both roots the one that lies on it, which is the nearer to its middle.
  const roots = [(-b - root) / a, (-b + root) / a] as const;
  const t = Math.abs(roots[0] - 0.5) < Math.abs(roots[1] - 0.5) ? roots[0] : roots[1];
  const right = { x: center.x + from.x + t * way.x, y: center.y + from.y + t * way.y };
  return [right, { x: 2 * center.x - right.x, y: right.y }];
}
