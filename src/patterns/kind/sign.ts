import type { DrawItem, Drawing } from '../../drawing/drawing.ts';
import { circle, layer, type PathLook, shape, text } from '../../drawing/items.ts';
import { INK } from '../../drawing/style.ts';
import { boxAroundBoth, grownBox, surrounds } from '../../geometry/box.ts';
import { pathOfRings } from '../../geometry/path.ts';
import { boxOf, ringsOf, transformRegion } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import { distanceToSegment } from '../../geometry/segment.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { spacedAlong } from '../../geometry/spaced.ts';
import type { Lettered, Stencil } from '../../lettering/result.ts';
import { cyclic } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { PatternWords, SignMode } from '../words.ts';
import { guides } from './guides.ts';
import { FOLLOW, GUIDE, outlines } from './outlines.ts';
import type { Pattern } from './pattern.ts';
import { isPrinted, type Printing, printPatterns } from './print.ts';

export interface SignPattern {
  readonly kind: 'sign';
  readonly id: string;
  readonly name: string;
  readonly mode: SignMode;
  /** Pounce mode: the largest space between two holes. */
  readonly spacing: Mm;
  /** The sign's board in the coordinates of its lettering: lower left of the sign's box at 0, 0. */
  readonly board: Region;
  /** The board is sawn by this pattern: its outline is followed like the letters, on pages of its own if need be. */
  readonly sawn?: boolean | undefined;
  /** Registration holes that do not lie on the board. */
  readonly off?: number | undefined;
  /** Printed mode. */
  readonly printing?: Printing | undefined;
  readonly lettered: Lettered;
  /** Edges and joints of what letters without a board lie on, in the same coordinates. */
  readonly seams: readonly (readonly [Point, Point])[];
  /** Lines of text run along arcs. */
  readonly bent: boolean;
  /** Stencil mode: one for each color, from the back to the front. */
  readonly stencils: readonly {
    /** As told to a person. */ readonly finish: string;
    readonly stencil: Stencil;
  }[];
}

const boxed = (region: Region): Box => boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 };

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

/** A board much larger than its text would print page after page of nothing but its edge. */
const BESIDES = ['guides'];

/** The board's outline where it is sawn by the pattern; fainter beside what is cut out of a stencil. */
const boardOf = ({ sawn }: SignPattern, board: Region, look: PathLook): DrawItem[] =>
  sawn ? [layer('board', outlines(board, look))] : [];

const lettering = (lettered: Lettered): DrawItem[] =>
  lettered.layers.map((one) => layer(one.role, outlines(one.region, FOLLOW)));

function mirrored({
  lettered,
  board,
  seams,
}: SignPattern): Pick<SignPattern, 'lettered' | 'board' | 'seams'> {
  const { x, w } = boxed(board);
  const turn = (p: Point) => ({ x: 2 * x + w - p.x, y: p.y });
  const region = (r: Region) => transformRegion(r, turn);
  return {
    board: region(board),
    seams: seams.map(([a, b]) => [turn(a), turn(b)]),
    lettered: {
      ...lettered,
      layers: lettered.layers.map((one) => ({ ...one, region: region(one.region) })),
      glyphs: lettered.glyphs.map((glyph) => ({ ...glyph, region: region(glyph.region) })),
    },
  };
}

/** The holes of a pounce wheel: large enough to see, small enough to hit. */
const DOT = 0.35;
const PRICKED: PathLook = { fill: INK.line };

/** Nearer to a line than this, a hole is on it. */
const ON_LINE: Mm = 0.05;

/** Each line is pricked once, also where two colors share it. */
function pricked({ lettered, spacing }: SignPattern): DrawItem[] {
  const before: { readonly ring: Ring; readonly near: Box }[] = [];
  return lettered.layers.map((one) => {
    const rings = ringsOf(one.region);
    const dots = rings
      .flatMap((ring) => spacedAlong(ring, spacing))
      .filter(
        (dot) => !before.some(({ ring, near }) => surrounds(near, { ...dot, w: 0, h: 0 }) && isOn(dot, ring)),
      );
    before.push(...rings.map((ring) => ({ ring, near: grownBox(boxOfPoints(ring), ON_LINE) })));
    return layer(
      one.role,
      dots.map((dot) => circle(dot, DOT, PRICKED)),
    );
  });
}

