import type { Check } from '../../check/check.ts';
import type { Lettering } from '../../design/schema.ts';
import { byStart, subtract, union } from '../../geometry/clip.ts';
import { clustersOf, inOrder } from '../../geometry/cluster.ts';
import { add } from '../../geometry/point.ts';
import { boxOf, regionOfBox } from '../../geometry/region.ts';
import { signedArea } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { type ShapeMemory, shapeMemory } from '../../geometry/shapeMemory.ts';
import { pick } from '../../list/at.ts';
import type { Bridge, Stencil } from '../result.ts';
import { eachShape, placed, placedRing } from '../shapes.ts';
import { cutFrom } from './prove.ts';
import { type Held, holdUnit, meetingUnits, type Unit, unitOf } from './unit.ts';
import { reachOf, type Tongue } from './weak.ts';

type Options = Lettering['stencil'];

/** Islands smaller than this are specks between overlapping outlines: they are cut away, not held. */
const SPECK_MM2 = 0.25;

export interface StencilInput {
  /** Sign or layer that the checks name. */
  readonly sign: string;
  /** What shall be painted. */
  readonly letters: Region;
  /** The sheet before cutting; the letters lie inside of it with some frame around. */
  readonly sheet: Box;
  readonly options: Options;
  /** Holes for registration, cut through the frame clear of the letters. */
  readonly holes?: Region;
  /** Where the work on each letter is kept; of this stencil alone when not given. */
  readonly memory?: ShapeMemory;
}

/**
 * Makes a stencil that holds together. Every island is held by as many bridges as asked, each as wide as asked,
 * counted by the least cut between it and the frame (fewer where no more fit); pieces that hang on a neck thinner
 * than the tongue limit get one, and so do long thin fingers of sheet. Bridges set by hand replace the proposed
 * ones of their island; where all were taken away, it gets none, and is told as loose.
 *
 * Letters with enough sheet between them are worked each for itself, equal ones once. That the sheet is in one
 * piece is proved so too: what is cut of one letter keeps clear of what is cut of another, and the pieces that
 * bodies apart from each other cut out of the plane are those that each cuts out alone (Janiszewski 1913).
 *
 * Whether a letter's sheet is in one piece is read off its own polygons after cutting, and pieces found loose get
 * further bridges; `loose` is what that count comes to, not what the bridges promise.
 *
 * Checks: `stencil.loose-island` (error); `stencil.one-bridge` (warning, a note where one was asked for), of all
 * that hangs on one bridge, alone or as a group; `stencil.thin-tongue` (warning).
 */
export function stencil({
  sign,
  letters,
  sheet,
  options,
  holes = [],
  memory = shapeMemory(),
}: StencilInput): {
  stencil: Stencil;
  checks: Check[];
} {
  const whole = withoutSpecks(eachShape(memory, 'union', letters, 0, (touching) => union([touching])));
  const pieces = heldPieces(clustersOf(whole, reachOf(options.tongue)), options, memory);
  const cut = inOrder(pieces.flatMap(({ held, at }) => placed(held.cut, at)));
  const { frame, loose } = isClear(whole, sheet)
    ? { frame: frameOf(sheet, holes, pieces), loose: looseOf(pieces) }
    : cutFrom(sheet, union([cut, holes]));
  const islands = pieces.flatMap(islandsOf).sort((a, b) => a.index - b.index);
  const result: Stencil = {
    sheet: inOrder([...frame, ...loose.flat()]),
    cut,
    bridges: pieces.flatMap(bridgesOf).sort((a, b) => rankOf(a) - rankOf(b)),
    islands: islands.map(({ index, ...island }) => island),
    loose: loose.length,
    // What hangs on nothing is loose, and told as such.
    single: islands.filter(({ hold }) => hold === 1).length,
  };
  const unheld = pieces.flatMap(({ held, at }) =>
    held.unheld.map(({ width, root }) => ({ width, root: add(root, at) })),
  );
  return { stencil: result, checks: checksOf(sign, result, loose, unheld, options.bridges) };
}

const withoutSpecks = (letters: Region): Region =>
  letters.map((polygon) => ({
    ...polygon,
    holes: polygon.holes.filter((hole) => Math.abs(signedArea(hole)) >= SPECK_MM2),
  }));

