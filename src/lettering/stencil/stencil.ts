import type { Check } from '../../check/check.ts';
import type { Lettering } from '../../design/schema.ts';
import { connectedParts, subtract, union } from '../../geometry/clip.ts';
import { angleOf, midpoint } from '../../geometry/point.ts';
import { boxesMeet, boxOf, containsPointInRegion, regionOfBox, regionOfRing } from '../../geometry/region.ts';
import { boxOfPoints, signedArea } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { letterByLetter } from '../cluster.ts';
import type { Bridge, Stencil } from '../result.ts';
import { type Candidate, candidatesOf, chooseBridges, fromOtherEnd, nearestTo } from './choose.ts';
import { barRing, type Crossing, crossingFrom, startsInLine, startsOn } from './crossing.ts';
import {
  type Course,
  courseOf,
  FRAME,
  type Island,
  type Letter,
  type Side,
  type Solid,
  solidOf,
} from './solid.ts';
import { tongueBridge } from './tongue.ts';
import { type Tongue, weakSheet } from './weak.ts';

type Options = Lettering['stencil'];

/** Islands smaller than this are specks between overlapping outlines: they are cut away, not held. */
const SPECK_MM2 = 0.25;
/** An island is held on two sides, so that the knife cannot turn it out. */
const LEAST_BRIDGES = 2;
/** Rounds of adding bridges when the sheet is found in pieces. */
const MOST_ROUNDS = 12;

export interface StencilInput {
  /** Sign or layer that the checks name. */
  readonly sign: string;
  /** What shall be painted. */
  readonly letters: Region;
  /** The sheet before cutting; the letters lie inside of it with some frame around. */
  readonly sheet: Box;
  readonly options: Options;
  /** Holes for registration, cut through beside the letters. */
  readonly holes?: Region;
}

/** A bridge that was decided on; a tongue's belongs to no island. */
interface Placed {
  readonly island: Island | null;
  readonly crossing: Crossing;
}

/**
 * Makes a stencil that holds together. Every island gets at least two bridges as wide as asked (one where
 * two do not fit); pieces that hang on a neck thinner than the tongue limit get one, and so do long thin
 * fingers of sheet. Bridges set by hand replace the proposed ones of their island.
 *
 * Whether the sheet is in one piece is read off its own polygons after cutting, and pieces found loose get
 * further bridges; `loose` is what that count comes to, not what the bridges promise.
 *
 * Checks: `stencil.loose-island` (error), `stencil.one-bridge` and `stencil.thin-tongue` (warnings).
 */
export function stencil({ sign, letters, sheet, options, holes = [] }: StencilInput): {
  stencil: Stencil;
  checks: Check[];
} {
  const whole = withoutSpecks(letterByLetter(letters, 0, (touching) => union([touching])));
  const weak = weakSheet(whole, options.tongue);
  const solid = solidOf(weak.letters, (hole) => (weak.isWeak(hole) ? 'tongue' : 'island'));
  const choices = solid.islands.map((island) => choicesFor(island, solid, options));
  const placed = chooseAll(choices, options);
  linkAll(placed, choices);
  const unheld = holdTongues(weak.tongues, solid, placed, options.bridgeWidth);
  const held = proveConnected(whole, sheet, holes, placed, choices, options);
  const bridges = placed.map((one) => bridgeOf(one, options.bridgeWidth));
  const single = solid.islands.filter(
    (island) => island.kind === 'island' && placed.filter((one) => holds(one, island)).length < LEAST_BRIDGES,
  );
  const result: Stencil = {
    sheet: held.sheet,
    cut: held.cut,
    bridges,
    islands: solid.islands.map(({ box, inside, kind }) => ({ box, at: inside, kind })),
    loose: held.loose.length,
    single: single.length,
  };
  return { stencil: result, checks: checksOf(sign, result, held.loose, single, unheld) };
}

const holds = ({ island, crossing }: Placed, wanted: Island): boolean =>
  island?.index === wanted.index || crossing.target === wanted.index;

function withoutSpecks(letters: Region): Region {
  const keep = letters.map((polygon) => ({
    ...polygon,
    holes: polygon.holes.filter((hole) => Math.abs(signedArea(hole)) >= SPECK_MM2),
  }));
  return keep;
}

interface Choices {
  readonly island: Island;
  readonly candidates: readonly Candidate[];
}

function choicesFor(island: Island, solid: Solid, options: Options): Choices {
  const letter = solid.letters[island.letter];
  const crossings = letter ? crossingsOf(island, letter, options.bridgeWidth) : [];
  return { island, candidates: candidatesOf(crossings, island, options.direction) };
}

/**
 * Bridges of all islands, from the left; a bridge between two islands counts for both. Those set by hand
 * come first, so that no proposed one doubles them.
 */
