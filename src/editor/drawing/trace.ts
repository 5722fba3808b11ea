import type { Region } from '../../geometry/shape.ts';

type Pen = Pick<CanvasPath, 'moveTo' | 'lineTo' | 'closePath'>;

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
