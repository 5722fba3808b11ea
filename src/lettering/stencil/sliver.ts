import { grownBox } from '../../geometry/box.ts';
import { intersect, offset, subtract } from '../../geometry/clip.ts';
import { add, distance, leftNormal, scale } from '../../geometry/point.ts';
import { areaOf, boxesMeet, EMPTY, regionOfBox, regionOfRing } from '../../geometry/region.ts';
import { boxOfPoints, perimeter } from '../../geometry/ring.ts';
import type { Point, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { barRing, type Crossing } from './crossing.ts';
import { covers } from './inside.ts';

/** An opening thinner than this share of a bar is a sliver, where it is longer than a bar is wide. Common practice, no source. */
const THIN = 0.5;
/** A sliver is cut away with this much around it, so that no hair of it stays. */
const AROUND: Mm = 0.05;

/**
 * What bars leave of letters as thin strips beside them, which the letters have not themselves: found by a
 * morphological opening of what is cut, around those bars alone that run along a border.
 *
 * @param opened the letters less the bars
 */
export function sliversOf(letters: Region, opened: Region, bars: readonly Crossing[], width: Mm): Region {
  return bars.flatMap((bar) => {
    if (!runsAlong(bar, letters, width)) return EMPTY;
    const ring = barRing(bar, width);
    const window = regionOfBox(grownBox(boxOfPoints(ring), 2 * width));
    const own = offset(thinOf(intersect(letters, window), width), width / 4, 'round');
    const touched = regionOfRing(barRing(bar, width + 4 * AROUND));
    return subtract(thinOf(intersect(opened, window), width), own)
      .filter((strip) => perimeter(strip.outer) / 2 > width && isTouched(strip.outer, touched))
      .flatMap((strip) => offset([strip], AROUND, 'miter'));
  });
}

const isTouched = (ring: Region[number]['outer'], by: Region): boolean =>
  by.some(({ outer }) => boxesMeet(boxOfPoints(outer), boxOfPoints(ring))) &&
  areaOf(intersect(regionOfRing(ring), by)) > 0;

/** What no disk within the region covers. */
function thinOf(region: Region, width: Mm): Region {
  const radius = (THIN * width) / 2;
  return subtract(region, offset(offset(region, -radius, 'round'), radius, 'round'));
}

/** Places looked at on each side of a bar for every width of it. */
const PER_WIDTH = 4;

/** Whether one side of a bar has letter beside it for more than a bar's width, and sheet again close behind. */
function runsAlong({ leaves, reaches, along }: Crossing, letters: Region, width: Mm): boolean {
  const length = distance(leaves, reaches);
  const across = leftNormal(along);
  const isInk = (place: Point) => letters.some((polygon) => covers(polygon, place));
  const step = width / PER_WIDTH;
  return [-1, 1].some((side) => {
    let run = 0;
    for (let way = -width / 2; way <= length + width / 2; way += step) {
      const at = (off: Mm) => add(add(leaves, scale(along, way)), scale(across, side * (width / 2 + off)));
      run = isInk(at(AROUND)) && !isInk(at(THIN * width)) ? run + 1 : 0;
      if (run > PER_WIDTH / 2) return true;
    }
    return false;
  });
}
