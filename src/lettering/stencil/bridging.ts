import type { Lettering } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import { type Candidate, candidatesOf, chooseBridges, fromOtherEnd, nearestTo } from './choose.ts';
import { type Crossing, crossingFrom, SQUARED, SQUARED_BY_HAND, startsInLine, startsOn } from './crossing.ts';
import type { FirmSheet } from './firm.ts';
import { type Course, courseOf, type Island, type Letter, type Side, type Solid } from './solid.ts';
import { tongueBridge } from './tongue.ts';
import type { Tongue } from './weak.ts';

type Options = Lettering['stencil'];

/** A bridge that was decided on; a tongue's belongs to no island. */
export interface Placed {
  readonly island: Island | null;
  readonly crossing: Crossing;
}

/** How many bars an island should hang on, and whether proposed ones may start there. */
export interface Wish {
  readonly wanted: number;
  /** Set by hand: bars leave it only where nothing else ties it to the frame. */
  readonly byHand: boolean;
}

/** An island with all places where a bar could hold it, the best first. */
export interface Choices {
  readonly island: Island;
  readonly candidates: readonly Candidate[];
  /** The same for bars set by hand, as near as can be to where they were put; looked for when asked. */
  readonly byHand: () => readonly Candidate[];
}

export function choicesFor(island: Island, solid: Solid, firm: FirmSheet, options: Options): Choices {
  const letter = solid.letters[island.letter];
  const found = (squared: Deg): Candidate[] => {
    const crossings = letter ? crossingsOf(island, letter, options.bridgeWidth, squared) : [];
    return candidatesOf(crossings, island, options.direction, firm.isFirm);
  };
  let byHand: Candidate[] | undefined;
  return {
    island,
    candidates: found(SQUARED),
    byHand: () => {
      byHand ??= found(SQUARED_BY_HAND);
      return byHand;
    },
  };
}

/** None for an island whose bridges were all taken away by hand: nothing puts one back unasked. */
export const choicesLeft = (choices: readonly Choices[], { placed }: Options): Choices[] =>
  choices.map((own) =>
    placed.some((p) => p.island === own.island.index && p.angles.length === 0)
      ? { ...own, candidates: [] }
      : own,
  );

/**
 * Bridges of all islands, from the left; a bridge between two islands counts for both. Those set by hand
 * come first, so that no proposed one doubles them.
 */
export function chooseAll(choices: readonly Choices[], options: Options): Placed[] {
  const byHand = new Map(options.placed.map(({ island, angles }) => [island, angles]));
  const placed = choices.flatMap(({ island, byHand: candidates }) => {
    const angles = byHand.get(island.index);
    const near = angles ? nearestTo(candidates(), angles, options.bridgeWidth) : [];
    return near.map(({ crossing }): Placed => ({ island, crossing }));
  });
  for (const { island, candidates } of choices) {
    if (byHand.has(island.index)) continue;
    const held = placed
      .filter(({ crossing }) => crossing.target === island.index)
      .map(({ crossing }) => fromOtherEnd(crossing, island));
    const chosen = chooseBridges(candidates, island, wantedOf(island, options), options.bridgeWidth, held);
    for (const { crossing } of chosen) placed.push({ island, crossing });
  }
  return placed;
}

/** A piece on a thin neck has that besides, and gets one. */
const wantedOf = (island: Island, options: Options): number =>
  island.kind === 'island' ? options.bridges : 1;

/** How often each island should be held: those set by hand are left as they were set, once something holds them. */
export const wishesOf =
  (options: Options) =>
  (island: Island): Wish => {
    const byHand = options.placed.some((p) => p.island === island.index);
    return { wanted: byHand ? 1 : wantedOf(island, options), byHand };
  };

/** Crossings from all along an island's border; sides far from the island are only looked at if need be. */
function crossingsOf(island: Island, letter: Letter, width: Mm, squared: Deg): Crossing[] {
  const starts = [...startsOn(island.ring, width, island.mirrors[0]), ...startsInLine(island)];
  const across = (course: Course) =>
    starts.flatMap((start) => crossingFrom(start, island.index, letter, course, width, squared) ?? []);
  const near = across(
    courseOf(sidesNear(letter.sides, island.box, 2 * Math.max(island.box.w, island.box.h) + 6 * width)),
  );
  return near.length >= starts.length / 4 ? near : across(courseOf(letter.sides));
}

function sidesNear(sides: readonly Side[], { x, y, w, h }: Box, by: Mm): Side[] {
  return sides.filter(
    ({ from, to }) =>
      Math.max(from.x, to.x) >= x - by &&
      Math.min(from.x, to.x) <= x + w + by &&
      Math.max(from.y, to.y) >= y - by &&
      Math.min(from.y, to.y) <= y + h + by,
  );
}

/** Bridges the free ends of thin fingers; returns those where no bar stands. */
export function holdTongues(tongues: readonly Tongue[], solid: Solid, placed: Placed[], width: Mm): Tongue[] {
  return tongues.filter((tongue) => {
    const crossing = tongueBridge(tongue, solid, width);
    if (crossing) placed.push({ island: null, crossing });
    return !crossing;
  });
}
