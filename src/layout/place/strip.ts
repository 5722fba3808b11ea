import type { Strip } from '../../design/schema.ts';
import { intersect } from '../../geometry/clip.ts';
import { angleOf, distance, lerp, subtract } from '../../geometry/point.ts';
import { regionOfBox, regionOfRing } from '../../geometry/region.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { radians } from '../../measure/units.ts';
import type { Leg } from '../laid.ts';

type StripLike = Pick<Strip, 'lie' | 'angle' | 'length'>;

/** Center line of a strip in its box, from left to right or from bottom to top. */
export function legOfStrip(
  strip: StripLike,
  box: Box,
  section: { readonly width: Mm; readonly thickness: Mm },
): Leg {
  const [start, end] = centerLine(strip, box);
  const angle = strip.lie === 'turned' ? strip.angle : angleOf(subtract(end, start));
  return { start, end, ...section, angle };
}

function centerLine(strip: StripLike, { x, y, w, h }: Box): [Point, Point] {
  switch (strip.lie) {
    case 'across':
      return [
        { x, y: y + h / 2 },
        { x: x + w, y: y + h / 2 },
      ];
    case 'up':
      return [
        { x: x + w / 2, y },
        { x: x + w / 2, y: y + h },
      ];
    case 'rising':
      return [
        { x, y },
        { x: x + w, y: y + h },
      ];
    case 'falling':
      return [
        { x, y: y + h },
        { x: x + w, y },
      ];
    case 'turned': {
      const center = { x: x + w / 2, y: y + h / 2 };
      const dx = (Math.cos(radians(strip.angle)) * strip.length) / 2;
      const dy = (Math.sin(radians(strip.angle)) * strip.length) / 2;
      return [
        { x: center.x - dx, y: center.y - dy },
        { x: center.x + dx, y: center.y + dy },
      ];
    }
  }
}

/** The four corners of a leg with square ends, counterclockwise. */
function ringOfLeg(leg: Leg, beyond: Mm = 0): Ring {
  const length = distance(leg.start, leg.end);
  const start = lerp(leg.start, leg.end, -beyond / length);
  const end = lerp(leg.end, leg.start, -beyond / length);
  const nx = (-(leg.end.y - leg.start.y) / length) * (leg.width / 2);
  const ny = ((leg.end.x - leg.start.x) / length) * (leg.width / 2);
  return [
    { x: start.x - nx, y: start.y - ny },
    { x: end.x - nx, y: end.y - ny },
    { x: end.x + nx, y: end.y + ny },
    { x: start.x + nx, y: start.y + ny },
  ];
}

/**
 * Footprint before any joint. A brace along a diagonal is the band of its stock clipped by its box: each
 * end is two cuts that meet in a point in the corner.
 */
export function regionOfStrip(strip: StripLike, box: Box, leg: Leg): Region {
  switch (strip.lie) {
    case 'across':
    case 'up':
      return regionOfBox(box);
    case 'turned':
      return regionOfRing(ringOfLeg(leg));
    case 'rising':
    case 'falling':
      // Far enough past the corners that the square ends of the band cut nothing off.
      return intersect(regionOfRing(ringOfLeg(leg, leg.width)), regionOfBox(box));
  }
}
