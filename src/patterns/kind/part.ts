import { layer, moved } from '../../drawing/items.ts';
import { boxOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import type { PatternWords } from '../words.ts';
import { nameOn } from './face.ts';
import { centerLines, FOLLOW, outlines } from './outlines.ts';
import type { Pattern } from './pattern.ts';

export interface PartPattern {
  readonly kind: 'part';
  readonly id: string;
  readonly name: string;
  /** Anywhere in the plane; openings are its holes. */
  readonly region: Region;
}

export function partPatterns({ id, name, region }: PartPattern, words: PatternWords): Pattern[] {
  const box = boxOf(region);
  if (!box) return [];
  const title = words.part(name);
  return [
    {
      for: id,
      title,
      drawing: {
        width: box.w,
        height: box.h,
        title,
        items: [
          moved({ x: -box.x, y: -box.y }, [
            layer('guides', centerLines(box)),
            layer('parts', outlines(region, FOLLOW)),
            layer('names', nameOn(region, name)),
          ]),
        ],
      },
      letters: [],
    },
  ];
}
