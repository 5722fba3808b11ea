import { cyclic } from '../list/at.ts';
import { type Deg, radians } from '../measure/units.ts';
import { pathOfRings } from './path.ts';
import { add, scale, subtract } from './point.ts';
import { ringsOf } from './region.ts';
import type { Path, PathCommand, Point, Region, Ring } from './shape.ts';
import { type Curved, paceAt, partOf, reversed } from './stretch.ts';
import { chordsIn, type OnChord } from './trueArea.ts';

/** A cubic strays from so much of an ellipse by less than a ten millionth of its size (the error goes by the sixth power). */
const SPAN: Deg = 22.5;

/** A side of a ring that is a whole chord of a curve; which one, and whether it is walked backward. */
interface Whole extends OnChord {
  readonly back: boolean;
}

/**
 * All borders of a region, with the smooth curves and arcs of ellipses in them as cubics wherever whole chords stand for
 * them. Circles stay chords that lie on them: what writes files knows those again (`withArcs`). A chord of which something
 * was cut off stays straight.
 */
export function truePathOfRegion(region: Region): Path {
  const wholes = new Map<Point, Whole>();
  for (const on of chordsIn(region)) {
    const { curve } = on.chorded;
    const round = curve.kind === 'arc' && curve.rx === curve.ry;
    if (!round && Math.abs(on.to - on.from) === 1) wholes.set(on.q, { ...on, back: on.from === 1 });
  }
  if (wholes.size === 0) return pathOfRings(ringsOf(region));
  return ringsOf(region).flatMap((ring) => truePathOfRing(ring, wholes));
}

function truePathOfRing(ring: Ring, wholes: ReadonlyMap<Point, Whole>): Path {
  /** Whether the side that ends at a corner goes on along the curve of the side before it. */
  const goesOn = (i: number): boolean => {
    const [before, own] = [wholes.get(cyclic(ring, i - 1)), wholes.get(cyclic(ring, i))];
    if (!before || !own || own.chorded !== before.chorded || own.back !== before.back) return false;
    return own.index === before.index + (own.back ? -1 : 1);
  };
  const first = ring.findIndex((_, i) => !goesOn(i));
  const start = cyclic(ring, first - 1);
  const path: PathCommand[] = [{ op: 'M', x: start.x, y: start.y }];
  for (let i = first; i < first + ring.length; ) {
    let last = i;
    while (last + 1 < first + ring.length && goesOn(last + 1)) last++;
    const [from, to] = [wholes.get(cyclic(ring, i)), wholes.get(cyclic(ring, last))];
    const { x, y } = cyclic(ring, last);
    if (from && to) path.push(...cubicsOf(curveFrom(from, to)));
    // The last straight side is drawn by closing.
    else if (last < first + ring.length - 1) path.push({ op: 'L', x, y });
    i = last + 1;
  }
  return [...path, { op: 'Z' }];
}

/** The part of a curve from one of its chords to another, both ends included, the way that they are walked. */
function curveFrom(from: Whole, to: Whole): Curved {
  const { curve, shares } = from.chorded;
  const [low, high] = from.back ? [to.index, from.index + 1] : [from.index, to.index + 1];
  const part = partOf(curve, cyclic(shares, low), cyclic(shares, high)) as Curved;
  return from.back ? (reversed(part) as Curved) : part;
}

function cubicsOf(curve: Curved): PathCommand[] {
  const command = (h1: Point, h2: Point, { x, y }: Point): PathCommand => ({
    ...{ op: 'C', x1: h1.x, y1: h1.y },
    ...{ x2: h2.x, y2: h2.y, x, y },
  });
  if (curve.kind === 'cubic') return [command(curve.h1, curve.h2, curve.to)];
  const count = Math.ceil(Math.abs(curve.sweep) / SPAN);
  const turn = radians(Math.abs(curve.sweep) / count);
  const reach = (4 / 3) * (Math.tan(turn / 4) / turn);
  return Array.from({ length: count }, (_, i) => {
    const part = partOf(curve, i / count, (i + 1) / count);
    return command(
      add(part.from, scale(paceAt(part, 0), reach)),
      subtract(part.to, scale(paceAt(part, 1), reach)),
      part.to,
    );
  });
}
