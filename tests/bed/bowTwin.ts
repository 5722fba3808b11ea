import type { Bow, Bows, EdgeName } from '../../src/bed/bows.ts';
import type { Point, Quad } from '../../src/geometry/shape.ts';

/** The value at `t` of the polynomial through places, by Neville's scheme. */
function neville(nodes: readonly (readonly [number, number])[], t: number): number {
  const values = nodes.map(([, y]) => y);
  for (let k = 1; k < nodes.length; k++)
    for (let i = 0; i + k < nodes.length; i++) {
      const [a, b] = [nodes[i]?.[0] ?? 0, nodes[i + k]?.[0] ?? 0];
      values[i] = ((t - a) * (values[i + 1] ?? 0) - (t - b) * (values[i] ?? 0)) / (b - a);
    }
  return values[0] ?? 0;
}

/** A place of an edge between two corners walked counterclockwise, `t` counted from its left or lower end. */
export function throughReadings(from: Point, to: Point, edge: EdgeName, bow: Bow, t: number): Point {
  const read = [
    [0.25, bow.first],
    [0.5, bow.middle],
    [0.75, bow.last],
  ].filter((one): one is [number, number] => one[1] !== undefined);
  const out = neville([[0, 0], ...read, [1, 0]], t);
  const [low, high] = edge === 'top' || edge === 'left' ? [to, from] : [from, to];
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  // To the right of the way around lies what is outside.
  const [nx, ny] = [(to.y - from.y) / long, -(to.x - from.x) / long];
  return { x: low.x + (high.x - low.x) * t + nx * out, y: low.y + (high.y - low.y) * t + ny * out };
}

/** The outline of a bed whose edges bow, of `n` chords an edge, counterclockwise. */
export function outlineBowed(corners: Quad, bows: Bows, n: number): Point[] {
  return (['bottom', 'right', 'top', 'left'] as const).flatMap((edge, i) => {
    const [from, to] = [corners[i], corners[(i + 1) % 4]] as [Point, Point];
    return Array.from({ length: n }, (_, k) => {
      const t = edge === 'top' || edge === 'left' ? 1 - k / n : k / n;
      return throughReadings(from, to, edge, bows[edge] ?? {}, t);
    });
  });
}
