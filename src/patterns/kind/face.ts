import type { DrawItem } from '../../drawing/drawing.ts';
import { layer, rectangle, text } from '../../drawing/items.ts';
import { DASH, INK, PATTERN_TEXT, WEIGHT } from '../../drawing/style.ts';
import { fittedSize } from '../../drawing/text.ts';
import { boxOf, containsPointInRegion } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { PatternWords } from '../words.ts';
import { centerLines, FOLLOW, GUIDE, outlines } from './outlines.ts';
import type { Pattern } from './pattern.ts';

export interface FacePattern {
  readonly kind: 'face';
  /** Of the whole pattern, whose lower left corner is the origin. */
  readonly width: Mm;
  readonly height: Mm;
  /** The true rectangle, by which the layout is marked. */
  readonly box: Box;
  readonly levels: readonly { readonly id: string; readonly region: Region }[];
  readonly keepClears: readonly Box[];
  /** Supports before what lies on them. */
  readonly parts: readonly { readonly id: string; readonly name: string; readonly region: Region }[];
}

/** The part's name in the middle of it, along its length, where the middle lies on it. */
export function nameOn(region: Region, name: string): DrawItem[] {
  const box = boxOf(region);
  if (!box || name === '') return [];
  const at = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  if (!containsPointInRegion(region, at)) return [];
  const upright = box.h > box.w;
  const [long, deep] = upright ? [box.h, box.w] : [box.w, box.h];
  const size = fittedSize(name, { size: Math.min(PATTERN_TEXT.heading, deep * 0.5) }, long - 8);
  if (size < 1.5) return [];
  const drop = size * 0.35;
  const base = upright ? { x: at.x + drop, y: at.y } : { x: at.x, y: at.y - drop };
  return [text(base, name, { size, anchor: 'middle', angle: upright ? 90 : 0, color: INK.soft })];
}

export function facePatterns(face: FacePattern, words: PatternWords): Pattern[] {
  const keepClear = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.hidden };
  return [
    {
      for: 'face',
      title: words.face,
      drawing: {
        width: face.width,
        height: face.height,
        title: words.face,
        items: [
          layer('guides', [rectangle(face.box, FOLLOW), ...centerLines(face.box)]),
          layer(
            'levels',
            face.levels.flatMap((level) => outlines(level.region, GUIDE)),
          ),
          layer(
            'keep clear',
            face.keepClears.map((box) => rectangle(box, keepClear)),
          ),
          layer(
            'parts',
            face.parts.flatMap((part) => outlines(part.region, FOLLOW)),
          ),
          layer(
            'names',
            face.parts.flatMap((part) => nameOn(part.region, part.name)),
          ),
        ],
      },
      letters: [],
    },
  ];
}
