import { type Mm, radians } from '../measure/units.ts';
import { archedRing, arcPoints, arcTo, segmentRadius } from './curve.ts';
import { add, distance, leftNormal, midpoint, scale, subtract } from './point.ts';
import { boxOfPoints } from './ring.ts';
import type { Box, Point, Ring } from './shape.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** A figure drawn anyhow, stretched to fill the box. */
function filling(figure: Ring, box: Box): Ring {
  const own = boxOfPoints(figure);
  return figure.map(({ x, y }) => ({
    x: box.x + ((x - own.x) / own.w) * box.w,
    y: box.y + ((y - own.y) / own.h) * box.h,
  }));
}

const around = (radius: number, deg: number): Point => ({
  x: radius * Math.cos(radians(deg)),
  y: radius * Math.sin(radians(deg)),
});

/** Equal sides, one of them level at the foot; regular where the box has the figure's own proportions. */
export function regularRing(box: Box, sides: number): Ring {
  const step = 360 / sides;
  return filling(
    Array.from({ length: sides }, (_, i) => around(1, -90 + step / 2 + i * step)),
    box,
  );
}

/** A star with a point up; the hollows lie at `waist` (0 to 1) of the points' distance from its middle. */
export function starRing(box: Box, points: number, waist: number): Ring {
  const step = 180 / points;
  return filling(
    Array.from({ length: 2 * points }, (_, i) => around(i % 2 === 0 ? 1 : waist, 90 + i * step)),
    box,
  );
}

/** Four half circles about a square. */
export function quatrefoilRing(box: Box): Ring {
  const size = Math.max(box.w, box.h);
  const lobes = [0, 90, 180, 270].flatMap((deg) => {
    const center = around(size / 4, deg);
    return arcPoints(center, size / 4, deg - 90, deg + 90).slice(0, -1);
  });
  return filling(lobes, box);
}

/** A board with a V cut into each end. */
export function ribbonRing({ x, y, w, h }: Box, notch: Mm): Ring {
  const deep = Math.min(notch, w / 2 - SAME_LENGTH);
  return [
    { x, y },
    { x: x + w, y },
    { x: x + w - deep, y: y + h / 2 },
    { x: x + w, y: y + h },
    { x, y: y + h },
    { x: x + deep, y: y + h / 2 },
  ];
}

/** An arc over the chord from `a` to `b`, bowed to the right of the way by `rise`, to its left where that is negative. */
function bow(a: Point, b: Point, rise: Mm): Point[] {
  const right = scale(leftNormal(subtract(b, a)), -1);
  const middle = midpoint(a, b);
  const crown = add(middle, scale(right, rise));
  const radius = segmentRadius(distance(a, b), rise);
  const center = add(crown, scale(right, -radius));
  const turn = rise > 0 ? 'left' : 'right';
  // By halves, so that the crown itself is one of the points.
  return [...arcTo(center, a, crown, turn), ...arcTo(center, crown, b, turn).slice(1)];
}

/** The lower edge in `count` equal arcs that hang down by `depth`, half circles at most. */
export function scallopedRing({ x, y, w, h }: Box, count: number, depth: Mm): Ring {
  const step = w / count;
  const deep = Math.min(depth, step / 2, h);
  const at = (i: number): Point => ({ x: i === count ? x + w : x + i * step, y: y + deep });
  const edge = Array.from({ length: count }, (_, i) => bow(at(i), at(i + 1), deep).slice(i === 0 ? 0 : 1));
  return closedAbove(edge.flat(), { x, y, w, h }, deep);
}

/** The lower edge in `count` waves, each an arc down and an arc up that run into each other, `depth` from trough to crest. */
export function wavedRing({ x, y, w, h }: Box, count: number, depth: Mm): Ring {
  const step = w / (2 * count);
  const rise = Math.min(depth / 2, step / 2, h / 2);
  const at = (i: number): Point => ({ x: i === 2 * count ? x + w : x + i * step, y: y + rise });
  const edge = Array.from({ length: 2 * count }, (_, i) =>
    bow(at(i), at(i + 1), i % 2 === 0 ? rise : -rise).slice(i === 0 ? 0 : 1),
  );
  return closedAbove(edge.flat(), { x, y, w, h }, rise);
}

/** From the end of a lower edge around by the top; without corners of no height. */
function closedAbove(edge: readonly Point[], { x, y, w, h }: Box, from: Mm): Ring {
  if (h - from <= SAME_LENGTH) return edge;
  return [...edge, { x: x + w, y: y + h }, { x, y: y + h }];
}

export type CornerCut = 'rounded' | 'coved' | 'clipped' | 'stepped';

/** A rectangle whose corners are taken off by `size` along both sides. */
export function corneredRing({ x, y, w, h }: Box, cut: CornerCut, size: Mm): Ring {
  const s = Math.min(size, w / 2, h / 2);
  const corners = [
    { at: { x: x + w, y }, sx: -1, sy: 1 },
    { at: { x: x + w, y: y + h }, sx: -1, sy: -1 },
    { at: { x, y: y + h }, sx: 1, sy: -1 },
    { at: { x, y }, sx: 1, sy: 1 },
  ];
  return corners.flatMap(({ at, sx, sy }, i) => {
    const inner = { x: at.x + sx * s, y: at.y + sy * s };
    // Walked to the left: a corner at the right of the foot is come to along the foot.
    const [level, upright] = [
      { x: inner.x, y: at.y },
      { x: at.x, y: inner.y },
    ];
    const [first, last] = i % 2 === 0 ? [level, upright] : [upright, level];
    if (cut === 'rounded') return arcTo(inner, first, last, 'left');
    if (cut === 'coved') return arcTo(at, first, last, 'right');
    return cut === 'stepped' ? [first, inner, last] : [first, last];
  });
}

/** What an arched opening of this size leaves clear of a surround that is `width` wide; null where nothing is left. */
export function withinArch(box: Box, rise: Mm, width: Mm): Ring | null {
  const inner = { x: box.x + width, y: box.y, w: box.w - 2 * width, h: box.h - width };
  if (inner.w <= SAME_LENGTH || inner.h <= SAME_LENGTH) return null;
  const s = Math.min(rise, box.w / 2, box.h);
  if (s <= SAME_LENGTH) return archedRing(inner, 0);
  // About the same center, so that the band is as wide everywhere.
  const radius = segmentRadius(box.w, s) - width;
  return archedRing(inner, radius - Math.sqrt(Math.max(0, radius ** 2 - inner.w ** 2 / 4)));
}
