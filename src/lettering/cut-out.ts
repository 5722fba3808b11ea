import { connectedParts, intersect } from '../geometry/clip.ts';
import { areaOf, boxesMeet, boxOf } from '../geometry/region.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { fillOf } from './letter.ts';
import { type Lettered, type PlacedGlyph, roleOf } from './result.ts';

/** A letter, or a part of one, to be sawn from sheet: one outer border, maybe with holes. */
export interface CutOut {
  /** The letters it belongs to: several where they touch, one twice where it has two parts (an i). */
  readonly label: string;
  readonly finish: string | undefined;
  /** In the sign's coordinates, so that every part can be put back in its place. */
  readonly region: Region;
  readonly box: Box;
}

/**
 * The parts that fall out when the letters are sawn, in reading order: by line, then from the left.
 * Letters that overlap or touch are one part.
 */
export function cutOuts(lettered: Lettered): CutOut[] {
  const parts = connectedParts(fillOf(lettered.layers)).flatMap((region) => {
    const box = boxOf(region);
    if (!box) return [];
    const own = lettered.glyphs.filter((glyph) => covers(region, box, glyph));
    const [first] = own;
    const role = first && roleOf('fill', first.look);
    const finish = lettered.layers.find((layer) => layer.role === role)?.finish;
    return [
      { region, box, finish, label: own.map((glyph) => glyph.character).join(''), line: first?.line ?? 0 },
    ];
  });
  parts.sort((a, b) => a.line - b.line || a.box.x - b.box.x || a.box.y - b.box.y);
  return parts.map(({ label, finish, region, box }) => ({ label, finish, region, box }));
}

function covers(part: Region, box: Box, glyph: PlacedGlyph): boolean {
  const own = boxOf(glyph.region);
  return own !== null && boxesMeet(own, box) && areaOf(intersect(part, glyph.region)) > 0;
}
