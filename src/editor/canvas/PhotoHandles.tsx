import { Shape } from 'react-konva';
import { strokeHaloed } from '../drawing/haloed.ts';
import type { Palette } from '../drawing/palette.ts';
import { photoHandles } from '../gesture/photo.ts';
import { onFace } from '../photo/placing.ts';
import type { Photo, PhotoMode } from '../state/photo.ts';

interface HandlesProps {
  readonly photo: Photo;
  readonly mode: Exclude<PhotoMode, 'rest'>;
  readonly palette: Palette;
  readonly scale: number;
}

/** Marks and corners of the photo while they are set: crosshairs that show what lies beneath them. */
export function PhotoHandles({ photo, mode, palette, scale }: HandlesProps) {
  return (
    <Shape
      perfectDrawEnabled={false}
      sceneFunc={(ctx) => {
        const px = 1 / scale;
        const points = photoHandles(photo, mode);
        const { image, placing } = photo;
        const corner = (x: number, y: number) => onFace(placing, image, { x, y });
        const frame = [
          corner(0, 0),
          corner(image.width, 0),
          corner(image.width, image.height),
          corner(0, image.height),
        ];
        const trace = (ring: readonly { readonly x: number; readonly y: number }[], closed: boolean) => {
          ctx.beginPath();
          ring.forEach((p, i) => {
            if (i === 0) ctx.moveTo(p.x, p.y);
            else ctx.lineTo(p.x, p.y);
          });
          if (closed) ctx.closePath();
        };
        const line = { color: palette.over, px };
        trace(frame, true);
        strokeHaloed(ctx, palette, { ...line, width: 1, dash: [6, 4] });
        trace(points, mode === 'straighten');
        strokeHaloed(ctx, palette, { ...line, width: 1.5 });
        for (const p of points) {
          ctx.beginPath();
          ctx.arc(p.x, p.y, 9 * px, 0, Math.PI * 2);
          for (const [dx, dy] of [
            [1, 0],
            [-1, 0],
            [0, 1],
            [0, -1],
          ] as const) {
            ctx.moveTo(p.x + dx * 3 * px, p.y + dy * 3 * px);
            ctx.lineTo(p.x + dx * 13 * px, p.y + dy * 13 * px);
          }
          strokeHaloed(ctx, palette, { ...line, width: 1.5 });
        }
      }}
    />
  );
}
