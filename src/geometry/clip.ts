import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from 'clipper2-ts';
import { at, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { grownBox, isBeyond, sharedArea, surrounds } from './box.ts';
import { clustersOf, inOrder } from './cluster.ts';
import { distance, lerp, midpoint } from './point.ts';
import {
  boxesMeet,
  boxOf,
  containsBox,
  containsPointInRegion,
  EMPTY,
  nearTo,
  regionOfBox,
  ringsOf,
} from './region.ts';
import { boxOfPoints, eachSide, perimeter, reverseRing, signedArea } from './ring.ts';
import { intersectSegments } from './segment.ts';
import type { Box, Point, Polygon, Region, Ring } from './shape.ts';
import { FLATNESS, SAME_LENGTH } from './tolerance.ts';
import { trueAreaOf } from './trueArea.ts';

/**
 * The only door to the polygon library. It works on whole numbers, so points are put on a grid of
 * 1/10000 mm; corners that come back unchanged get their exact coordinates again.
 */
const GRID = 1e4;
/** A kilometer: far beyond any bed, and where products of grid numbers would lose more than the grid itself. */
const FARTHEST: Mm = 1e6;
/** Rounding to the grid leaves slivers about a grid step wide; what is thinner than this is no wood. */
const SLIVER: Mm = 2 / GRID;
const MITER_LIMIT = 5;

const JOINS = { round: JoinType.Round, miter: JoinType.Miter, square: JoinType.Square } as const;
const RULES = { nonzero: FillRule.NonZero, evenodd: FillRule.EvenOdd, positive: FillRule.Positive } as const;

/** Numbers every corner that goes in, so that the same corner can be given back untouched. */
class Grid {
  readonly #points: Point[] = [];

  path(ring: Ring): Path64 {
    return ring.map((point) => {
      const { x, y } = placeOf(point);
      // Written out, as the library writes its own points: those of another make slow it down threefold.
      return { x, y, z: this.#points.push(point) };
    });
  }

  paths(rings: readonly Ring[]): Paths64 {
    return rings.map((ring) => this.path(ring));
  }

  ring(path: Path64): Ring {
    return path.map(({ x, y, z }) => {
      const known = this.#points[(z ?? 0) - 1];
      // The library may hand a number on to a crossing nearby: only an equal place is the same corner.
      return known && onGrid(known.x) === x && onGrid(known.y) === y ? known : { x: x / GRID, y: y / GRID };
    });
  }
}

/** A measure in steps of the grid. `+ 0` turns -0 into 0: the two would print and compare differently. */
export const onGrid = (value: Mm): number => Math.round(value * GRID) + 0;

/** Where a point lies on the grid. */
function placeOf({ x, y }: Point): Point {
  if (!(Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST)) {
    throw new RangeError(`a point within ${FARTHEST} mm expected, found (${x}, ${y})`);
  }
  return { x: onGrid(x), y: onGrid(y) };
}

/** The nearest measure on the grid that polygons are worked on. Moved by such measures, what is on it stays itself. */
export const gridded = (value: Mm): Mm => onGrid(value) / GRID;

function combine(
  type: ClipType,
  subjects: readonly Ring[],
  clips: readonly Ring[],
  rule = FillRule.NonZero,
): Region {
  const grid = new Grid();
  const engine = new Clipper64();
  engine.preserveCollinear = false;
  if (subjects.length > 0) engine.addSubject(grid.paths(subjects));
  if (clips.length > 0) engine.addClip(grid.paths(clips));
  const tree = new PolyTree64();
  engine.execute(type, rule, tree);
  return regionOfTree(tree, (path) => grid.ring(path));
}

function regionOfTree(tree: PolyTree64, ringOf: (path: Path64) => Ring): Region {
  const polygons: Polygon[] = [];
  const visitOuter = (node: PolyPath64): void => {
    const outer = startLow(ringOf(node.poly ?? []));
    const holes: Ring[] = [];
    for (let i = 0; i < node.count; i++) {
      const child = node.child(i);
      const hole = startLow(ringOf(child.poly ?? []));
      if (signedArea(hole) < 0 && !isSliver(hole)) holes.push(hole);
      for (let j = 0; j < child.count; j++) visitOuter(child.child(j));
    }
    // Abutting turned grids can make the library emit a lone hole as an outer ring; it encloses nothing.
    if (signedArea(outer) > 0 && !isSliver(outer)) polygons.push({ outer, holes: holes.sort(byStart) });
  };
  for (let i = 0; i < tree.count; i++) visitOuter(tree.child(i));
  return polygons.sort((a, b) => byStart(a.outer, b.outer));
}

const isSliver = (ring: Ring): boolean => 2 * Math.abs(signedArea(ring)) < SLIVER * perimeter(ring);

/** Results do not depend on where the library began to walk: rings start at their lowest, then leftmost point. */
function startLow(ring: Ring): Ring {
  let best = 0;
  for (let i = 1; i < ring.length; i++) {
    if (below(pick(ring, i), pick(ring, best))) best = i;
  }
  return best === 0 ? ring : [...ring.slice(best), ...ring.slice(0, best)];
}

const below = (a: Point, b: Point): boolean => a.y < b.y || (a.y === b.y && a.x < b.x);

/** The order of rings: by the lowest, then leftmost place they begin at. */
export function byStart(a: Ring, b: Ring): number {
  const [p, q] = [a[0], b[0]];
  if (!p || !q) return a.length - b.length;
  return p.y - q.y || p.x - q.x || signedArea(a) - signedArea(b);
}

const meet = (a: Box | null, b: Box | null): boolean => a !== null && b !== null && boxesMeet(a, b);

/**
 * Whether a ring goes once around an area without holes, turning left at each corner, on the grid too: nothing of it
 * would be changed by a union.
 */
function isConvex(ring: Ring): boolean {
  if (ring.length < 3) return false;
  let a = placeOf(pick(ring, ring.length - 2));
  let b = placeOf(pick(ring, ring.length - 1));
  let lowest = 0;
  for (const point of ring) {
    const c = placeOf(point);
    if ((b.x - a.x) * (c.y - b.y) <= (b.y - a.y) * (c.x - b.x)) return false;
    if (b.y <= a.y && c.y > b.y) lowest++;
    a = b;
    b = c;
  }
  return lowest === 1;
}

/** Everything that any of the regions covers. */
export function union(regions: readonly Region[]): Region {
  const rings = regions.flatMap(ringsOf);
  return rings.length === 0 ? EMPTY : unionOf(rings, FillRule.NonZero);
}

function unionOf(rings: readonly Ring[], rule: FillRule): Region {
  const [only] = rings;
  return only && rings.length === 1 && isConvex(only) && !isSliver(only)
    ? [{ outer: startLow(only), holes: [] }]
    : combine(ClipType.Union, rings, [], rule);
}

/** What is seen of regions that are laid on each other in turn: of each what no later one covers. */
export function seenOfEach(laid: readonly Region[]): Region[] {
  let over: Region = EMPTY;
  return laid
    .toReversed()
    .map((region) => {
      const box = boxOf(region);
      const near = over.filter(({ outer }) => meet(boxOfPoints(outer), box));
      const apart = near.length === 0 ? over : over.filter((polygon) => !near.includes(polygon));
      over = [...apart, ...(near.length === 0 ? region : union([near, region]))];
      // What only touches it, as pieces of a frame do, covers nothing of it.
      const covers = ({ outer }: Polygon) => box && sharedArea(boxOfPoints(outer), box) >= SAME_LENGTH;
      return subtract(region, near.filter(covers));
    })
    .reverse();
}

/** Their union; a single one as it is, off the library's grid. */
export const asOne = (regions: readonly Region[]): Region =>
  regions.length === 1 ? pick(regions, 0) : union(regions);

/** What both cover. */
export function intersect(a: Region, b: Region): Region {
  return meet(boxOf(a), boxOf(b)) ? combine(ClipType.Intersection, ringsOf(a), ringsOf(b)) : EMPTY;
}

/** What of a region lies in a box: only what comes over its rim is cut. */
export function cropped(region: Region, box: Box): Region {
  const near = nearTo(region, [box]);
  const over = near.filter(({ outer }) => !surrounds(box, boxOfPoints(outer)));
  if (over.length === 0) return near;
  const cut = intersect(over, regionOfBox(box));
  return over.length === near.length
    ? cut
    : inOrder([...near.filter((polygon) => !over.includes(polygon)), ...cut]);
}

/** What `a` covers and `b` does not. For areas use `subtractedArea`, which is safe on turned grids too. */
export function subtract(a: Region, b: Region): Region {
  return meet(boxOf(a), boxOf(b)) ? combine(ClipType.Difference, ringsOf(a), ringsOf(b)) : a;
}

/**
 * As `subtract`. What lies inside of `a`, clear of its border and of the rest of `b`, is cut out by itself, and what
 * goes around all of `a` is left aside: far quicker where `b` is many small things on a large one.
 */
export function subtractApart(a: Region, b: Region): Region {
  const whole = boxOf(a);
  const rest: Polygon[] = [];
  const inner: Polygon[] = [];
  for (const polygon of b) {
    if (containsBox(a, boxOfPoints(polygon.outer))) inner.push(polygon);
    else if (whole && !isAround(polygon, whole)) rest.push(polygon);
  }
  const over = rest.map((polygon) => ({ polygon, own: boxOfPoints(polygon.outer) }));
  const cuts: Cutting[] = [];
  for (const group of clustersOf(inner, SLIVER)) {
    const box = boxOf(group);
    const clear = (one: Box) =>
      over.every(({ polygon, own }) => !boxesMeet(own, one) || isAround(polygon, one));
    if (box && clear(box)) cuts.push(cutting(group, box));
    else rest.push(...group);
  }
  const holes = cuts.flatMap(({ openings }) => openings);
  const around = subtract(a, rest).map((polygon) => ({
    outer: polygon.outer,
    holes: [
      ...polygon.holes,
      ...holes.filter((hole) => (a.length === 1 && rest.length === 0) || isIn(polygon, hole)),
    ].sort(byStart),
  }));
  return inOrder([...around, ...cuts.flatMap(({ left }) => left)]);
}

/** Whether the box lies in a hole of the polygon, clear of it. */
const isAround = ({ holes }: Polygon, box: Box): boolean =>
  holes.some((hole) => containsBox([{ outer: hole, holes: [] }], box));

/** What shapes inside of a larger one take out of it. */
interface Cutting {
  readonly openings: readonly Ring[];
  /** What of the larger one they enclose. */
  readonly left: Region;
}

function cutting(shapes: Region, box: Box): Cutting {
  const [only] = shapes;
  if (only && shapes.length === 1) {
    const turned = (ring: Ring) => startLow(reverseRing(ring));
    return {
      openings: [turned(only.outer)],
      left: only.holes.map((hole) => ({ outer: turned(hole), holes: [] })),
    };
  }
  const around = grownBox(box, 1);
  const parts = subtract(regionOfBox(around), shapes);
  const frame = parts.find(({ outer }) => outer.some(({ x, y }) => x < box.x && y < box.y));
  return { openings: frame?.holes ?? [], left: parts.filter((part) => part !== frame) };
}

/** Whether a ring that crosses no border of the polygon lies in it. */
const isIn = (polygon: Polygon, [place]: Ring): boolean =>
  place !== undefined && containsPointInRegion([polygon], place);

/**
 * Area of `a` outside `b` in square millimeters, as area(a or b) - area(b): the library's union stays right
 * on staggered, turned, abutting pieces where its difference may leave a stray ring.
 */
export function subtractedArea(a: Region, b: Region): number {
  if (!meet(boxOf(a), boxOf(b))) return trueAreaOf(a);
  return Math.max(0, trueAreaOf(union([a, b])) - trueAreaOf(union([b])));
}

/** The region grown by `delta` (shrunk when negative), its corners rounded, mitered or squared off. */
export function offset(region: Region, delta: Mm, join: keyof typeof JOINS): Region {
  if (region.length === 0) return EMPTY;
  if (delta === 0) return union([region]);
  if (region.every(({ outer }) => isThin(outer, -delta))) return EMPTY;
  const grid = new Grid();
  const engine = new ClipperOffset(MITER_LIMIT, FLATNESS * GRID);
  engine.addPaths(grid.paths(ringsOf(region)), JOINS[join], EndType.Polygon);
  const tree = new PolyTree64();
  engine.execute(delta * GRID, tree);
  return regionOfTree(tree, (path) => path.map(({ x, y }) => ({ x: x / GRID, y: y / GRID })));
}

/** Whether a ring is gone when it is drawn in: nothing of it lies farther than `by` from its border. */
function isThin(ring: Ring, by: Mm): boolean {
  const { w, h } = boxOfPoints(ring);
  return Math.min(w, h) <= 2 * by;
}

const CAPS = { butt: EndType.Butt, round: EndType.Round, square: EndType.Square } as const;

/** How a line of some width turns and ends. */
export interface Stroke {
  readonly width: Mm;
  readonly join: keyof typeof STROKE_JOINS;
  readonly cap: keyof typeof CAPS;
  /** Corners run out so many times half the width at most, and are cut off there. */
  readonly miterLimit: number;
}
const STROKE_JOINS = { round: JoinType.Round, miter: JoinType.Miter, bevel: JoinType.Bevel } as const;

/** What lines of some width cover. */
export function stroked(
  lines: readonly { readonly points: Ring; readonly closed: boolean }[],
  { width, join, cap, miterLimit }: Stroke,
): Region {
  const grid = new Grid();
  const parts = lines.map(({ points, closed }) => {
    const engine = new ClipperOffset(miterLimit, FLATNESS * GRID);
    engine.addPaths([grid.path(points)], STROKE_JOINS[join], closed ? EndType.Joined : CAPS[cap]);
    const tree = new PolyTree64();
    engine.execute((width / 2) * GRID, tree);
    return regionOfTree(tree, (path) => path.map(({ x, y }) => ({ x: x / GRID, y: y / GRID })));
  });
  return union(parts);
}

/** The area that rings enclose under a fill rule; the rings may cross themselves and each other. */
export function regionOfRings(rings: readonly Ring[], rule: keyof typeof RULES): Region {
  const closed = rings.filter((ring) => ring.length >= 3);
  return closed.length === 0 ? EMPTY : unionOf(closed, RULES[rule]);
}

/** The areas that hang together, each as a region; a touch in a single point does not hold. */
export const connectedParts = (region: Region): Region[] => union([region]).map((polygon) => [polygon]);

/**
 * The parts of an open line that lie in the region, its border included, in the direction of the line.
 * Exact: done on the sides themselves, not on the grid.
 */
export function clipPolyline(points: readonly Point[], region: Region): Point[][] {
  const parts: Point[][] = [];
  let open: Point[] | null = null;
  const close = () => {
    if (open && open.length > 1) parts.push(open);
    open = null;
  };
  const beside = sidesBeside(region, points);
  /** Whether the line runs inside; null where a side may have changed that. */
  let inside: boolean | null = null;
  for (let i = 0; i + 1 < points.length; i++) {
    const a = pick(points, i);
    const b = pick(points, i + 1);
    const { stops, met } = stopsAlong(a, b, beside);
    if (met) inside = null;
    for (let k = 0; k + 1 < stops.length; k++) {
      const p = lerp(a, b, at(stops, k));
      const q = lerp(a, b, at(stops, k + 1));
      const within: boolean = inside ?? containsPointInRegion(region, midpoint(p, q));
      // What met no side goes on as it came.
      if (!met) inside = within;
      if (!within) close();
      else if (open) extend(open, q);
      else open = [p, q];
    }
  }
  close();
  return parts;
}

type Side = readonly [Point, Point];

/** The box around a line: what lies beyond it neither crosses the line nor lies along it. */
const boxBeside = (line: readonly Point[]): Box => grownBox(boxOfPoints(line), BESIDE);

/** The sides of a region that can cross a line or lie along it. */
function sidesBeside(region: Region, line: readonly Point[]): Side[] {
  const box = boxBeside(line);
  const sides: Side[] = [];
  for (const ring of ringsOf(region)) {
    eachSide(ring, (p, q) => {
      if (!isBeyond(box, p, q)) sides.push([p, q]);
    });
  }
  return sides;
}

/** Adds a place to a line, which stays one segment while it goes straight on. */
function extend(line: Point[], to: Point): void {
  const from = line[line.length - 2];
  const last = line[line.length - 1];
  const straight =
    from &&
    last &&
    Math.abs(distance(from, last) + distance(last, to) - distance(from, to)) <= SAME_LENGTH ** 2;
  if (straight) line.pop();
  line.push(to);
}

/** Far more than segments may lie apart that still count as crossing. */
const BESIDE: Mm = 1e3 * SAME_LENGTH;

/**
 * Shares along `a`–`b`, from 0 to 1, between which inside and outside of what has these sides cannot change, and
 * whether a side meets it: only there it can.
 */
function stopsAlong(
  a: Point,
  b: Point,
  sides: readonly Side[],
): { readonly stops: readonly number[]; readonly met: boolean } {
  const size = distance(a, b);
  if (size === 0) return { stops: [], met: true };
  const stops = [0, 1];
  const stopAt = (p: Point) => {
    const share = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / (size * size);
    if (share > 0 && share < 1) stops.push(share);
  };
  const box = boxBeside([a, b]);
  let met = false;
  for (const [p, q] of sides) {
    if (isBeyond(box, p, q)) continue;
    const hit = intersectSegments(a, b, p, q);
    if (hit) {
      met = true;
      stopAt(hit);
    }
    // Sides along the line have no crossing; their ends are the stops then.
    stopAt(q);
  }
  stops.sort((s, t) => s - t);
  return {
    stops: stops.filter((stop, i) => i === 0 || (stop - at(stops, i - 1)) * size > SAME_LENGTH),
    met,
  };
}
