import { connectedParts, subtract, union } from '../../geometry/clip.ts';
import {
  areaOf,
  boxesMeet,
  boxOf,
  containsPointInRegion,
  EMPTY,
  regionOfBox,
  regionOfRing,
} from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Polygon, Region, Ring } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { letterByLetter } from '../cluster.ts';
import type { Choices, Placed } from './bridging.ts';
import { barRing, type Crossing } from './crossing.ts';
import { sliversOf } from './sliver.ts';

/** Rounds of adding bridges when the sheet is found in pieces. */
const MOST_ROUNDS = 12;

/** The sheet around letters after cutting. */
export interface Cut {
  readonly cut: Region;
  /** Borders of what is cut out of the frame. */
  readonly openings: readonly Ring[];
  /** Pieces that would fall out. */
  readonly loose: readonly Region[];
  /** What bars left of letters, too small to paint through: it stays sheet, so that bars beside it become one. */
  readonly crumbs: Region;
}

/** Cuts letters out of a box around them, counts the pieces, and adds bridges to loose ones until there is one piece or no way left. */
export function proveConnected(
  letters: Region,
  box: Box,
  placed: Placed[],
  choices: readonly Choices[],
  width: Mm,
): Cut {
  let held = cutOut(letters, box, placed, width);
  for (let round = 0; round < MOST_ROUNDS && held.loose.length > 0; round += 1) {
    const before = placed.length;
    for (const piece of held.loose) {
      const inPiece = choices.filter(({ island }) => containsPointInRegion(piece, island.inside));
      const used = (crossing: Crossing) => placed.some((one) => one.crossing === crossing);
      // Bars from one island of the piece to another leave it as loose as it is.
      const leadsOut = ({ target }: Crossing) => inPiece.every(({ island }) => island.index !== target);
      const way = cheapest(inPiece, (crossing) => leadsOut(crossing) && !used(crossing));
      if (way) placed.push(way);
    }
    if (placed.length === before) break;
    held = cutOut(letters, box, placed, width);
  }
  return held;
}

function cutOut(letters: Region, box: Box, placed: readonly Placed[], width: Mm): Cut {
  const crossings = placed.map(({ crossing }) => crossing);
  const bars = crossings.flatMap((crossing) => regionOfRing(barRing(crossing, width)));
  const crumbs: Polygon[] = [];
  const isWhole = (opening: Polygon, near: Region) => {
    const crumb = areaOf([opening]) < width * width && !near.some((whole) => isSame(whole, opening));
    if (crumb) crumbs.push(opening);
    return !crumb;
  };
  const cut = letterByLetter(letters, (near) => {
    const across = barsOver(near, bars);
    if (across.length === 0) return near;
    const opened = subtract(near, union([across]));
    const slivers = sliversOf(near, opened, crossings, width);
    return (slivers.length > 0 ? subtract(opened, slivers) : opened).filter((one) => isWhole(one, near));
  });
  const { frame, loose } = cutFrom(box, cut);
  return { cut, openings: frame.flatMap(({ holes }) => holes), loose, crumbs };
}

/** Whether bars left an opening as it was: two openings of a letter have no box in common. */
function isSame(whole: Polygon, opening: Polygon): boolean {
  const [a, b] = [boxOfPoints(whole.outer), boxOfPoints(opening.outer)];
  const off = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y), Math.abs(a.w - b.w), Math.abs(a.h - b.h));
  return off < SAME && Math.abs(areaOf([whole]) - areaOf([opening])) < SAME;
}

/** In millimeters and square millimeters: far over the grid, far under any bar. */
const SAME = 0.001;

/** What is left of a sheet: the piece at its corner, and those that would fall out. */
export function cutFrom(box: Box, cut: Region): { frame: Region; loose: Region[] } {
  const parts = connectedParts(subtract(regionOfBox(box), cut));
  const frame = parts.find((part) => containsPointInRegion(part, box));
  return { frame: frame ?? EMPTY, loose: parts.filter((part) => part !== frame) };
}

function barsOver(letters: Region, bars: Region): Region {
  const box = boxOf(letters);
  return box ? bars.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box)) : [];
}

/** The best place of all those islands that is allowed. */
function cheapest(choices: readonly Choices[], allowed: (crossing: Crossing) => boolean): Placed | null {
  let best: Placed | null = null;
  let least = Infinity;
  for (const { island, candidates } of choices) {
    for (const { crossing, cost } of candidates) {
      if (cost >= least || !allowed(crossing)) continue;
      least = cost;
      best = { island, crossing };
    }
  }
  return best;
}
