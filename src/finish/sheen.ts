import type { Design, Finish } from '../design/schema.ts';
import type { Fade } from '../drawing/drawing.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { radians } from '../measure/units.ts';

/**
 * How much of a window's light each sheen throws back, and how wide it spreads it, as a share of the face.
 * Our own choice, by eye: the shinier, the brighter and narrower; a flat finish shows none.
 */
const LOBES: Readonly<Record<Finish['sheen'], { readonly peak: number; readonly width: number } | null>> = {
  flat: null,
  eggshell: { peak: 0.1, width: 0.75 },
  satin: { peak: 0.19, width: 0.5 },
  gloss: { peak: 0.36, width: 0.28 },
};
const STOPS = 24;

/**
 * The gleam of a sheen in a light: one soft band over the whole face, as a tall window would be seen in it,
 * upright to where the light comes from and the nearer to that side the lower the light stands. Null where
 * the sheen throws none back.
 *
 * It is there to tell sheens apart on the screen; where a real gleam stands depends on where one stands oneself.
 */
export function gleamOf(sheen: Finish['sheen'], light: Design['light'], face: Box): Fade | null {
  const lobe = LOBES[sheen];
  if (!lobe) return null;
  const azimuth = radians(light.azimuth);
  const along = { x: Math.cos(azimuth), y: Math.sin(azimuth) };
  const reach = (Math.abs(along.x) * face.w + Math.abs(along.y) * face.h) / 2;
  const middle = { x: face.x + face.w / 2, y: face.y + face.h / 2 };
  const at = (share: number): Point => ({
    x: middle.x + along.x * reach * share,
    y: middle.y + along.y * reach * share,
  });
  // Light from straight above gleams in the middle of the face, the lowest at its border.
  const center = 1 - light.altitude / 90;
  const start = center - 2 * lobe.width;
  const end = center + 2 * lobe.width;
  const stops = Array.from({ length: STOPS + 1 }, (_, i) => ({
    at: i / STOPS,
    alpha: lobe.peak * Math.cos((i / STOPS - 0.5) * Math.PI) ** 2,
  }));
  return { from: at(start), to: at(end), stops };
}
