import type { Point, Region } from '../src/geometry/shape.ts';

/** Area of a ring by the shoelace sum, counterclockwise more than 0: the twin of what the tool reckons, for all tests. */
export const shoelace = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

/** Area of a region, whichever way its rings run. */
export const areaOf = (region: Region): number =>
  region.reduce(
    (sum, { outer, holes }) =>
      sum + Math.abs(shoelace(outer)) - holes.reduce((inner, hole) => inner + Math.abs(shoelace(hole)), 0),
    0,
  );

/** Rings as the clipping library of tests takes them. */
export type Multi = [number, number][][][];
export const ringOf = (ring: readonly Point[]): [number, number][] =>
  [...ring, ...ring.slice(0, 1)].map(({ x, y }) => [x, y]);
export const multiOf = (region: Region): Multi =>
  region.map(({ outer, holes }) => [ringOf(outer), ...holes.map(ringOf)]);

/** Area and its first moments by the shoelace sum, about a middle so that no digits are lost. */
export function momentsOf(multi: Multi, about: Point): [number, number, number] {
  const sums: [number, number, number] = [0, 0, 0];
  for (const polygon of multi) {
    polygon.forEach((ring, i) => {
      const own: [number, number, number] = [0, 0, 0];
      ring.forEach(([px, py], k) => {
        const [qx, qy] = ring[(k + 1) % ring.length] as [number, number];
        const [ax, ay, bx, by] = [px - about.x, py - about.y, qx - about.x, qy - about.y];
        const part = ax * by - bx * ay;
        own[0] += part / 2;
        own[1] += ((ax + bx) * part) / 6;
        own[2] += ((ay + by) * part) / 6;
      });
      // Outlines count for, holes against, whichever way the library walks them.
      const sign = Math.sign(own[0]) * (i === 0 ? 1 : -1);
      own.forEach((value, k) => {
        sums[k] = (sums[k] ?? 0) + sign * value;
      });
    });
  }
  return sums;
}
