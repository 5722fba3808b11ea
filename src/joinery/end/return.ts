import type { ShapedStock, Stock } from '../../materials/types.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';
import { wallCornerSetting } from '../sprung.ts';
import { type EndKind, longEdge, noReach, plainEnd, sprungStock } from './kind.ts';

/** The square outside corner from the face, as the wall, around the end of the molding. */
const OUTSIDE_CORNER = 270;

/**
 * A mitered return: the molding is turned back to the face by a short piece, so that its end shows the same
 * section. Lying on its back it is a bevel of 45 degrees; sprung molding turns an outside corner.
 */
export const returned: EndKind = {
  settle: (at) => {
    const plain = { ...plainEnd('return', at), bevel: 45 };
    const stock = sprungStock(at.stock);
    if (!stock) return plain;
    const { flat, nested } = wallCornerSetting(stock.spring, OUTSIDE_CORNER);
    const hand = handOf(stock);
    return {
      ...plain,
      miter: hand * Math.abs(flat.miter),
      bevel: Math.abs(flat.bevel),
      long: longEdge(hand),
      nested: { miter: hand * Math.abs(nested.miter), bevel: 0 },
    };
  },
  reach: noReach,
};

/**
 * Slope of a returned end as it is seen from the front, positive with the long point on the left. Sprung
 * molding stands off the wall by its width times tan(spring) at its outer edge, and around the corner that
 * edge runs on as far; molding on its back is seen to end square, its bevel hidden behind the face.
 */
export function returnAngle(stock: Stock | null): Deg {
  const sprung = sprungStock(stock);
  return sprung ? handOf(sprung) * sprung.spring : 0;
}

/** How far a return stands out of the face, which is also how long it is at its outer edge. */
export function returnReach(stock: Stock | null, width: Mm, thickness: Mm): Mm {
  const sprung = sprungStock(stock);
  return sprung ? width * Math.tan(radians(sprung.spring)) : thickness;
}

const handOf = (stock: ShapedStock): 1 | -1 => (standsOffOnLeft(stock) ? 1 : -1);

/**
 * Around an outside corner the edge that stands off the wall is the long one. The section counts from the
 * right edge to the left one, as the piece's own outline does.
 */
function standsOffOnLeft({ section, width }: ShapedStock): boolean {
  const top = section.reduce((best, p) => (p.y > best.y ? p : best), { x: 0, y: 0 });
  return top.x >= width / 2;
}
