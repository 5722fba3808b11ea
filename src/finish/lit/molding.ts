import { add, dot, leftNormal, scale, subtract } from '../../geometry/point.ts';
import { signedArea } from '../../geometry/ring.ts';
import type { Point, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { MoldedLength } from '../../joinery/piece.ts';
import { cyclic } from '../../list/at.ts';
import type { ShapedStock } from '../../materials/types.ts';
import type { Normal } from './lambert.ts';

/** A flat of a molding along its whole length, seen from the front. */
export interface Band {
  /** From the near edge of the flat to the far edge of the molding: what follows lies over it. */
  readonly ring: Ring;
  readonly normal: Normal;
}

/**
 * The flats of a straight length of molding from its right edge to its left one, each reaching under those that follow,
 * so that no seam shows between them; to be cut to the length's own area. Flats that look back are not seen.
 */
export function bandsOf({ start, along, right, onEdge, region }: MoldedLength, stock: ShapedStock): Band[] {
  const turned = onEdge ? stock.section.map(({ x, y }) => ({ x: stock.thickness - y, y: x })) : stock.section;
  const section = signedArea(turned) > 0 ? turned : turned.toReversed();
  const across = leftNormal(along);
  const places = region.flatMap(({ outer }) => outer.map((p) => dot(subtract(p, start), along)));
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const end = Math.max(...section.map(({ x }) => x));
  const at = (off: number, far: number): Point =>
    add(add(start, scale(across, off - right)), scale(along, far));
  return section
    .flatMap((from, i) => {
      const to = cyclic(section, i + 1);
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      // Counterclockwise the wood lies to the left: what looks out of the face runs toward less x.
      return dx < -SAME_LENGTH ? [{ near: to.x, tilt: Math.atan2(dy, -dx) }] : [];
    })
    .sort((a, b) => a.near - b.near)
    .map(({ near, tilt }) => ({
      ring: [at(near, low), at(end, low), at(end, high), at(near, high)],
      normal: { x: across.x * Math.sin(tilt), y: across.y * Math.sin(tilt), z: Math.cos(tilt) },
    }));
}
