import type { Context } from 'konva/lib/Context';
import type { Path, Region } from '../../geometry/shape.ts';

type Pen = Pick<Context, 'beginPath' | 'moveTo' | 'lineTo' | 'bezierCurveTo' | 'closePath'>;

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

export function tracePath(pen: Pen, path: Path): void {
  for (const c of path) {
    if (c.op === 'M') pen.moveTo(c.x, c.y);
    else if (c.op === 'L') pen.lineTo(c.x, c.y);
    else if (c.op === 'C') pen.bezierCurveTo(c.x1, c.y1, c.x2, c.y2, c.x, c.y);
    else pen.closePath();
  }
}
