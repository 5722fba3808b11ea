import { pick } from '../list/at.ts';
import { type Deg, type Mm, radians } from '../measure/units.ts';
import { segmentRadius } from './curve.ts';
import { archedLoop, ellipseLoop } from './figures.ts';
import { type Loop, stretched } from './loop.ts';
import type { Box, Point } from './shape.ts';
import { arcAbout, lineTo, type Stretch } from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/**
 * Heads of arches by their building names. Each is half a head in its own place, from the right springing at
 * `(h, 0)` up to the crown at `(0, rise)`, `h` being half the span; the other half is its mirror image.
 */
type Half = readonly Stretch[];

/** Radius of a head struck from two centers on the springing line: (h2 + rise2) / 2h; the span itself where equilateral. */
export const pointedRadius = (h: Mm, rise: Mm): Mm => segmentRadius(2 * rise, h);

/** Two arcs from centers on the springing line. A rise of half the span is a half circle; less is no pointed head. */
function pointedHalf(h: Mm, rise: Mm): Half {
  return [arcAbout({ x: h - pointedRadius(h, rise), y: 0 }, { x: h, y: 0 }, { x: 0, y: rise }, 'left')];
}

/** Radii of a head of three centers, from French's construction (Engineering Drawing, 1911): on the line from springing to crown, half of what is left of it when the difference of half span and rise is taken off. */
export function basketRadii(h: Mm, rise: Mm): { readonly side: Mm; readonly crown: Mm } {
  const slope = Math.hypot(h, rise);
  const half = (slope - (h - rise)) / 2;
  return { side: (half * slope) / h, crown: ((slope - half) * slope) / rise };
}

/** An arc about `low` and one about `high` that runs on from it; the place where they meet lies on the line through both. */
function twoArcs(
  h: Mm,
  rise: Mm,
  low: Point,
  high: Point,
  lowRadius: Mm,
  /** Which way the meeting lies from the lower center: away from the upper one, or toward it. */
  side: 'away' | 'toward',
): Half {
  const apart = Math.hypot(low.x - high.x, low.y - high.y);
  const share = ((side === 'away' ? 1 : -1) * lowRadius) / apart;
  const meet = { x: low.x + (low.x - high.x) * share, y: low.y + (low.y - high.y) * share };
  return [
    arcAbout(low, { x: h, y: 0 }, meet, 'left'),
    arcAbout(high, meet, { x: 0, y: rise }, side === 'away' ? 'left' : 'right'),
  ];
}

function basketHalf(h: Mm, rise: Mm): Half {
  const { side, crown } = basketRadii(h, rise);
  return twoArcs(h, rise, { x: h - side, y: 0 }, { x: 0, y: rise - crown }, side, 'away');
}

/** Where the lower arc of a four-centered head ends, seen from its center. A usual choice, no source. */
const TUDOR_JOIN: Deg = 60;

/**
 * Radius of the upper arcs of a head of four centers, whose lower arcs of radius `r` end at `join` degrees over
 * the springing line; null where no such arc reaches the crown. The upper center lies on the line through the
 * lower one, so that the arcs run into each other: with D = R - r,
 * D = ((h - r)2 + rise2 - r2) / 2(r + (h - r) cos - rise sin).
 */
export function fourCenteredRadius(h: Mm, rise: Mm, r: Mm, join: Deg = TUDOR_JOIN): Mm | null {
  const [cos, sin] = [Math.cos(radians(join)), Math.sin(radians(join))];
  const over = (h - r) ** 2 + rise ** 2 - r ** 2;
  const under = 2 * (r + (h - r) * cos - rise * sin);
  return over > 0 && under > SAME_LENGTH ? r + over / under : null;
}

function fourCenteredHalf(h: Mm, rise: Mm, r: Mm): Half | null {
  const upper = fourCenteredRadius(h, rise, r);
  if (upper === null) return null;
  const back = upper - r;
  const low = { x: h - r, y: 0 };
  const high = {
    x: low.x - back * Math.cos(radians(TUDOR_JOIN)),
    y: -back * Math.sin(radians(TUDOR_JOIN)),
  };
  // Struck from beyond the middle, the two halves would meet in a dip.
  return high.x > 0 ? null : twoArcs(h, rise, low, high, r, 'away');
}