function chooseAll(choices: readonly Choices[], options: Options): Placed[] {
  const byHand = new Map(options.placed.map(({ island, angles }) => [island, angles]));
  const placed = choices.flatMap(({ island, candidates }) => {
    const near = (byHand.get(island.index) ?? []).flatMap((angle) => nearestTo(candidates, angle) ?? []);
    return [...new Set(near)].map(({ crossing }): Placed => ({ island, crossing }));
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

/** Bridges the free ends of thin fingers; returns those where no bar stands. */
function holdTongues(tongues: readonly Tongue[], solid: Solid, placed: Placed[], width: Mm): Tongue[] {
  return tongues.filter((tongue) => {
    const crossing = tongueBridge(tongue, solid, width);
    if (crossing) placed.push({ island: null, crossing });
    return !crossing;
  });
}

const wantedOf = (island: Island, options: Options): number =>
  island.kind === 'island' ? Math.max(LEAST_BRIDGES, options.bridges) : 1;

/** Crossings from all along an island's border; sides far from the island are only looked at if need be. */
function crossingsOf(island: Island, letter: Letter, width: number): Crossing[] {
  const starts = [...startsOn(island.ring, width), ...startsInLine(island)];
  const across = (course: Course) =>
    starts.flatMap((start) => crossingFrom(start, island.index, letter, course, width) ?? []);
  const near = across(
    courseOf(sidesNear(letter.sides, island.box, 2 * Math.max(island.box.w, island.box.h) + 6 * width)),
  );
  return near.length >= starts.length / 4 ? near : across(courseOf(letter.sides));
}

function sidesNear(sides: readonly Side[], { x, y, w, h }: Box, by: number): Side[] {
  return sides.filter(
    ({ from, to }) =>
      Math.max(from.x, to.x) >= x - by &&
      Math.min(from.x, to.x) <= x + w + by &&
      Math.max(from.y, to.y) >= y - by &&
      Math.min(from.y, to.y) <= y + h + by,
  );
}

/**
 * Islands that hold each other but not the frame get one more bridge: the cheapest that leads out of their
 * group.
 */
function linkAll(placed: Placed[], choices: readonly Choices[]): void {
  for (let round = 0; round < choices.length; round += 1) {
    const group = groupsOf(placed, choices.length);
    const adrift = choices.find(({ island }) => group(island.index) !== group(FRAME));
    if (!adrift) return;
    const own = group(adrift.island.index);
    const members = choices.filter(({ island }) => group(island.index) === own);
    const way = cheapest(members, ({ target }) => group(target) !== own);
    if (!way) return;
    placed.push(way);
  }
}

/** Which pieces of sheet the bridges join: equal numbers are one piece. */
function groupsOf(placed: readonly Placed[], count: number): (index: number) => number {
  const parent = Array.from({ length: count + 1 }, (_, i) => i);
  const rootOf = (index: number): number => {
    let at = index;
    while (parent[at] !== at) at = parent[at] ?? at;
    return at;
  };
  // The frame, -1, stands first.
  for (const { island, crossing } of placed) {
    if (island) parent[rootOf(island.index + 1)] = rootOf(crossing.target + 1);
  }
  return (index) => rootOf(index + 1);
}

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

interface Cut {
  readonly sheet: Region;
  readonly cut: Region;
  /** Pieces that would fall out. */
  readonly loose: readonly Region[];
}

/** Cuts, counts the pieces, and adds bridges to loose ones until there is one piece or no way left. */
function proveConnected(
  letters: Region,
  box: Box,
  holes: Region,
  placed: Placed[],
  choices: readonly Choices[],
  options: Options,
): Cut {
  let held = cutOut(letters, box, holes, placed, options.bridgeWidth);
  for (let round = 0; round < MOST_ROUNDS && held.loose.length > 0; round += 1) {
    const before = placed.length;
    for (const piece of held.loose) {
      const inPiece = choices.filter(({ island }) => containsPointInRegion(piece, island.inside));
      const used = (crossing: Crossing) => placed.some((one) => one.crossing === crossing);
      const way = cheapest(inPiece, (crossing) => !used(crossing));
      if (way) placed.push(way);
    }
    if (placed.length === before) break;
    held = cutOut(letters, box, holes, placed, options.bridgeWidth);
  }
  return held;
}

function cutOut(letters: Region, box: Box, holes: Region, placed: readonly Placed[], width: number): Cut {
  const bars = placed.flatMap(({ crossing }) => regionOfRing(barRing(crossing, width)));
  const cut = letterByLetter(letters, 0, (near) => {
    const across = barsOver(near, bars);
    return across.length > 0 ? subtract(near, union([across])) : near;
  });
  const sheet = subtract(regionOfBox(box), union([cut, holes]));
  const parts = connectedParts(sheet);
  const frame = parts.find((part) => containsPointInRegion(part, box));
  return { sheet, cut, loose: parts.filter((part) => part !== frame) };
}

function barsOver(letters: Region, bars: Region): Region {
  const box = boxOf(letters);
  return box ? bars.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box)) : [];
}

function bridgeOf({ island, crossing }: Placed, width: number): Bridge {
  return {
    island: island?.index ?? -1,
    kind: island?.kind ?? 'tongue',
    at: midpoint(crossing.leaves, crossing.reaches),
    angle: angleOf(crossing.along),
    width,
    length: crossing.length,
  };
}

function checksOf(
  sign: string,
  { single }: Stencil,
  loose: readonly Region[],
  alone: readonly Island[],
  unheld: readonly Tongue[],
): Check[] {
  const checks: Check[] = [];
  const first = (place: Point | undefined) => (place ? { at: place } : {});
  if (loose.length > 0) {
    checks.push({
      code: 'stencil.loose-island',
      severity: 'error',
      parts: [sign],
      ...first(loose[0]?.[0]?.outer[0]),
      figures: { count: loose.length },
    });
  }
  if (single > 0) {
    checks.push({
      code: 'stencil.one-bridge',
      severity: 'warning',
      parts: [sign],
      ...first(alone[0]?.inside),
      figures: { count: single },
    });
  }
  for (const { width, root } of unheld) {
    checks.push({
      code: 'stencil.thin-tongue',
      severity: 'warning',
      parts: [sign],
      at: root,
      figures: { width_mm: width },
    });
  }
  return checks;
}
