import { offset } from '../geometry/clip.ts';
import { boxOf } from '../geometry/region.ts';
import { boxOfPoints, perimeter, reverseRing, signedArea } from '../geometry/ring.ts';
import type { Point, Region, Ring } from '../geometry/shape.ts';
import { cyclic, lastOf, pick } from '../list/at.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import type { SetLine } from './setting.ts';
import { bendOf, LEAST_HALF, LEAST_STEP, placeOn, STEP, type Track } from './track.ts';

/** How lines run along the outline of a board. */
export interface Along {
  readonly side: 'inside' | 'outside';
  /** Between the outline and the letters next to it. */
  readonly margin: Mm;
  /** Along the outline, and away from it as the letters stand. */
  readonly shift: Point;
  /** Lines that run along the foot, where they read the other way around. */
  readonly atFoot: readonly boolean[];
}

const MOST_STEPS = 1000;

interface Placed {
  readonly line: SetLine;
  readonly foot: boolean;
  /** How far outside of the outline its baseline is. */
  readonly out: Mm;
}

/** How far outside of the outline each line stands: those of the head in one block, those of the foot in another. */
function placedLines(lines: readonly SetLine[], { side, margin, shift, atFoot }: Along): Placed[] {
  return lines.map((line, i) => {
    const foot = pick(atFoot, i);
    const block = lines.filter((_, k) => pick(atFoot, k) === foot);
    const [first, last] = [pick(block, 0), lastOf(block)];
    // What is next to the outline: the lowest letters where lines stand up from it, else the tops.
    const stands = foot === (side === 'inside');
    const up = stands
      ? margin - last.foot + line.baseline - last.baseline
      : -margin - first.top + line.baseline - first.baseline;
    return { line, foot, out: (foot ? -1 : 1) * (up + shift.y) };
  });
}

/**
 * Baselines along the outline of a region, in parallels to it: lines of the head read clockwise from the middle of the
 * top, lines of the foot the other way from the middle of the bottom. Letters stay rigid, each turned to the chord under
 * it. They keep their distances where they come closest: on the baseline where it turns away from them, at their tops
 * where these are nearer to each other.
 */
export function outlineTracks(lines: readonly SetLine[], board: Region, along: Along): Track[] {
  const middle = boxOf(board);
  return placedLines(lines, along).map(({ line, foot, out }) => {
    // Nearer to the middle of the outline: the baseline of the head, the tops of the foot.
    const ring = parallelTo(board, foot ? out - line.top : out);
    const over = foot ? -line.top : 0;
    const x = middle ? middle.x + middle.w / 2 : 0;
    const walk = walkOf(foot ? reverseRing(ring) : ring, x, foot, line.top);
    const at: Track['at'] = (place, half) => {
      const s = place + along.shift.x;
      const reach = Math.max(half, LEAST_HALF * line.capHeight);
      const [from, to] = [walk.at(s - reach), walk.at(s + reach)];
      const turn: Deg = degrees(Math.atan2(to.y - from.y, to.x - from.x));
      const p = walk.at(s);
      const up = { x: -Math.sin(radians(turn)), y: Math.cos(radians(turn)) };
      return { x: p.x + up.x * over, y: p.y + up.y * over, turn };
    };
    const bend: Track['bend'] = (place, half) => bendOf(walk.at, place + along.shift.x, half);
    return { at, bent: true, baseline: at(0, 0).y, length: walk.length, bend };
  });
}

/** The outer border of the largest of a region's parallels, clockwise; the region's own where there is none. */
function parallelTo(board: Region, out: Mm): Ring {
  const largest = (region: Region) =>
    region.toSorted((a, b) => Math.abs(signedArea(b.outer)) - Math.abs(signedArea(a.outer)))[0]?.outer;
  const ring = largest(offset(board, out, out > 0 ? 'round' : 'miter')) ?? largest(board) ?? [];
  return signedArea(ring) > 0 ? reverseRing(ring) : ring;
}

interface Walk {
  readonly length: Mm;
  /** The place that many millimeters on from the middle, as letters are kept apart. */
  readonly at: (along: Mm) => Point;
}

/**
 * A border in small steps from where it meets the upright through `x` at the top, or at the foot. Of each step counts
 * what letters `top` high keep of it where they come closest.
 */
function walkOf(ring: Ring, x: Mm, foot: boolean, top: Mm): Walk {
  const points = stepsOf(ring);
  const box = boxOfPoints(points);
  const crossings = points.flatMap((p, i) => {
    const q = cyclic(points, i + 1);
    return p.x <= x !== q.x <= x ? [{ i, y: p.y }] : [];
  });
  crossings.sort((a, b) => (foot ? a.y - b.y : b.y - a.y));
  const start = crossings[0]?.i ?? points.findIndex(({ y }) => y === (foot ? box.y : box.y + box.h));
  const walked = points.map((_, i) => cyclic(points, start + i));
  const counts: Mm[] = [0];
  walked.forEach((p, i) => {
    const [before, next] = [cyclic(walked, i - 1), cyclic(walked, i + 1)];
    const step = Math.hypot(next.x - p.x, next.y - p.y);
    const [dx, dy, ex, ey] = [p.x - before.x, p.y - before.y, next.x - p.x, next.y - p.y];
    const left = Math.atan2(dx * ey - dy * ex, dx * ex + dy * ey);
    // Toward the letters, whose other side then comes closer than this one.
    const lost = Math.max(0, (foot ? -left : left) * top);
    counts.push(lastOf(counts) + Math.max(step - lost, LEAST_STEP * step));
  });
  const length = lastOf(counts);
  const at = (along: Mm): Point => {
    const s = ((along % length) + length) % length;
    return placeOn(counts, s, (i) => cyclic(walked, i));
  };
  // From the upright itself, not from the corner before it.
  const [p, q] = [pick(walked, 0), cyclic(walked, 1)];
  const lead = q.x === p.x ? 0 : Math.min(1, Math.max(0, (x - p.x) / (q.x - p.x))) * pick(counts, 1);
  return { length, at: (along) => at(along + lead) };
}

/** The border in equal steps. */
function stepsOf(ring: Ring): Point[] {
  const all = perimeter(ring);
  const count = Math.max(8, Math.min(MOST_STEPS, Math.ceil(all / STEP)));
  const points: Point[] = [];
  let gone = 0;
  ring.forEach((a, i) => {
    const b = cyclic(ring, i + 1);
    const side = Math.hypot(b.x - a.x, b.y - a.y);
    while (points.length < count && (points.length * all) / count <= gone + side) {
      const t = side > 0 ? ((points.length * all) / count - gone) / side : 0;
      points.push({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
    }
    gone += side;
  });
  return points;
}
