import { dot, leftNormal, subtract } from '../../geometry/point.ts';
import type { Point } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Choices, Placed, Wish } from './bridging.ts';
import { type Candidate, candidateOf, crowding, fromOtherEnd, sizeOf, standClear } from './choose.ts';
import type { Crossing } from './crossing.ts';
import type { FirmSheet } from './firm.ts';
import { type LeastCut, leastCut, type Ties } from './flow.ts';
import { FRAME, type Island } from './solid.ts';

/** Bars so many widths wide would not meet where two of them stand clear of each other. */
export const CLEAR_OF_OTHERS = 1.5;

/**
 * Adds bridges until each island is held as often as it wishes, by the least cut between it and the frame:
 * islands tied only to each other hang on what ties the whole group. The cheapest bar out of the group goes
 * in, clear of all others; where none fits, the island stays with what it has.
 */
export function holdAll(
  placed: Placed[],
  choices: readonly Choices[],
  wishOf: (island: Island) => Wish,
  firm: FirmSheet,
  width: Mm,
): void {
  const most = Math.max(0, ...choices.map(({ island }) => wishOf(island).wanted));
  let ties = tiesOf(placed, choices.length, firm, width);
  for (let round = 1; round <= most; round += 1) {
    const mayStart = (island: Island) => round === 1 || !wishOf(island).byHand;
    for (const { island } of choices) {
      while (wishOf(island).wanted >= round) {
        const cut = cutOf(ties, island.index, round);
        const way = cut.hold < round ? wayOut(placed, choices, cut, mayStart, firm, width) : null;
        if (!way) break;
        placed.push(way);
        ties = tiesOf(placed, choices.length, firm, width);
      }
    }
  }
}

/** How many bars hold each of `count` islands to the frame, none counted beyond `most`. */
export function holdsOf(
  placed: readonly Placed[],
  count: number,
  firm: FirmSheet,
  width: Mm,
  most: number,
): number[] {
  const ties = tiesOf(placed, count, firm, width);
  return Array.from({ length: count }, (_, index) => cutOf(ties, index, most).hold);
}

/** The frame, -1, stands first. */
const nodeOf = (piece: number): number => piece + 1;

const cutOf = (ties: Ties, island: number, most: number): LeastCut =>
  leastCut(ties, nodeOf(island), nodeOf(FRAME), most);

/** Bars that run into each other are one tie. */
function tiesOf(placed: readonly Placed[], count: number, firm: FirmSheet, width: Mm): Ties {
  const group = placed.map((_, i) => i);
  placed.forEach(({ crossing }, i) => {
    placed.slice(0, i).forEach((other, k) => {
      if (group[k] === group[i] || !barsMeet(crossing, other.crossing, width)) return;
      const [old, kept] = [group[i], pick(group, k)];
      group.forEach((one, at) => {
        if (one === old) group[at] = kept;
      });
    });
  });
  const ties = new Map<number, Set<number>>();
  placed.forEach(({ crossing }, i) => {
    const tie = ties.get(pick(group, i)) ?? new Set();
    for (const piece of firm.tiedBy(crossing)) tie.add(nodeOf(piece));
    ties.set(pick(group, i), tie);
  });
  return { pieces: count + 1, ties: [...ties.values()].map((tie) => [...tie]) };
}

/** The cheapest bar out of what is tied to an island, first of those that are sure to hold it once more. */
function wayOut(
  placed: readonly Placed[],
  choices: readonly Choices[],
  { near, far }: LeastCut,
  mayStart: (island: Island) => boolean,
  firm: FirmSheet,
  width: Mm,
): Placed | null {
  const ways = choices.flatMap(({ island, candidates }) => {
    if (!near(nodeOf(island.index)) || !mayStart(island)) return [];
    const held = barsOn(island, placed);
    return candidates
      .filter(({ crossing }) => !near(nodeOf(crossing.target)))
      .map((candidate) => ({
        way: { island, crossing: candidate.crossing },
        cost: candidate.cost * crowding(candidate, held, sizeOf(island)),
        sure: far(nodeOf(candidate.crossing.target)),
        standsFree: () => standsFree(candidate, held, placed, width),
      }));
  });
  ways.sort((a, b) => Number(b.sure) - Number(a.sure) || a.cost - b.cost);
  const leadsOut = (pieces: readonly number[]) =>
    pieces.some((piece) => near(nodeOf(piece))) && pieces.some((piece) => !near(nodeOf(piece)));
  return ways.find((one) => one.standsFree() && leadsOut(firm.tiedBy(one.way.crossing)))?.way ?? null;
}

/** Bars of an island, those that reach it from its neighbors too, as seen from it. */
const barsOn = (island: Island, placed: readonly Placed[]): Candidate[] =>
  placed.flatMap(({ island: home, crossing }) => {
    if (crossing.target === island.index) return [fromOtherEnd(crossing, island)];
    return home?.index === island.index ? [candidateOf(crossing, island)] : [];
  });

const standsFree = (
  candidate: Candidate,
  held: readonly Candidate[],
  placed: readonly Placed[],
  width: Mm,
): boolean =>
  held.every((other) => standClear(candidate, other, width)) &&
  placed.every(({ crossing }) => !barsMeet(candidate.crossing, crossing, CLEAR_OF_OTHERS * width));

/** What of a bar tells where it crosses the stroke. */
export type Bar = Pick<Crossing, 'leaves' | 'reaches' | 'along'>;

/** Whether two bars of this width have a place in common, on their way across the strokes. */
export function barsMeet(a: Bar, b: Bar, width: Mm): boolean {
  const [as, bs] = [cornersOf(a, width), cornersOf(b, width)];
  return [a.along, leftNormal(a.along), b.along, leftNormal(b.along)].every((axis) => {
    const [p, q] = [as.map((corner) => dot(corner, axis)), bs.map((corner) => dot(corner, axis))];
    return Math.max(...p) > Math.min(...q) && Math.max(...q) > Math.min(...p);
  });
}

function cornersOf({ leaves, reaches, along }: Bar, width: Mm): Point[] {
  const n = leftNormal(along);
  const half = { x: (n.x * width) / 2, y: (n.y * width) / 2 };
  return [leaves, reaches].flatMap((end) => [subtract(end, half), { x: end.x + half.x, y: end.y + half.y }]);
}
