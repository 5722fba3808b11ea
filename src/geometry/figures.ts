import { cyclic, pick } from '../list/at.ts';
import { type Mm, radians } from '../measure/units.ts';
import { segmentRadius } from './curve.ts';
import { boxOfLoop, type Loop, ringOfLoop, type Stretching, stretched, tidied } from './loop.ts';
import type { Box, Point, Ring } from './shape.ts';
import { type Arc, arcAbout, arcOver, lineTo, partOf, type Stretch } from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** Straight lines from point to point and back to the first. */
export const straightLoop = (points: readonly Point[]): Loop =>
  points.map((p, i) => lineTo(p, cyclic(points, i + 1)));

/** A figure drawn anyhow, stretched to fill the box. */
function filling(figure: Loop, box: Box): Loop {
  const own = boxOfLoop(figure);
  const [x, y] = [box.w / own.w, box.h / own.h];
  return stretched(figure, {
    x: { times: x, plus: box.x - own.x * x },
    y: { times: y, plus: box.y - own.y * y },
  } satisfies Stretching);
}

const around = (radius: number, deg: number): Point => ({
  x: radius * Math.cos(radians(deg)),
  y: radius * Math.sin(radians(deg)),
});

/** The ellipse that fills a box, counterclockwise from its right, by quarters. */
export function ellipseLoop({ x, y, w, h }: Box): Loop {
  const [rx, ry] = [w / 2, h / 2];
  const center = { x: x + rx, y: y + ry };
  // The four outermost points exactly, so that the loop's box is the given box.
  const outermost = [
    { x: x + w, y: center.y },
    { x: center.x, y: y + h },
    { x, y: center.y },
    { x: center.x, y },
  ];
  return outermost.map((from, i) => {
    const to = cyclic(outermost, i + 1);
    return { kind: 'arc', from, to, center, rx, ry, start: 90 * i, sweep: 90 };
  });
}

/** The ellipse that fills a box as a polygon. */
export const ellipseRing = (box: Box, tolerance?: Mm): Ring => ringOfLoop(ellipseLoop(box), tolerance);

/**
 * Straight sides and a circular head that rises by `rise` to the top of the box, counterclockwise from the
 * lower left. A rise of more than half the width is a half circle's, and no rise is a rectangle.
 */
export function archedLoop({ x, y, w, h }: Box, rise: Mm): Loop {
  const s = Math.min(rise, w / 2, h);
  const feet = [
    { x, y },
    { x: x + w, y },
  ];
  if (s <= SAME_LENGTH) return straightLoop([...feet, { x: x + w, y: y + h }, { x, y: y + h }]);
  const [right, left] = [
    { x: x + w, y: y + h - s },
    { x, y: y + h - s },
  ];
  const center = { x: x + w / 2, y: y + h - segmentRadius(w, s) };
  const head = arcAbout(center, right, left, 'left');
  if (h - s <= SAME_LENGTH) return [lineTo(left, right), head];
  return [...openLine([...feet, right]), head, lineTo(left, { x, y })];
}

const openLine = (points: readonly Point[]): Stretch[] =>
  points.slice(1).map((to, i) => lineTo(pick(points, i), to));

/** Equal sides, one of them level at the foot; regular where the box has the figure's own proportions. */
export function regularLoop(box: Box, sides: number): Loop {
  const step = 360 / sides;
  const corners = Array.from({ length: sides }, (_, i) => around(1, -90 + step / 2 + i * step));
  return filling(straightLoop(corners), box);
}

/** A star with a point up; the hollows lie at `waist` (0 to 1) of the points' distance from its middle. */
export function starLoop(box: Box, points: number, waist: number): Loop {
  const step = 180 / points;
  const corners = Array.from({ length: 2 * points }, (_, i) =>
    around(i % 2 === 0 ? 1 : waist, 90 + i * step),
  );
  return filling(straightLoop(corners), box);
}

/** Four half circles about a square. */
export function quatrefoilLoop(box: Box): Loop {
  const size = Math.max(box.w, box.h);
  const lobes = [0, 90, 180, 270].map((deg): Arc => {
    const center = around(size / 4, deg);
    const at = (way: number): Point => {
      const { x, y } = around(size / 4, way);
      return { x: center.x + x, y: center.y + y };
    };
    const radius = size / 4;
    return {
      kind: 'arc',
      from: at(deg - 90),
      to: at(deg + 90),
      center,
      rx: radius,
      ry: radius,
      start: deg - 90,
      sweep: 180,
    };
  });
  return filling(lobes, box);
}

/** A board with a V cut into each end. */
export function ribbonLoop({ x, y, w, h }: Box, notch: Mm): Loop {
  const deep = Math.min(notch, w / 2 - SAME_LENGTH);
  return straightLoop([
    { x, y },
    { x: x + w, y },
    { x: x + w - deep, y: y + h / 2 },
    { x: x + w, y: y + h },
    { x, y: y + h },
    { x: x + deep, y: y + h / 2 },
  ]);
}

/**
 * A board whose ends run out by `point` in two arcs that leave the long edges smoothly and meet in a point, as the foot of
 * a shield does: radius (h2 + 4 point2) / 4h. No longer than half of the height they are single arcs, and round.
 */
