import { scaleFor } from '../../drawing/scaleBar.ts';
import { transformPath } from '../../geometry/path.ts';
import { transformRegion } from '../../geometry/region.ts';
import type { Box, Path, Point, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** A model box drawn to scale in a room of the page. */
export interface PageView {
  readonly scale: number;
  /** Place on the page. */
  readonly to: (p: Point) => Point;
  readonly region: (r: Region) => Region;
  readonly path: (p: Path) => Path;
  /** The model box on the page. */
  readonly box: Box;
}

/** A box of the model on the page. */
export function onPage(view: PageView, { x, y, w, h }: Box): Box {
  return { ...view.to({ x, y }), w: w / view.scale, h: h / view.scale };
}

/** Room to leave free on each side. */
interface Around {
  readonly left: Mm;
  readonly right: Mm;
  readonly top: Mm;
  readonly bottom: Mm;
}

const NOTHING: Around = { left: 0, right: 0, top: 0, bottom: 0 };

/** Puts `model` into the middle of `room` at the largest scale of the series that leaves `around` free. */
export function viewOf(model: Box, room: Box, unit: 'in' | 'mm', around = NOTHING): PageView {
  const free = { w: room.w - around.left - around.right, h: room.h - around.top - around.bottom };
  return viewAt(model, room, scaleFor(model, free, unit), around);
}

export function viewAt(model: Box, room: Box, scale: number, around: Around = NOTHING): PageView {
  const w = model.w / scale;
  const h = model.h / scale;
  const x = room.x + around.left + (room.w - around.left - around.right - w) / 2;
  const y = room.y + around.bottom + (room.h - around.bottom - around.top - h) / 2;
  const to = (p: Point) => ({ x: x + (p.x - model.x) / scale, y: y + (p.y - model.y) / scale });
  return {
    scale,
    to,
    region: (r) => transformRegion(r, to),
    path: (p) => transformPath(p, to),
    box: { x, y, w, h },
  };
}
