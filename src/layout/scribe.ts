import { subtract as without } from '../geometry/clip.ts';
import { add, distance, scale, subtract, unit } from '../geometry/point.ts';
import { reverseRing, signedArea } from '../geometry/ring.ts';
import type { Region, Ring } from '../geometry/shape.ts';
import { lastOf, pick } from '../list/at.ts';
import type { Leg, Scribe } from './laid.ts';

/** What lies beyond the edge that a leg is scribed to, as far as the leg could reach. */
function beyond({ line, out: way }: Scribe, { start, end, width }: Leg): Ring {
  const [first, last] = [pick(line, 0), lastOf(line)];
  const out = scale(way, width);
  const on = scale(unit(subtract(last, first)), width + distance(start, end));
  const [before, after] = [subtract(first, on), add(last, on)];
  const ring = [before, ...line, after, add(after, out), add(before, out)];
  return signedArea(ring) < 0 ? reverseRing(ring) : ring;
}

/** What is left of a footprint once its legs are scribed. */
export function scribed(region: Region, scribes: readonly Scribe[], legs: readonly Leg[]): Region {
  return scribes.reduce((left, one) => {
    const leg = legs[one.leg];
    return leg ? without(left, [{ outer: beyond(one, leg), holes: [] }]) : left;
  }, region);
}