const isOn = (p: Point, ring: Ring): boolean =>
  ring.some((from, i) => distanceToSegment(p, from, cyclic(ring, i + 1)) < ON_LINE);

function whole(sign: SignPattern, words: PatternWords, letters = lettering(sign.lettered)): Pattern[] {
  const { lettered, board } = sign;
  const ink = lettered.layers.map((one) => boxOf(one.region)).filter((b): b is Box => b !== null);
  const box = ink.reduce(boxAroundBoth, boxed(board));
  return [
    {
      for: sign.id,
      title: sign.name,
      note: [words.mode[sign.mode], ...seamsOf(sign, words)].join('; '),
      drawing: drawingOf(sign.name, box, [guides(sign, words), ...boardOf(sign, board, FOLLOW), ...letters]),
      letters: letterBoxes(lettered, box),
      besides: BESIDES,
    },
  ];
}

/**
 * One pattern a color, with everything that is cut out of its sheet: the letters as they are bridged, and the
 * registration holes that all sheets share.
 */
function stencils(sign: SignPattern, words: PatternWords): Pattern[] {
  const sheet = sign.stencils.map((s) => boxed(s.stencil.sheet)).reduce(boxAroundBoth, boxed(sign.board));
  return sign.stencils.map(({ finish, stencil }, i) => {
    const title =
      sign.stencils.length > 1
        ? `${sign.name}, ${words.layer(i + 1, sign.stencils.length, finish)}`
        : sign.name;
    return {
      for: sign.id,
      title,
      note: [
        words.mode.stencil,
        ...(stencil.single > 0 ? [words.onOne(stencil.single)] : []),
        ...(sign.stencils.length > 1 ? [words.holes] : []),
        ...(sign.off ? [words.tabs(sign.off)] : []),
        ...seamsOf(sign, words),
      ].join('; '),
      drawing: drawingOf(title, sheet, [
        guides({ ...sign, sawn: sign.sawn && i === 0 }, words),
        ...(i === 0 ? boardOf(sign, sign.board, GUIDE) : []),
        layer(
          'sheet',
          stencil.sheet.flatMap(({ outer }) => outlines([{ outer, holes: [] }], GUIDE)),
        ),
        layer(
          'cut',
          stencil.sheet.flatMap(({ holes }) => holes.map((ring) => shape(pathOfRings([ring]), FOLLOW))),
        ),
        layer('guides', stencil.islands.filter(({ hold }) => hold === 1).flatMap(marked)),
      ]),
      letters: letterBoxes(sign.lettered, sheet),
      besides: BESIDES,
    };
  });
}

/** What the lines are that are neither letters nor guides. */
const seamsOf = ({ seams }: SignPattern, words: PatternWords): string[] =>
  seams.length > 0 ? [words.seams] : [];

const MARK: { readonly most: Mm; readonly least: Mm } = { most: 2.2, least: 0.9 };

/** A 1 in a ring on an island that hangs on one bridge, no larger than the island has room for. */
function marked({ at, border }: Stencil['islands'][number]): DrawItem[] {
  const room = border.map((from, i) => distanceToSegment(at, from, cyclic(border, i + 1)));
  const radius = Math.max(MARK.least, Math.min(MARK.most, 0.8 * Math.min(...room)));
  const size = 1.3 * radius;
  return [
    circle(at, radius, GUIDE),
    text({ x: at.x, y: at.y - 0.36 * size }, '1', { size, anchor: 'middle', color: INK.soft }),
  ];
}

const MODES: Readonly<Record<SignMode, (sign: SignPattern, words: PatternWords) => Pattern[]>> = {
  trace: (sign, words) => whole(sign, words),
  pounce: (sign, words) => whole(sign, words, pricked(sign)),
  mirrored: (sign, words) => whole({ ...sign, ...mirrored(sign) }, words),
  stencil: stencils,
  'cut-out': (sign, words) => whole(sign, words),
  printed: (sign) => (isPrinted(sign) ? printPatterns(sign) : []),
};

export const signPatterns = (sign: SignPattern, words: PatternWords): Pattern[] =>
  MODES[sign.mode](sign, words);
