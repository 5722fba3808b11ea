import type { DrawItem, Drawing } from '../../drawing/drawing.ts';
import { circle, layer, lines } from '../../drawing/items.ts';
import { boxOf, transformRegion } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Lettered, Stencil } from '../../lettering/result.ts';
import type { Mm } from '../../measure/units.ts';
import { WORDS } from '../words.ts';
import { centerLines, FOLLOW, GUIDE, outlines } from './outlines.ts';
import type { Pattern } from './pattern.ts';

export interface SignPattern {
  readonly kind: 'sign';
  readonly id: string;
  readonly name: string;
  readonly mode: 'trace' | 'stencil' | 'mirrored' | 'cut-out';
  /** The sign's board in the coordinates of its lettering: lower left of the sign's box at 0, 0. */
  readonly board: Region;
  readonly lettered: Lettered;
  /** Stencil mode: one for each color, from the back to the front. */
  readonly stencils: readonly { readonly finish: string; readonly stencil: Stencil }[];
}

const HOLE: Mm = 3;

const boxed = (region: Region): Box => boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 };

/** Smallest box around both. */
function around(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

/** A drawing of what lies in the box, with the box's lower left corner as its origin. */
function drawingOf(title: string, box: Box, items: readonly DrawItem[]): Drawing {
  return {
    width: box.w,
    height: box.h,
    title,
    items: [{ kind: 'group', move: { x: -box.x, y: -box.y }, items }],
  };
}

const letterBoxes = (lettered: Lettered, origin: Point): Box[] =>
  lettered.glyphs.flatMap((glyph) => {
    const box = boxOf(glyph.region);
    return box ? [{ ...box, x: box.x - origin.x, y: box.y - origin.y }] : [];
  });

/** Edge of the board and its center lines: to lay the pattern on it. */
function guides(board: Region): DrawItem {
  return layer('guides', [...outlines(board, GUIDE), ...centerLines(boxed(board))]);
}

const lettering = (lettered: Lettered): DrawItem[] =>
  lettered.layers.map((one) => layer(one.role, outlines(one.region, FOLLOW)));

function mirrored(lettered: Lettered, board: Region): { lettered: Lettered; board: Region } {
  const { x, w } = boxed(board);
  const turn = (p: Point) => ({ x: 2 * x + w - p.x, y: p.y });
  const region = (r: Region) => transformRegion(r, turn);
  return {
    board: region(board),
    lettered: {
      ...lettered,
      layers: lettered.layers.map((one) => ({ ...one, region: region(one.region) })),
      glyphs: lettered.glyphs.map((glyph) => ({ ...glyph, region: region(glyph.region) })),
    },
  };
}

function whole(sign: SignPattern, lettered: Lettered, board: Region): Pattern[] {
  const ink = lettered.layers.map((one) => boxOf(one.region)).filter((b): b is Box => b !== null);
  const box = ink.reduce(around, boxed(board));
  return [
    {
      for: sign.id,
      title: sign.name,
      note: WORDS.mode[sign.mode],
      drawing: drawingOf(sign.name, box, [guides(board), ...lettering(lettered)]),
      letters: letterBoxes(lettered, box),
    },
  ];
}

/**
 * Registration holes in the corners of the sheet, the same for every color: drilled once through all stencils
 * they put each color where it belongs. Between the cut and the sheet's edge, as large as the frame allows.
 */
function holes(sheet: Box, cuts: readonly Region[]): DrawItem[] {
  const boxes = cuts.map((cut) => boxOf(cut)).filter((b): b is Box => b !== null);
  const frame = Math.min(
    ...boxes.flatMap((b) => [
      b.x - sheet.x,
      b.y - sheet.y,
      sheet.x + sheet.w - b.x - b.w,
      sheet.y + sheet.h - b.y - b.h,
    ]),
    12 * HOLE,
  );
  const inset = Math.min(4 * HOLE, frame / 2);
  const radius = Math.min(HOLE, inset / 2);
  if (!(radius > 0.5)) return [];
  return [sheet.x + inset, sheet.x + sheet.w - inset].flatMap((x) =>
    [sheet.y + inset, sheet.y + sheet.h - inset].flatMap((y) => [
      circle({ x, y }, radius, FOLLOW),
      lines(
        [
          [
            { x: x - 1.6 * radius, y },
            { x: x + 1.6 * radius, y },
          ],
          [
            { x, y: y - 1.6 * radius },
            { x, y: y + 1.6 * radius },
          ],
        ],
        GUIDE,
      ),
    ]),
  );
}

function stencils(sign: SignPattern): Pattern[] {
  const sheet = sign.stencils.map((s) => boxed(s.stencil.sheet)).reduce(around, boxed(sign.board));
  const cuts = sign.stencils.map((s) => s.stencil.cut);
  return sign.stencils.map(({ finish, stencil }, i) => {
    const title =
      sign.stencils.length > 1
        ? `${sign.name}, ${WORDS.layer(i + 1, sign.stencils.length, finish)}`
        : sign.name;
    const rim = stencil.sheet.map((polygon) => [{ outer: polygon.outer, holes: [] }]);
    return {
      for: sign.id,
      title,
      note: WORDS.mode.stencil,
      drawing: drawingOf(title, sheet, [
        guides(sign.board),
        layer(
          'sheet',
          rim.flatMap((r) => outlines(r, GUIDE)),
        ),
        layer('cut', outlines(stencil.cut, FOLLOW)),
        layer('holes', holes(boxed(stencil.sheet), cuts)),
      ]),
      letters: letterBoxes(sign.lettered, sheet),
    };
  });
}

const MODES = {
  trace: (sign: SignPattern) => whole(sign, sign.lettered, sign.board),
  mirrored: (sign: SignPattern) => {
    const turned = mirrored(sign.lettered, sign.board);
    return whole(sign, turned.lettered, turned.board);
  },
  stencil: stencils,
  'cut-out': (sign: SignPattern) => whole(sign, sign.lettered, sign.board),
} as const satisfies Record<SignPattern['mode'], (sign: SignPattern) => Pattern[]>;

export const signPatterns = (sign: SignPattern): Pattern[] => MODES[sign.mode](sign);