/** Radius of the upper, hollow arcs of an ogee over lower ones of radius `r`: ((h - r)2 + rise2 - r2) / 2h; null where there is none. */
export function ogeeRadius(h: Mm, rise: Mm, r: Mm): Mm | null {
  const radius = ((h - r) ** 2 + rise ** 2 - r ** 2) / (2 * h);
  return radius > SAME_LENGTH ? radius : null;
}

/** Two centers on the springing line, two level with the crown outside (Bloxam, Gothic Architecture). */
function ogeeHalf(h: Mm, rise: Mm, r: Mm): Half | null {
  const upper = ogeeRadius(h, rise, r);
  // Its center stands further out than the lower one, or the curve would turn back under itself.
  if (upper === null || upper <= h - r) return null;
  return twoArcs(h, rise, { x: h - r, y: 0 }, { x: upper, y: rise }, r, 'toward');
}

function ellipticHalf(h: Mm, rise: Mm): Half {
  return ellipseLoop({ x: -h, y: -rise, w: 2 * h, h: 2 * rise }).slice(0, 1);
}

export type Head = 'pointed' | 'four-centered' | 'ogee' | 'basket' | 'elliptical';

/**
 * Straight sides and a head that rises by `rise` to the top of the box, counterclockwise from the lower left;
 * `radius` is that of the lower arcs, where the head has such. Where the box has no room for the head that is
 * asked for, or no such arcs meet, it is the circular head of the same rise.
 */
export function headedLoop(head: Head, box: Box, rise: Mm, radius: Mm = 0): Loop {
  const half = halfOf(head, box.w / 2, Math.min(rise, box.h), Math.min(radius, box.w / 2));
  if (!half) return archedLoop(box, rise);
  const middle = box.x + box.w / 2;
  const springing = box.y + box.h - pick(half, half.length - 1).to.y;
  const placed = (times: 1 | -1) =>
    stretched(half, { x: { times, plus: middle }, y: { times: 1, plus: springing } });
  const right = placed(1);
  // Turned over, a loop begins with the stretch before its last one; a half begins at its crown.
  const mirrored = placed(-1);
  const left = [...mirrored.slice(-1), ...mirrored.slice(0, -1)];
  const [from, to] = [pick(right, 0).from, pick(left, left.length - 1).to];
  if (springing - box.y <= SAME_LENGTH) return [...right, ...left, lineTo(to, from)];
  const [foot, corner] = [
    { x: box.x, y: box.y },
    { x: box.x + box.w, y: box.y },
  ];
  return [lineTo(foot, corner), lineTo(corner, from), ...right, ...left, lineTo(to, foot)];
}

/** Whether a box has room for a head as it is asked for; else it is drawn lower, or as the circular one. */
export const hasHead = (head: Head, { w, h }: Pick<Box, 'w' | 'h'>, rise: Mm, radius: Mm = 0): boolean =>
  rise <= h + SAME_LENGTH && radius <= w / 2 + SAME_LENGTH && halfOf(head, w / 2, rise, radius) !== null;

function halfOf(head: Head, h: Mm, rise: Mm, radius: Mm): Half | null {
  if (h <= SAME_LENGTH || rise <= SAME_LENGTH) return null;
  switch (head) {
    case 'pointed':
      return rise > h ? pointedHalf(h, rise) : null;
    case 'elliptical':
      return ellipticHalf(h, rise);
    case 'basket':
      return rise < h - SAME_LENGTH ? basketHalf(h, rise) : null;
    case 'four-centered':
      return radius > SAME_LENGTH ? fourCenteredHalf(h, rise, radius) : null;
    case 'ogee':
      return radius > SAME_LENGTH ? ogeeHalf(h, rise, radius) : null;
  }
}
