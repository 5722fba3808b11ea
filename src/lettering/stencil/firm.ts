import { grownBox } from '../../geometry/box.ts';
import { connectedParts, intersect, offset, subtract } from '../../geometry/clip.ts';
import { add, midpoint, scale } from '../../geometry/point.ts';
import {
  areaOf,
  boxesMeet,
  containsPointInRegion,
  regionOfBox,
  regionOfRing,
} from '../../geometry/region.ts';
import { boxOfPoints, containsPoint, signedArea } from '../../geometry/ring.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { barRing, type Crossing } from './crossing.ts';
import { covers } from './inside.ts';
import { isPlain } from './plain.ts';
import { FRAME, type Island, type Solid } from './solid.ts';
import { reachOf } from './weak.ts';

/** Sheet that is thick enough to hold, and what a bar makes of it. */
export interface FirmSheet {
  /** Whether firm sheet lies at both ends of a bar, behind where it is in the sheet with all of its width. */
  readonly isFirm: (crossing: Crossing) => boolean;
  /** Pieces of sheet, by their numbers, that a bar ties together firmly. */
  readonly tiedBy: (crossing: Crossing) => readonly number[];
}

/** A bar as wide as asked always holds, however wide a neck is asked for. */
const SHARE_OF_BAR = 0.9;
/** How far in from the letters firm sheet begins: as far as thin sheet is asked for, but a bar holds. */
export const firmReach = (limit: Mm, width: Mm): Mm => Math.min(reachOf(limit), (SHARE_OF_BAR * width) / 2);
/** Smaller than this, firm sheet is rounding. */
const LEAST_MM2 = 0.01;

/**
 * Firm is what stays of the sheet when everything thinner than the limit is taken away, measured on its polygons: the
 * letters grown by half the limit leave it open. A bar ties those firm pieces that its own firm middle runs
 * into once the bar stands; one that ends in a thin place of an island ties nothing there. Most bars tell what they
 * tie by the borders beside them; of the others the polygons are cut.
 *
 * @param width of a bar
 * @param reach how far in from the letters it begins, see `firmReach`
 * @param grown the letters grown by it
 */
export function firmSheet(letters: Region, solid: Solid, width: Mm, reach: Mm, grown: Region): FirmSheet {
  const { islands } = solid;
  // Where thin necks were filled, the borders of pieces are not those of the letters.
  const sides = islands.some(({ kind }) => kind === 'tongue')
    ? null
    : solid.letters.flatMap((letter) => letter.sides);
  const pieceOf = (border: Ring): number => smallestAround(islands, border)?.index ?? FRAME;
  const withCore = new Set(grown.flatMap(({ holes }) => holes.map(pieceOf)));
  const [lettersNear, grownNear] = [finder(letters), finder(grown)];
  const known = new Map<Crossing, readonly number[]>();
  const isOpen = (place: Point) =>
    grownNear({ ...place, w: 0, h: 0 }).every((polygon) => !covers(polygon, place));

  const measured = (crossing: Crossing): number[] => {
    const bar = barRing(crossing, width);
    const window = grownBox(boxOfPoints(bar), 2 * width + 2 * reach);
    const ink = intersect(lettersNear(window), regionOfBox(window));
    const firmBeside = (open: Region) => subtract(regionOfBox(window), offset(open, reach, 'round'));
    const middle = midpoint(crossing.leaves, crossing.reaches);
    const held = connectedParts(firmBeside(subtract(ink, regionOfRing(bar)))).find((part) =>
      containsPointInRegion(part, middle),
    );
    if (!held) return [];
    const pieces = connectedParts(intersect(held, firmBeside(ink)))
      .filter((part) => areaOf(part) > LEAST_MM2)
      .flatMap(([part]) => (part ? [pieceOf(part.outer)] : []));
    const thin = islands.filter(
      ({ index, ring, box }) =>
        !withCore.has(index) &&
        boxesMeet(box, window) &&
        areaOf(intersect(held, regionOfRing([...ring].reverse()))) > LEAST_MM2,
    );
    return [...new Set([...pieces, ...thin.map(({ index }) => index)])];
  };

  const insides = ({ leaves, reaches, along }: Crossing, before = 0, after = 0): Point[] => [
    add(leaves, scale(along, -before - INSIDE * reach)),
    add(reaches, scale(along, after + INSIDE * reach)),
  ];
  // A bar covers the tip of a counter that runs out to a point.
  const isFirm = (crossing: Crossing) => insides(crossing, crossing.before, crossing.after).every(isOpen);

  /** The pieces at both ends of a plain bar; null of any other. */
  const plainly = (crossing: Crossing): number[] | null => {
    if (!sides || !insides(crossing).every(isOpen)) return null;
    const ends = [...new Set(insides(crossing).map((place) => pieceOf([place])))];
    return isPlain(crossing, sides, ends, { width, reach, inside: INSIDE * reach }) ? ends : null;
  };

  return {
    isFirm,
    tiedBy: (crossing) => {
      const tied = known.get(crossing) ?? plainly(crossing) ?? measured(crossing);
      known.set(crossing, tied);
      return tied;
    },
  };
}

/** Just inside of firm sheet, which begins a reach behind the border. */
const INSIDE = 1.05;

/** The polygons of a region that a box meets. */
function finder(region: Region): (box: Box) => Region {
  const boxed = region.map((polygon) => ({ polygon, own: boxOfPoints(polygon.outer) }));
  return (box) => boxed.filter(({ own }) => boxesMeet(own, box)).map(({ polygon }) => polygon);
}

/** Borders of firm sheet run off those of the letters: any corner of one tells where it lies. */
function smallestAround(islands: readonly Island[], [place]: Ring): Island | null {
  let best: Island | null = null;
  for (const island of islands) {
    if (!place || !boxesMeet(island.box, { ...place, w: 0, h: 0 }) || !containsPoint(island.ring, place))
      continue;
    if (!best || Math.abs(signedArea(island.ring)) < Math.abs(signedArea(best.ring))) best = island;
  }
  return best;
}
