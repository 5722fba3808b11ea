import type { Point } from '../../src/geometry/shape.ts';

/** A vertex as a reader of DXF gives it: `bulge` is the tangent of a quarter of the arc's angle (DXF reference, group 42). */
export interface Vertex extends Point {
  readonly bulge?: number | undefined;
}

/**
 * A closed polyline with its bows as many short chords. By turning the chord about its middle and not by a center,
 * so that nothing is shared with the code that wrote it: a point of the arc at share s of its angle.
 */
export function walked(vertices: readonly Vertex[], chords = 64): Point[] {
  return vertices.flatMap((a, i) => {
    const b = vertices[(i + 1) % vertices.length] ?? a;
    if (!a.bulge) return [{ x: a.x, y: a.y }];
    const angle = 4 * Math.atan(a.bulge);
    return Array.from({ length: chords }, (_, k) => {
      // A chord from the start over share s of the arc leans from the whole chord by half of the rest, to its right.
      const s = k / chords;
      const share = Math.sin((s * angle) / 2) / Math.sin(angle / 2);
      const lean = (-(1 - s) * angle) / 2;
      const [cos, sin] = [Math.cos(lean) * share, Math.sin(lean) * share];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      return { x: a.x + dx * cos - dy * sin, y: a.y + dx * sin + dy * cos };
    });
  });
}
