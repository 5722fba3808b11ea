import type { Drawing } from '../drawing/drawing.ts';
import { areaOfPath, outlinesOf, windowOf } from '../drawing/outline.ts';
import { INK as COLORS } from '../drawing/style.ts';
import { type Flat, flatten, textCorners } from '../drawing/walk.ts';
import { boxAround, holds, surrounds } from '../geometry/box.ts';
import { intersect, regionOfRings } from '../geometry/clip.ts';
import { ringsOfContours } from '../geometry/curve.ts';
import { cross, length, subtract } from '../geometry/point.ts';
import { boxOf, containsPointInRegion, regionOfBox } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { FLATNESS } from '../geometry/tolerance.ts';
import { cyclic, pick } from '../list/at.ts';
import { addTo, type Groups, groupOf } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';

export type Segment = readonly [Point, Point];

/** What a drawing leaves on paper: lines, and areas that are filled. */
export interface Ink {
  /** Lines that are followed with pencil or knife, and texts. */
  readonly segments: readonly Segment[];
  /** Lines for laying the pattern on the work: things may stand over them where nothing is free. */
  readonly light: readonly Segment[];
  /** Light lines that are worth no page of their own. */
  readonly besides: readonly Segment[];
  /** Corners of light lines. */
  readonly corners: readonly Point[];
  readonly areas: readonly { readonly region: Region; readonly box: Box }[];
  /** Extents of connected outlines and texts, one each: where a page border would cut something. */
  readonly extents: readonly Box[];
  /** Texts, which a trim line should not cut. */
  readonly texts: readonly Box[];
  /** Of it all; null for a drawing without ink. */
  readonly box: Box | null;
  /** Of what pages are made for; null where there is nothing but lines besides. */
  readonly main: Box | null;
}

/** The ink of a whole pattern, whose lines are found by where they are. */
export interface WholeInk extends Ink {
  readonly lines: Readonly<Record<Line, Lines>>;
}

type Line = 'segments' | 'light' | 'besides';

/** Lines are sorted into squares of this size: a few to a page, so that neither squares nor lines are many. */
const SQUARE: Mm = 40;

/** Lines sorted by the squares that their boxes meet. */
class Lines {
  private readonly squares: Groups<number, number> = new Map();

  constructor(private readonly all: readonly Segment[]) {
    all.forEach((line, i) => {
      for (const key of squaresOf(boxOfPoints(line))) addTo(this.squares, key, i);
    });
  }

  /** Whether a line that is near the box is as asked. */
  some(box: Box, is: (line: Segment) => boolean): boolean {
    const asked = (i: number) => is(pick(this.all, i));
    return squaresOf(box).some((key) => groupOf(this.squares, key).some(asked));
  }

  /** All that may meet the box, in the order in which they were given. */
  near(box: Box): Segment[] {
    const found: number[] = [];
    for (const key of squaresOf(box)) found.push(...groupOf(this.squares, key));
    found.sort((a, b) => a - b);
    return found.filter((one, i) => one !== found[i - 1]).map((i) => pick(this.all, i));
  }
}

/** Squares are numbered by rows, in more columns than any face has. */
const COLUMNS = 1e6;

function squaresOf({ x, y, w, h }: Box): number[] {
  const keys: number[] = [];
  for (let row = Math.floor(y / SQUARE); row <= Math.floor((y + h) / SQUARE); row += 1) {
    for (let column = Math.floor(x / SQUARE); column <= Math.floor((x + w) / SQUARE); column += 1) {
      keys.push(row * COLUMNS + column);
    }
  }
  return keys;
}

/** Lines that turn by less go on, as the stretches of a curve do; sine of 20 degrees. */
const TURNS = 0.34;

function cornersOf(points: readonly Point[]): Point[] {
  return points.filter((p, i) => {
    const before = subtract(p, cyclic(points, i - 1));
    const after = subtract(cyclic(points, i + 1), p);
    return Math.abs(cross(before, after)) > TURNS * length(before) * length(after);
  });
}

/** Layers of light lines. */
const LIGHT = ['guides', 'sheet'];

function sidesOf(points: readonly Point[], closed: boolean): Segment[] {
  const sides: Segment[] = [];
  for (let i = 0; i + 1 < points.length; i++) sides.push([pick(points, i), pick(points, i + 1)]);
  const [first, last] = [points[0], points[points.length - 1]];
  if (closed && first && last && points.length > 2) sides.push([last, first]);
  return sides;
}

/**
 * Ink of a drawing. White fills leave none; texts count as their boxes.
 *
 * @param besides layers whose lines and texts are worth no page of their own
 * @param flat the drawing's items, where the caller has them already
 */