export function shieldLoop({ x, y, w, h }: Box, point: Mm): Loop {
  const deep = Math.min(point, w / 2);
  const [left, right, middle] = [x + deep, x + w - deep, y + h / 2];
  const isRound = deep <= h / 2;
  const radius = isRound ? segmentRadius(h, deep) : segmentRadius(2 * deep, h / 2);
  const end = (from: Point, tip: Point, to: Point): Stretch[] => {
    const [out, up] = [Math.sign(tip.x - from.x), Math.sign(to.y - from.y)];
    const centers = [from, to].map((at, i) =>
      isRound ? { x: tip.x - out * radius, y: middle } : { x: at.x, y: at.y + (i === 0 ? up : -up) * radius },
    );
    return [arcAbout(pick(centers, 0), from, tip, 'left'), arcAbout(pick(centers, 1), tip, to, 'left')];
  };
  const [low, high] = [y, y + h];
  return tidied([
    lineTo({ x: left, y: low }, { x: right, y: low }),
    ...end({ x: right, y: low }, { x: x + w, y: middle }, { x: right, y: high }),
    lineTo({ x: right, y: high }, { x: left, y: high }),
    ...end({ x: left, y: high }, { x, y: middle }, { x: left, y: low }),
  ]);
}

/** An arc over a chord by halves, so that the crown itself is a corner of the polygon that stands for it. */
function bow(a: Point, b: Point, rise: Mm): Stretch[] {
  const arc = arcOver(a, b, rise);
  return arc.kind === 'line'
    ? [arc]
    : [partOf(arc, 0, 1 / 2), partOf(arc, 1 / 2, 1)].map(crowned(a, b, rise));
}

/** The crown of a level chord is level with it and half way along, to the last digit. */
const crowned = (a: Point, b: Point, rise: Mm) => {
  const crown = { x: (a.x + b.x) / 2, y: a.y - rise };
  return (half: Stretch, i: number): Stretch => (i === 0 ? { ...half, to: crown } : { ...half, from: crown });
};

/** The lower edge in `count` equal arcs that hang down by `depth`, half circles at most. */
export function scallopedLoop({ x, y, w, h }: Box, count: number, depth: Mm): Loop {
  const step = w / count;
  const deep = Math.min(depth, step / 2, h);
  const at = (i: number): Point => ({ x: i === count ? x + w : x + i * step, y: y + deep });
  const edge = Array.from({ length: count }, (_, i) => bow(at(i), at(i + 1), deep));
  return closedAbove(edge.flat(), { x, y, w, h }, deep);
}

/** The lower edge in `count` waves, each an arc down and an arc up that run into each other, `depth` from trough to crest. */
export function wavedLoop({ x, y, w, h }: Box, count: number, depth: Mm): Loop {
  const step = w / (2 * count);
  const rise = Math.min(depth / 2, step / 2, h / 2);
  const at = (i: number): Point => ({ x: i === 2 * count ? x + w : x + i * step, y: y + rise });
  const edge = Array.from({ length: 2 * count }, (_, i) => bow(at(i), at(i + 1), i % 2 === 0 ? rise : -rise));
  return closedAbove(edge.flat(), { x, y, w, h }, rise);
}

/** From the end of a lower edge around by the top; without corners of no height. */
function closedAbove(edge: Loop, { x, y, w, h }: Box, from: Mm): Loop {
  const [left, right] = [
    { x, y: y + from },
    { x: x + w, y: y + from },
  ];
  if (h - from <= SAME_LENGTH) return [...edge, lineTo(right, left)];
  return [...edge, ...openLine([right, { x: x + w, y: y + h }, { x, y: y + h }, left])];
}

export type CornerCut = 'rounded' | 'coved' | 'clipped' | 'stepped';

/** Of half a side at most: steps of the halves of a square would leave nothing of it. */
const STEPPED = 0.98;

/** A rectangle whose corners are taken off by `size` along both sides. */
export function corneredLoop({ x, y, w, h }: Box, cut: CornerCut, size: Mm): Loop {
  const s = Math.min(size, (Math.min(w, h) / 2) * (cut === 'stepped' ? STEPPED : 1));
  const corners = [
    { at: { x: x + w, y }, sx: -1, sy: 1 },
    { at: { x: x + w, y: y + h }, sx: -1, sy: -1 },
    { at: { x, y: y + h }, sx: 1, sy: -1 },
    { at: { x, y }, sx: 1, sy: 1 },
  ];
  const worked = corners.map(({ at, sx, sy }, i) => {
    const inner = { x: at.x + sx * s, y: at.y + sy * s };
    // Walked to the left: a corner at the right of the foot is come to along the foot.
    const [level, upright] = [
      { x: inner.x, y: at.y },
      { x: at.x, y: inner.y },
    ];
    const [first, last] = i % 2 === 0 ? [level, upright] : [upright, level];
    if (cut === 'rounded') return [arcAbout(inner, first, last, 'left')];
    if (cut === 'coved') return [arcAbout(at, first, last, 'right')];
    return openLine(cut === 'stepped' ? [first, inner, last] : [first, last]);
  });
  return tidied(
    worked.flatMap((corner, i) => {
      const [last, next] = [corner.at(-1)?.to, worked[(i + 1) % 4]?.[0]?.from];
      return last && next ? [...corner, lineTo(last, next)] : corner;
    }),
  );
}

/** What an arched opening of this size leaves clear of a surround that is `width` wide; null where nothing is left. */
export function withinArch(box: Box, rise: Mm, width: Mm): Loop | null {
  const inner = { x: box.x + width, y: box.y, w: box.w - 2 * width, h: box.h - width };
  if (inner.w <= SAME_LENGTH || inner.h <= SAME_LENGTH) return null;
  const s = Math.min(rise, box.w / 2, box.h);
  if (s <= SAME_LENGTH) return archedLoop(inner, 0);
  // About the same center, so that the band is as wide everywhere.
  const radius = segmentRadius(box.w, s) - width;
  return archedLoop(inner, radius - Math.sqrt(Math.max(0, radius ** 2 - inner.w ** 2 / 4)));
}
