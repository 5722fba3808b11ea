import { at } from '../../list/at.ts';
import type { InRoom } from '../state/photo.ts';
import { type Homography, mapped } from './homography.ts';

/** Pixels, four bytes each, rows from the top. */
export interface Pixels {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
}

/** How much red is taken or given at the warmest, and blue the other way. Our own choice, by eye. */
const WARMEST = 0.35;

/** The same picture in another light: its colors times a brightness, with more red and less blue where it is warm. */
export function litPixels(
  { data, width, height }: Pixels,
  { brightness, warmth }: Pick<InRoom, 'brightness' | 'warmth'>,
): Pixels {
  const shares = [1 + warmth * WARMEST, 1, 1 - warmth * WARMEST].map((share) => share * brightness);
  const lit = new Uint8ClampedArray(data);
  for (let i = 0; i < lit.length; i += 4) {
    for (const [c, share] of shares.entries()) lit[i + c] = at(data, i + c) * share;
  }
  return { data: lit, width, height };
}

/**
 * A picture as it is seen through a map: each pixel of the result takes the color found where `toSource` takes
 * its middle, blended from the four pixels around; outside of the picture it is clear. `from` is the upper left pixel of
 * the result, counted where the map counts.
 */
export function warpedPixels(
  source: Pixels,
  toSource: Homography,
  width: number,
  height: number,
  from = { x: 0, y: 0 },
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = mapped(toSource, { x: from.x + x + 0.5, y: from.y + y + 0.5 });
      blend(source, p.x - 0.5, p.y - 0.5, data, (y * width + x) * 4);
    }
  }
  return { data, width, height };
}

function blend(
  { data, width, height }: Pixels,
  x: number,
  y: number,
  out: Uint8ClampedArray,
  to: number,
): void {
  if (!(x > -0.5 && y > -0.5 && x < width - 0.5 && y < height - 0.5)) return;
  const x0 = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const y0 = Math.min(height - 1, Math.max(0, Math.floor(y)));
  const x1 = Math.min(width - 1, x0 + 1);
  const y1 = Math.min(height - 1, y0 + 1);
  const fx = Math.min(1, Math.max(0, x - x0));
  const fy = Math.min(1, Math.max(0, y - y0));
  for (let c = 0; c < 4; c++) {
    const value = (px: number, py: number) => at(data, (py * width + px) * 4 + c);
    const upper = value(x0, y0) * (1 - fx) + value(x1, y0) * fx;
    const lower = value(x0, y1) * (1 - fx) + value(x1, y1) * fx;
    out[to + c] = upper * (1 - fy) + lower * fy;
  }
}
