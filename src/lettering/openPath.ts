import { cornersIn } from '../design/drawnCorners.ts';
import type { OutlineCorner } from '../design/schema.ts';
import { drawnLoop } from '../geometry/drawn.ts';
import { type Loop, lengthOfLoop, pointsOf } from '../geometry/loop.ts';
import { distance, lerp, subtract, turnBetween } from '../geometry/point.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { reversed } from '../geometry/stretch.ts';
import { lastOf, pick } from '../list/at.ts';
import { degrees, type Mm, radians } from '../measure/units.ts';
import type { SetLine } from './setting.ts';
import { bendOf, LEAST_HALF, LEAST_STEP, placeOn, STEP, type Track } from './track.ts';

/** Level across the middle of a board: the way where none is drawn. */
export const LEVEL: readonly OutlineCorner[] = [
  { u: 0, v: 0.5 },
  { u: 1, v: 0.5 },
];

/**
 * Baselines along an open path in a box: the last line stands on the path itself, those before it above, each in a parallel.
 * The way is read from its left end to its right one, whichever was drawn first. The middle of the text stands at its middle. Letters stay rigid, each turned to the chord under it, and keep
 * their distances where they come closest: at the baseline, or at their tops where those are nearer to each other.
 */
export function pathTracks(
  lines: readonly SetLine[],
  corners: readonly OutlineCorner[] | undefined,
  box: Box,
  shift: Point,
): Track[] {
  const loop = drawnLoop(cornersIn(corners ?? LEVEL, box), false);
  const back = lastOf(loop).to.x < pick(loop, 0).from.x;
  const points = stepsAlong(back ? loop.toReversed().map(reversed) : loop);
  const last = lastOf(lines).baseline;
  return lines.map((line) => {
    const out = line.baseline - last + shift.y;
    const counts = countsOf(points, out, line.top);
    // Steps are of one length, so that the middle one is in the middle of the way.
    const half = (points.length - 1) / 2;
    const middle = (pick(counts, Math.floor(half)) + pick(counts, Math.ceil(half))) / 2;
    const length = 2 * Math.min(middle, lastOf(counts) - middle);
    const onWay = (along: Mm): Point => placeOn(counts, middle + shift.x + along, (i) => pick(points, i));
    const at: Track['at'] = (along, half) => {
      const reach = Math.max(half, LEAST_HALF * line.capHeight);
      const [from, to, p] = [onWay(along - reach), onWay(along + reach), onWay(along)];
      const turn = degrees(Math.atan2(to.y - from.y, to.x - from.x));
      return {
        x: p.x - Math.sin(radians(turn)) * out,
        y: p.y + Math.cos(radians(turn)) * out,
        turn,
      };
    };
    const bend: Track['bend'] = (along, half) => bendOf(onWay, along, half);
    return { at, bent: true, baseline: at(0, 0).y, length, open: true, bend };
  });
}

/** Strays no farther from the way itself. */
const FLAT: Mm = 0.005;

/** A way in steps of one length, corners of it left out: a step goes around them. */
function stepsAlong(loop: Loop): Point[] {
  const drawn = loop.flatMap((stretch, i) => pointsOf(stretch, FLAT).slice(i === 0 ? 0 : 1));
  const count = Math.max(8, Math.ceil(lengthOfLoop(loop) / STEP));
  const sides = drawn.slice(1).map((p, i) => distance(pick(drawn, i), p));
  const all = sides.reduce((sum, side) => sum + side, 0);
  const points: Point[] = [pick(drawn, 0)];
  let gone = 0;
  sides.forEach((side, i) => {
    while (points.length < count && (points.length * all) / count <= gone + side) {
      const share = side > 0 ? ((points.length * all) / count - gone) / side : 0;
      points.push(lerp(pick(drawn, i), pick(drawn, i + 1), share));
    }
    gone += side;
  });
  return [...points, lastOf(drawn)];
}

/** How far along each point is, as letters count it that stand `out` of the way and are `top` high. */
function countsOf(points: readonly Point[], out: Mm, top: Mm): Mm[] {
  const counts: Mm[] = [0];
  points.slice(1).forEach((p, i) => {
    const from = pick(points, i);
    const step = distance(from, p);
    const next = points[i + 2];
    const before = points[i - 1];
    // Half of the turn at each end; more than 0 to the left, where the letters stand.
    const turned =
      ((before ? turnBetween(subtract(from, before), subtract(p, from)) : 0) +
        (next ? turnBetween(subtract(p, from), subtract(next, p)) : 0)) /
      2;
    const left = radians(turned);
    const kept = Math.min(step - left * out, step - left * (out + top));
    counts.push(lastOf(counts) + Math.max(kept, LEAST_STEP * step));
  });
  return counts;
}
