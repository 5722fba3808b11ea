import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { layer, shape } from '../../drawing/items.ts';
import { DASH, INK, WEIGHT } from '../../drawing/style.ts';
import { offset, subtract, union } from '../../geometry/clip.ts';
import { pathOfBox, pathOfRegion } from '../../geometry/path.ts';
import { boxOf, translateRegion } from '../../geometry/region.ts';
import type { Point, Region } from '../../geometry/shape.ts';
import { photoItems } from '../../lettering/photo/drawn.ts';
import type { PlacedPhoto } from '../../lettering/photo/placed.ts';
import type { Lettered } from '../../lettering/result.ts';
import type { Mm } from '../../measure/units.ts';
import { outlines } from './outlines.ts';
import type { Pattern } from './pattern.ts';

/** How a sign is printed. */
export interface Printing {
  /** Of the paper between the letters, out to the bleed. */
  readonly ground: Color;
  readonly bleed: Mm;
  /** Under the letters, from the back to the front. */
  readonly photos: readonly PlacedPhoto[];
  /** By the ids of finishes. */
  readonly colors: Readonly<Record<string, Color>>;
  /** What else is on its paper, in the order in which it lies. */
  readonly blocks: readonly PrintedBlock[];
}

/** Lettering on the paper of another print, in coordinates of its own. */
export interface PrintedBlock extends Pick<Printing, 'photos'> {
  /** Where its origin lies, in those of the print. */
  readonly at: Point;
  readonly board: Region;
  /** Of its shape; null where the paper shows. */
  readonly ground: Color | null;
  readonly lettered: Lettered;
}

/** What of a sign is printed. */
interface Printable {
  readonly id: string;
  readonly name: string;
  readonly board: Region;
  readonly lettered: Lettered;
  readonly printing?: Printing | undefined;
}

/** A sign that is told how to be printed. */
export interface PrintedSign extends Printable {
  readonly printing: Printing;
}
export const isPrinted = <S extends Printable>(sign: S): sign is S & PrintedSign =>
  sign.printing !== undefined;

/** A printed sign in full color, its lower left corner, bleed and all, as the origin. */
export interface Print {
  readonly for: string;
  readonly title: string;
  readonly w: Mm;
  readonly h: Mm;
  readonly items: readonly DrawItem[];
}

/** The line that a printed sign is cut along: it goes with the cut. */
const TRIM = { stroke: INK.soft, width: WEIGHT.hair, dash: DASH.trim } as const;

const filled = (region: Region, fill: Color): DrawItem =>
  shape(pathOfRegion(region), { fill, fillRule: 'evenodd' });

/** The outline of a print's paper: of its board with all that is on it, as it is trimmed. */
const paperOf = (board: Region, blocks: readonly PrintedBlock[]): Region =>
  blocks.length === 0 ? board : union([board, ...blocks.map((block) => ownBoard(block))]);

const ownBoard = ({ board, at }: PrintedBlock): Region => translateRegion(board, at.x, at.y);

/**
 * What is printed of a sign: its ground out to the bleed, its colors as they are seen, those of what else is on its paper
 * over them, and the line to trim all of it by.
 */
export function printOf({ id, name, board, lettered, printing }: PrintedSign): Print {
  const { ground, bleed, photos, colors, blocks } = printing;
  const paper = paperOf(board, blocks);
  const around = offset(paper, bleed, 'miter');
  const { x, y, w, h } = boxOf(around) ?? { x: 0, y: 0, w: 0, h: 0 };
  // Letters that run off the board are printed as far as the bleed.
  const clip = pathOfBox({ x, y, w, h });
  const inked = ({ layers }: Lettered) =>
    layers.map(({ role, finish, region }) => layer(role, [filled(region, colors[finish] ?? INK.line)]));
  const onPaper = blocks.map((block): DrawItem => {
    const { at } = block;
    const own = translateRegion(around, -at.x, -at.y);
    // At the border of the paper its color runs on into the bleed, elsewhere it ends at its shape.
    const beyond = subtract(offset(block.board, bleed, 'miter'), translateRegion(paper, -at.x, -at.y));
    const under = block.ground === null ? [] : [filled(union([block.board, beyond]), block.ground)];
    const items = [layer('block', [...under, ...photoItems(block.photos, own)]), ...inked(block.lettered)];
    return { kind: 'group', clip, items: [{ kind: 'group', move: at, items }] };
  });
  const items: DrawItem[] = [
    {
      kind: 'group',
      move: { x: -x, y: -y },
      items: [
        layer('ground', [filled(around, ground), ...photoItems(photos, around)]),
        { kind: 'group', clip, items: inked(lettered) },
        ...onPaper,
        layer('trim', outlines(paper, TRIM)),
      ],
    },
  ];
  return { for: id, title: name, w, h, items };
}

/** The same as one drawing, for what is written beside the pages. */
export function printPatterns(sign: PrintedSign): Pattern[] {
  const { title, w, h, items } = printOf(sign);
  return [{ for: sign.id, title, drawing: { width: w, height: h, title, items }, letters: [] }];
}
