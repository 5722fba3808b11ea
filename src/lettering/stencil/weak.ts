import { grownBox } from '../../geometry/box.ts';
import { connectedParts, intersect, offset, subtract, union } from '../../geometry/clip.ts';
import { clustersOf, inOrder } from '../../geometry/cluster.ts';
import { cross, distance, subtract as minus } from '../../geometry/point.ts';
import { areaOf, boxesMeet, boxOf, EMPTY, regionOfRing } from '../../geometry/region.ts';
import { boxOfPoints, containsPoint, perimeter, reverseRing, signedArea } from '../../geometry/ring.ts';
import type { Point, Polygon, Region, Ring } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { letterByLetter } from '../cluster.ts';
import { insidePoint } from './inside.ts';
import { isRoomy } from './roomy.ts';

/** Sheet that is thinner than the limit somewhere. */
export interface WeakSheet {
  /** Letters with the thin necks filled on which otherwise whole pieces of sheet would hang. */
  readonly letters: Region;
  /** Whether a hole of those letters is such a piece, rather than an island that a letter encloses. */
  readonly isWeak: (hole: Ring) => boolean;
  /** Thin fingers of sheet with a free end. Their rings run a hair inside of the letters. */
  readonly tongues: readonly Tongue[];
}

export interface Tongue {
  readonly ring: Ring;
  /** Mean width. */
  readonly width: Mm;
  /** Where it hangs on thicker sheet. */
  readonly root: Point;
}

/** Even with no limit asked for, necks thinner than this do not hold: paper tears, and a cut has a width. */
const LEAST_LIMIT: Mm = 0.1;
/** Sheet is thin where letters come nearer to each other than twice this. */
export const reachOf = (limit: Mm): Mm => Math.max(limit, LEAST_LIMIT) / 2;
/**
 * A finger is longer than this many times the limit. Shorter ones stand by themselves: the notches of a
 * heavy M or W run out in wedges of four to six times, and nobody bridges those (common practice).
 */
const LONG = 8;

/** Letters grown by a reach, in groups that come together: what is weak and what is firm both begin with them. */
export const grownBy = (letters: Region, reach: Mm): Region[] =>
  clustersOf(letters, reach).map((near) => offset(near, reach, 'round'));

/**
 * Thin sheet by morphological closing of the letters (an opening of the sheet) with a disk as wide as the
 * limit: what the closed letters cover and the letters do not is sheet thinner than the limit. Holes of the
 * closed letters that are more than the letters' own stand for pieces that hang on thin necks only.
 *
 * @param grown the letters grown by the reach of the limit
 */
export function weakSheet(letters: Region, limit: Mm, grown: readonly Region[]): WeakSheet {
  const reach = reachOf(limit);
  if (limit >= LEAST_LIMIT && isRoomy(letters, grown.flat(), reach)) {
    return { letters, isWeak: () => false, tongues: [] };
  }
  const closed = inOrder(grown.flatMap((near) => offset(near, -reach, 'round')));
  const firm = holesOf(closed).map((ring) => ({ ring, inside: insidePoint(ring) }));
  const own = holesOf(letters).map((hole) => firmIn(hole, firm));
  const hanging = firm.filter((piece) => !own.includes(piece));
  const thin = thinParts(letters, closed, reach, ({ outer }) => {
    const near = grownBox(boxOfPoints(outer), 2 * reach);
    return isLong(outer, limit / 2) || hanging.some(({ ring }) => boxesMeet(near, boxOfPoints(ring)));
  });
  const necks = thin.filter((part) => hanging.some(({ ring }) => touches(part, ring, reach)));
  return {
    letters: necks.length > 0 ? withoutCrumbs(union([letters, ...necks]), letters, firm) : letters,
    isWeak: (hole) => {
      const held = firm.filter(({ inside }) => containsPoint(hole, inside));
      return held.length > 0 && held.every((piece) => hanging.includes(piece));
    },
    tongues: thin
      .filter((part) => !necks.includes(part))
      .flatMap((part) => tongueOf(part, letters, closed, limit)),
  };
}

/** A piece of sheet that stays when everything thinner than the limit is taken away. */
interface Firm {
  readonly ring: Ring;
  readonly inside: Point;
}

const holesOf = (region: Region): Ring[] => region.flatMap((polygon) => [...polygon.holes]);

