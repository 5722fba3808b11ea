import type { Bed } from '../bed/bed.ts';
import { type Arm, LOWERED, swing } from '../bed/swing.ts';
import { distanceToSegment } from '../geometry/segment.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { type Body, cornersOf } from './body.ts';
import { planeClear } from './plane.ts';
import { type Wave, zeros } from './wave.ts';

/**
 * The wall board is a step in the wall: all that lies behind its front and below its top edge.
 *
 *        │ wall
 *        ├──┐ corner (thickness, height)
 *        │▒▒│
 *     ───┴──┴── floor
 *
 * A convex body and the step first touch with a corner of the one on a border of the other. So between the
 * angles at which a corner of the body passes the front or the top line, or the step's corner passes one
 * of the body's sides, nothing changes; and the distance is least at one of these angles or where one of
 * its pieces has a level tangent. All of them are zeros of waves: closed forms, no sampling.
 */
export interface WallBoardClear {
  readonly clear: Mm;
  readonly angle: Deg;
  /** First angle after which body and board overlap, and the place; null when they never do. */
  readonly contact: { readonly angle: Deg; readonly place: Point } | null;
}

/** Dot product of a turning arm and a fixed direction of the room, less `minus`. */
const along = (arm: Arm, x: number, y: number, minus: number): Wave => ({
  base: -minus,
  c: arm.out * x + arm.up * y,
  s: arm.up * x - arm.out * y,
});

/** A quarter turn of an arm within the bed's side view. */
const quarter = ({ up, out }: Arm): Arm => ({ up: -out, out: up });

function criticalAngles(bed: Bed, corners: readonly Arm[], step: Point): Deg[] {
  const dx = step.x - bed.pivot.fromWall;
  const dy = step.y - bed.pivot.height;
  const found: Deg[] = [0, LOWERED];
  const add = (wave: Wave) => {
    for (const angle of zeros(wave)) if (angle < LOWERED) found.push(angle);
  };
  corners.forEach((arm, i) => {
    const next = cyclic(corners, i + 1);
    const side: Arm = { up: next.up - arm.up, out: next.out - arm.out };
    const normal = quarter(side);
    // The corner passes the front or the top; its distance from them has a level tangent.
    add(along(arm, 1, 0, dx));
    add(along(arm, 0, 1, dy));
    add(along(quarter(arm), 1, 0, 0));
    add(along(quarter(arm), 0, 1, 0));
    // Corner to corner: level where both lie on one line through the pivot.
    add(along(quarter(arm), dx, dy, 0));
    // The step's corner passes the side's line, its distance from that line is level, or it passes an end.
    add(along(normal, dx, dy, normal.up * arm.up + normal.out * arm.out));
    add(along(side, dx, dy, 0));
    add(along(side, dx, dy, side.up * arm.up + side.out * arm.out));
    add(along(side, dx, dy, side.up * next.up + side.out * next.out));
  });
  return found.sort((a, b) => a - b);
}

/** The part of a convex ring where `value` is not positive. */
function clip(ring: readonly Point[], value: (p: Point) => number): Point[] {
  const kept: Point[] = [];
  ring.forEach((p, i) => {
    const q = cyclic(ring, i + 1);
    const vp = value(p);
    const vq = value(q);
    if (vp <= 0) kept.push(p);
    if (vp < 0 !== vq < 0 && vp !== 0 && vq !== 0) {
      const t = vp / (vp - vq);
      kept.push({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
    }
  });
  return kept;
}

/** Whether the body reaches into the step by more than a touch. */
function overlaps(ring: readonly Point[], step: Point): boolean {
  const inside = clip(
    clip(ring, (p) => p.x - step.x),
    (p) => p.y - step.y,
  );
  if (inside.length < 3) return false;
  const deepX = step.x - Math.min(...inside.map((p) => p.x));
  const deepY = step.y - Math.min(...inside.map((p) => p.y));
  return deepX > SAME_LENGTH && deepY > SAME_LENGTH;
}

const fromStep = (p: Point, step: Point): Mm =>
  Math.hypot(Math.max(0, p.x - step.x), Math.max(0, p.y - step.y));

/** Distance between the body and the step; 0 when they overlap. */
function distanceFromStep(ring: readonly Point[], step: Point): Mm {
  if (overlaps(ring, step)) return 0;
  let nearest = Infinity;
  ring.forEach((p, i) => {
    const q = cyclic(ring, i + 1);
    nearest = Math.min(nearest, fromStep(p, step), distanceToSegment(step, p, q));
  });
  return nearest;
}

/**
 * A distance that the body never comes under, found from two planes alone: what stays in front of the
 * board, or above it, by so much is at least that far from it.
 */
export function wallBoardBound(bed: Bed, body: Body): Mm {
  return Math.max(
    planeClear(bed, body, 'wall').value - bed.wallBoard.thickness,
    planeClear(bed, body, 'floor').value - bed.wallBoard.height,
  );
}

/** Least distance of a body from the wall board through the swing, and its first contact. */
export function wallBoardClear(bed: Bed, body: Body): WallBoardClear {
  const step: Point = { x: bed.wallBoard.thickness, y: bed.wallBoard.height };
  const corners = cornersOf(bed, body);
  const ringAt = (angle: Deg) => corners.map((arm) => swing(bed, arm, angle));
  const angles = criticalAngles(bed, corners, step);
  let clear: Mm = Infinity;
  let angle: Deg = 0;
  for (const a of angles) {
    const d = distanceFromStep(ringAt(a), step);
    if (d < clear) {
      clear = d;
      angle = a;
    }
  }
  const entry = angles.find((a, i) => {
    const next = angles[i + 1];
    return next !== undefined && next > a && overlaps(ringAt((a + next) / 2), step);
  });
  if (entry === undefined) return { clear, angle, contact: null };
  const touching = ringAt(entry).find((p) => fromStep(p, step) <= SAME_LENGTH);
  return { clear: 0, angle: entry, contact: { angle: entry, place: touching ?? step } };
}