export function inkOf(
  drawing: Drawing,
  besides: readonly string[] = [],
  { paths, texts: words }: Flat = flatten(drawing.items),
): WholeInk {
  const segments: Segment[] = [];
  const light: Segment[] = [];
  const beside: Segment[] = [];
  const mains: Box[] = [];
  const corners: Point[] = [];
  const areas: { region: Region; box: Box }[] = [];
  const extents: Box[] = [];
  const texts: Box[] = [];
  for (const flat of paths) {
    const filled = flat.item.fill !== undefined && flat.item.fill.toLowerCase() !== COLORS.paper;
    if (!filled && flat.item.stroke === undefined) continue;
    const own = flat.layer ?? '';
    const worthPage = !besides.includes(own);
    const lines = !worthPage ? beside : LIGHT.includes(own) ? light : segments;
    const outlines = outlinesOf(flat, FLATNESS);
    for (const { points, closed } of outlines) {
      const around = boxOfPoints(points);
      for (const side of sidesOf(points, closed)) lines.push(side);
      extents.push(around);
      if (lines !== segments && closed) corners.push(...cornersOf(points));
      if (worthPage) mains.push(around);
    }
    if (!filled) continue;
    // Nothing cut off: what was filled is what lies between its outlines.
    const rule = flat.item.fillRule ?? 'nonzero';
    const window = windowOf(flat.clips, FLATNESS);
    const region = window
      ? intersect(areaOfPath(flat.path, rule, FLATNESS), window)
      : regionOfRings(ringsOfContours(outlines), rule);
    const box = boxOf(region);
    if (box) areas.push({ region, box });
  }
  for (const flat of words) {
    if (flat.item.text.trim() === '') continue;
    const corners = textCorners(flat);
    const worthPage = !besides.includes(flat.layer ?? '');
    (worthPage ? segments : beside).push(...sidesOf(corners, true));
    const around = boxOfPoints(corners);
    extents.push(around);
    texts.push(around);
    if (worthPage) mains.push(around);
  }
  return {
    segments,
    light,
    besides: beside,
    corners,
    areas,
    extents,
    texts,
    box: boxAround(extents),
    main: boxAround(mains),
    lines: { segments: new Lines(segments), light: new Lines(light), besides: new Lines(beside) },
  };
}

/** The part of the segment inside the box, its border included; null when there is none (Liang and Barsky 1984). */
function clippedSegment(line: Segment, box: Box): Segment | null {
  const [a, b] = line;
  // Most segments lie wholly to one side.
  const [right, top] = [box.x + box.w, box.y + box.h];
  if ((a.x < box.x && b.x < box.x) || (a.x > right && b.x > right)) return null;
  if ((a.y < box.y && b.y < box.y) || (a.y > top && b.y > top)) return null;
  if (holds(box, a) && holds(box, b)) return line;
  const d = { x: b.x - a.x, y: b.y - a.y };
  let from = 0;
  let to = 1;
  const sides: readonly (readonly [number, number])[] = [
    [-d.x, a.x - box.x],
    [d.x, right - a.x],
    [-d.y, a.y - box.y],
    [d.y, top - a.y],
  ];
  for (const [p, q] of sides) {
    if (p === 0) {
      if (q < 0) return null;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  if (from > to) return null;
  return [
    { x: a.x + from * d.x, y: a.y + from * d.y },
    { x: a.x + to * d.x, y: a.y + to * d.y },
  ];
}

const meets = (a: Box, b: Box) =>
  a.x <= b.x + b.w && b.x <= a.x + a.w && a.y <= b.y + b.h && b.y <= a.y + a.h;

/** Is there ink in the box that is worth a page? Exact on the geometry: a page inside a big letter's bare counter is blank. */
export function hasInk(ink: WholeInk, box: Box): boolean {
  const inside = (segment: Segment) => clippedSegment(segment, box) !== null;
  if (ink.lines.segments.some(box, inside) || ink.lines.light.some(box, inside)) return true;
  const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  return ink.areas.some((area) => meets(area.box, box) && containsPointInRegion(area.region, middle));
}

/** The ink that shows through a window. */
export function inkInside({ lines, ...ink }: WholeInk, window: Box): Ink {
  const area = regionOfBox(window);
  const areas = ink.areas
    .filter((a) => meets(a.box, window))
    .map((a) => (surrounds(window, a.box) ? a : { region: intersect(a.region, area), box: a.box }));
  const clipped = (kind: Line) => {
    const inside: Segment[] = [];
    for (const line of lines[kind].near(window)) {
      const part = clippedSegment(line, window);
      if (part) inside.push(part);
    }
    return inside;
  };
  return {
    ...ink,
    areas,
    segments: clipped('segments'),
    light: clipped('light'),
    besides: clipped('besides'),
  };
}
