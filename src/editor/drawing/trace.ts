import type { Path, Region } from '../../geometry/shape.ts';

type Pen = Pick<CanvasPath, 'moveTo' | 'lineTo' | 'closePath'>;

/** A path as the canvas keeps it. */
export function tracedPath(path: Path): Path2D {
  const traced = new Path2D();
  for (const c of path) {
    if (c.op === 'Z') traced.closePath();
    else if (c.op === 'M') traced.moveTo(c.x, c.y);
    else if (c.op === 'L') traced.lineTo(c.x, c.y);
    else traced.bezierCurveTo(c.x1, c.y1, c.x2, c.y2, c.x, c.y);
  }
  return traced;
}

/** Traces a region: outer rings and holes run opposite ways, so both fill rules show it right. */
export function traceRegion(pen: Pen, region: Region, dx = 0, dy = 0): void {
  for (const polygon of region) {
    for (const ring of [polygon.outer, ...polygon.holes]) {
      ring.forEach((p, i) => {
        if (i === 0) pen.moveTo(p.x + dx, p.y + dy);
        else pen.lineTo(p.x + dx, p.y + dy);
      });
      pen.closePath();
    }
  }
}
