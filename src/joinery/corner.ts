import { add, angleOf, cross, dot, leftNormal, scale } from '../geometry/point.ts';
import { intersectLines } from '../geometry/segment.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Deg } from '../measure/units.ts';
import { type Bar, type End, edgeLine, type Line, otherSide, type Side } from './bar.ts';

/** One bar's end that takes part in a corner. */
export interface BarEnd {
  readonly bar: Bar;
  readonly end: End;
}

/** The lines of a corner that travels along `a` into it and along `b` out of it. */
export interface CornerLines {
  /** Turn of the way, positive to the left. */
  readonly turn: Deg;
  /** From the inner corner to the outer corner; square across where the way goes straight on. */
  readonly miter: Line;
  /** Edges on the inside and on the outside of the turn; null on a way that goes straight on. */
  readonly inner: { readonly a: Line; readonly b: Line } | null;
  readonly outer: { readonly a: Line; readonly b: Line } | null;
}

/** Sine of the turn below which a way goes straight on. */
const STRAIGHT = 1e-9;

export function cornerLines(a: BarEnd, b: BarEnd): CornerLines {
  const into = a.end === 'end' ? a.bar.along : scale(a.bar.along, -1);
  const out = b.end === 'start' ? b.bar.along : scale(b.bar.along, -1);
  const sine = cross(into, out);
  const turn = angleOf({ x: dot(into, out), y: sine });
  if (Math.abs(sine) < STRAIGHT) {
    return { turn, miter: { at: endPoint(a), along: leftNormal(into) }, inner: null, outer: null };
  }
  const insideOn: Side = sine > 0 ? 'left' : 'right';
  const outsideOn: Side = sine > 0 ? 'right' : 'left';
  const edges = (side: Side) => ({
    a: edgeLine(a.bar, a.end === 'end' ? side : otherSide(side)),
    b: edgeLine(b.bar, b.end === 'start' ? side : otherSide(side)),
  });
  const inner = edges(insideOn);
  const outer = edges(outsideOn);
  return { turn, miter: throughCorners(inner, outer, into, out), inner, outer };
}

const endPoint = ({ bar, end }: BarEnd): Point =>
  end === 'start' ? bar.start : add(bar.start, scale(bar.along, bar.length));

function throughCorners(
  inner: { readonly a: Line; readonly b: Line },
  outer: { readonly a: Line; readonly b: Line },
  into: Point,
  out: Point,
): Line {
  const p = meetOf(inner.a, inner.b);
  const q = meetOf(outer.a, outer.b);
  if (p && q && Math.hypot(q.x - p.x, q.y - p.y) > SAME_LENGTH) {
    return { at: p, along: { x: q.x - p.x, y: q.y - p.y } };
  }
  // Only bars without width have one corner; their joint halves the turn.
  return { at: p ?? q ?? inner.a.at, along: leftNormal(add(into, out)) };
}

const meetOf = (l: Line, m: Line): Point | null =>
  intersectLines(l.at, add(l.at, l.along), m.at, add(m.at, m.along));

/** Where the inner edges of a corner meet: the place told in checks and joints. */
export const cornerPlace = (lines: CornerLines): Point =>
  (lines.inner && meetOf(lines.inner.a, lines.inner.b)) ?? lines.miter.at;