/** A unit held, in its place, with the numbers of its islands among all of them. */
interface Piece {
  readonly unit: Unit;
  readonly held: Held;
  readonly at: Point;
  readonly numbers: readonly number[];
}

/** The clusters held each for itself; those whose bars would meet, together. */
function heldPieces(clusters: readonly Region[], options: Options, memory: ShapeMemory): Piece[] {
  const units = clusters.map((letters) => unitOf(letters, options, memory));
  const numbers = numbersOf(units);
  const helds = units.map((unit, i) =>
    holdUnit(unit, { ...options, placed: ownOf(options.placed, pick(numbers, i)) }, memory),
  );
  const groups = meetingUnits(units, helds, options.bridgeWidth);
  if (groups.length > 0) {
    const joined = groups.map((members) => inOrder(members.flatMap((i) => pick(clusters, i))));
    return heldPieces(joined, options, memory);
  }
  return units.map((unit, i) => ({
    ...{ unit, held: pick(helds, i), at: unit.stands.at, numbers: pick(numbers, i) },
  }));
}

/** Islands are counted from the left over all units: the numbers of each unit's own. */
function numbersOf(units: readonly Unit[]): number[][] {
  const numbers = units.map(({ prepared }) => prepared.solid.islands.map(() => 0));
  const all = units.flatMap(({ prepared, stands: { at } }, unit) =>
    prepared.solid.islands.map(({ index, box }) => ({ unit, index, x: box.x + at.x, y: box.y + at.y })),
  );
  all.sort((a, b) => a.x - b.x || a.y - b.y);
  all.forEach(({ unit, index }, number) => {
    pick(numbers, unit)[index] = number;
  });
  return numbers;
}

/** Bridges set by hand on a unit's islands, by the unit's own count. */
const ownOf = (set: Options['placed'], numbers: readonly number[]): Options['placed'] =>
  set.flatMap((one) => {
    const island = numbers.indexOf(one.island);
    return island >= 0 ? [{ ...one, island }] : [];
  });

function islandsOf({ unit, held, at, numbers }: Piece) {
  return unit.prepared.solid.islands.map(({ index, box, ring, inside, kind }) => ({
    index: pick(numbers, index),
    box: { ...box, x: box.x + at.x, y: box.y + at.y },
    border: placedRing(ring, at),
    at: add(inside, at),
    kind,
    hold: pick(held.holds, index),
  }));
}

const bridgesOf = ({ held, at, numbers }: Piece): Bridge[] =>
  held.bridges.map((bridge) => ({
    ...bridge,
    island: numbers[bridge.island] ?? bridge.island,
    at: add(bridge.at, at),
  }));

/** By their islands from the left, those of tongues last. */
const rankOf = ({ island }: Bridge): number => (island < 0 ? Infinity : island);

/** Whether there is sheet all around the letters: else the frame itself can come apart. */
function isClear(letters: Region, { x, y, w, h }: Box): boolean {
  const box = boxOf(letters);
  return !box || (box.x > x && box.y > y && box.x + box.w < x + w && box.y + box.h < y + h);
}

const looseOf = (pieces: readonly Piece[]): Region[] =>
  inOrder(pieces.flatMap(({ held, at }) => held.loose.flatMap((one) => placed(one, at)))).map((one) => [one]);

/** The sheet less all that is cut out of it; what is loose inside of the letters is told apart. */
function frameOf(sheet: Box, holes: Region, pieces: readonly Piece[]): Region {
  const opened = pieces.flatMap(({ held, at }) => held.openings.map((ring) => placedRing(ring, at)));
  return subtract(regionOfBox(sheet), holes).map(({ outer, holes: own }) => ({
    outer,
    holes: [...own, ...opened].sort(byStart),
  }));
}

function checksOf(
  sign: string,
  { single, islands }: Stencil,
  loose: readonly Region[],
  unheld: readonly Pick<Tongue, 'root' | 'width'>[],
  asked: number,
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
      severity: asked > 1 ? 'warning' : 'note',
      parts: [sign],
      ...first(islands.find(({ hold }) => hold === 1)?.at),
      figures: { count: single, asked },
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
