import type { Point } from '../../geometry/shape.ts';
import { strokeHaloed } from './haloed.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** The circle of a mark, and where its crosshairs begin and end, in pixels from its middle. */
const MARK = { circle: 9, from: 3, to: 13 } as const;

/** What is set on a photo: its frame, and the marks or corners that the hand may pull, on the face. */
export interface PhotoSetting {
  readonly frame: readonly Point[];
  readonly points: readonly Point[];
  /** The points are corners of one outline. */
  readonly closed: boolean;
}

/** Marks and corners of the photo while they are set: crosshairs that show what lies beneath them. */
export function drawPhotoHandles(ctx: Pen, photo: PhotoSetting, palette: Palette, scale: number): void {
  const px = 1 / scale;
  const line = { color: palette.over, px };
  trace(ctx, photo.frame, true);
  strokeHaloed(ctx, palette, { ...line, width: 1, dash: [6, 4] });
  trace(ctx, photo.points, photo.closed);
  strokeHaloed(ctx, palette, { ...line, width: 1.5 });
  for (const p of photo.points) {
    ctx.beginPath();
    ctx.arc(p.x, p.y, MARK.circle * px, 0, Math.PI * 2);
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      ctx.moveTo(p.x + dx * MARK.from * px, p.y + dy * MARK.from * px);
      ctx.lineTo(p.x + dx * MARK.to * px, p.y + dy * MARK.to * px);
    }
    strokeHaloed(ctx, palette, { ...line, width: 1.5 });
  }
}

function trace(ctx: Pen, ring: readonly Point[], closed: boolean): void {
  ctx.beginPath();
  ring.forEach((p, i) => {
    if (i === 0) ctx.moveTo(p.x, p.y);
    else ctx.lineTo(p.x, p.y);
  });
  if (closed) ctx.closePath();
}