/** The largest firm piece in an island: the island itself, where the others hang on it. */
function firmIn(hole: Ring, firm: readonly Firm[]): Firm | null {
  const box = boxOfPoints(hole);
  let best: Firm | null = null;
  for (const piece of firm) {
    if (!boxesMeet(box, { ...piece.inside, w: 0, h: 0 }) || !containsPoint(hole, piece.inside)) continue;
    if (!best || Math.abs(signedArea(piece.ring)) > Math.abs(signedArea(best.ring))) best = piece;
  }
  return best;
}

/**
 * Pieces of thin sheet, less the slivers along curves that come from flattening them. Letters whose pieces are but
 * corners rounded off, which is most of them, have none.
 *
 * @param mayHang whether a piece, however it is rounded, may be a neck or a tongue
 */
function thinParts(letters: Region, closed: Region, reach: Mm, mayHang: (gap: Polygon) => boolean): Region[] {
  const sliver = Math.min(0.1, reach / 4);
  const parts = letterByLetter(closed, (near) => {
    const gaps = subtract(near, lettersIn(near, letters)).filter((gap) => mayHold(gap, sliver / 2));
    if (!gaps.some(mayHang)) return EMPTY;
    const thick = offset(gaps, -sliver / 2, 'miter');
    return thick.length > 0 ? offset(thick, sliver, 'miter') : thick;
  });
  return parts.map((polygon) => [polygon]);
}

/** A hair less, for what rounding to the grid does to corners. */
const NEARLY = 0.98;

/**
 * Whether a disk could lie in the piece: where none can, nothing is left when it is shrunk by as much. Told by the
 * piece's area and by its width across the line to its farthest corner, which most slivers have little of.
 */
function mayHold(gap: Polygon, radius: Mm): boolean {
  if (areaOf([gap]) < NEARLY * Math.PI * radius ** 2) return false;
  const [from] = gap.outer;
  if (!from) return false;
  const far = gap.outer.reduce((a, b) => (distance(from, b) > distance(from, a) ? b : a));
  const along = minus(far, from);
  const beside = gap.outer.map((corner) => cross(along, minus(corner, from)));
  const across = (Math.max(...beside) - Math.min(...beside)) / distance(from, far);
  return across >= NEARLY * 2 * radius;
}

/** The letters near a piece of sheet. */
function lettersIn(piece: Region, letters: Region): Region {
  const box = boxOf(piece);
  return box ? letters.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box)) : [];
}

/** Filling a neck can leave crumbs of it open in sharp corners: holes with no firm piece that no letter has. */
function withoutCrumbs(filled: Region, letters: Region, firm: readonly Firm[]): Region {
  const own = holesOf(letters);
  return filled.map((polygon) => ({
    ...polygon,
    holes: polygon.holes.filter(
      (hole) =>
        firm.some(({ inside }) => containsPoint(hole, inside)) ||
        own.some((one) => containsPoint(hole, insidePoint(one))),
    ),
  }));
}

function touches(part: Region, hole: Ring, reach: Mm): boolean {
  const box = boxOf(part);
  if (!box || !boxesMeet(box, boxOfPoints(hole))) return false;
  return areaOf(intersect(offset(part, reach / 2, 'round'), regionOfRing(reverseRing(hole)))) > 0;
}

/** Whether a thin piece is longer than what stands by itself. */
const isLong = (ring: Ring, limit: Mm): boolean => limit > 0 && perimeter(ring) / 2 >= LONG * limit;

/** A long thin piece that hangs on thicker sheet at one end only. */
function tongueOf(part: Region, letters: Region, closed: Region, limit: Mm): Tongue[] {
  const ring = part[0]?.outer;
  if (!ring) return [];
  if (!isLong(ring, limit)) return [];
  const length = perimeter(ring) / 2;
  const around = offset(part, limit / 4, 'round');
  const beside = union([lettersIn(around, closed), part]);
  const roots = connectedParts(subtract(around, beside)).filter((root) => areaOf(root) > (limit / 8) ** 2);
  const root = roots[0]?.[0];
  if (!root || roots.length !== 1) return [];
  const open = areaOf(subtract(part, lettersIn(part, letters)));
  return [{ ring, width: open / length, root: insidePoint(root.outer) }];
}
