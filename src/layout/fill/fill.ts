import { RIPPED } from '../../design/defaults.ts';
import type { Fill } from '../../design/schema.ts';
import { subtract as clipped } from '../../geometry/clip.ts';
import { withinConvex } from '../../geometry/cut.ts';
import { angleOf, dot, subtract, unit } from '../../geometry/point.ts';
import { areaOf, EMPTY, transformRegion, translateRegion } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { DUST } from '../../geometry/tolerance.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { Leg, Relief } from '../laid.ts';
import { regionOfFill, regionOfShape } from '../place/shape.ts';
import { section } from '../structure.ts';
import { type Frame, frameOf, otherStart } from './frame.ts';
import { type Cell, cellsOf, type Ground, rectangle, type Sizes } from './patterns.ts';

/** A piece of a fill, cut by its outline. */
export interface FillPiece {
  readonly column: number;
  readonly row: number;
  /** Seen on the face. */
  readonly region: Region;
  /** What is sawn: with what reaches under its neighbor. */
  readonly wood: Region;
  /** What it is sawn from. */
  readonly stock: string;
  /** How far over what the fill lies on. */
  readonly lift: Mm;
  /** The board before the outline cuts it. */
  readonly leg: Leg;
  readonly relief?: Relief;
  /** Painted on the piece that has this column and row. */
  readonly on?: string;
}

type FillLike = Pick<
  Fill,
  'shape' | 'openings' | 'stock' | 'width' | 'pattern' | 'gap' | 'angle' | 'start' | 'flip'
>;
type Stocks = ReadonlyMap<string, Stock>;

/** The pieces of a fill at the origin, and what they follow from. */
export interface FillCut {
  readonly fill: FillLike;
  readonly size: Pick<Box, 'w' | 'h'>;
  readonly stocks: Stocks;
  /** What lies in its way, as on the face. */
  readonly less: Region;
  readonly pieces: readonly FillPiece[];
}

/**
 * The pieces of a fill in its box that something is left of, those left out by the person too. They are cut at the
 * origin and put in place, so that a fill which is moved is cut the same.
 */
export const piecesOfFill = (fill: FillLike, box: Box, stocks: Stocks): FillPiece[] =>
  cutOfFill(fill, box, stocks).pieces.map((piece) => pieceAt(piece, box));

/**
 * @param last what was cut before, which comes again where the fill has only been moved
 * @param less what of the face its pieces end at
 */
export function cutOfFill(
  fill: FillLike,
  { x, y, w, h }: Box,
  stocks: Stocks,
  last?: FillCut | null,
  less: Region = EMPTY,
): FillCut {
  const alike = last && last.less.length + less.length === 0 && last.stocks === stocks;
  if (alike && last.size.w === w && last.size.h === h && sameFill(last.fill, fill)) return last;
  const pieces = cutAtOrigin(fill, { x: 0, y: 0, w, h }, stocks, translateRegion(less, -x, -y));
  return { fill, size: { w, h }, stocks, less, pieces };
}

/** A piece of the origin as it lies in a box. */
export const pieceAt = (piece: FillPiece, { x, y }: Point): FillPiece => {
  const moved = (p: Point): Point => ({ x: p.x + x, y: p.y + y });
  const region = translateRegion(piece.region, x, y);
  const { start, end, width, thickness, angle } = piece.leg;
  const { relief, on } = piece;
  return {
    column: piece.column,
    row: piece.row,
    region,
    wood: piece.wood === piece.region ? region : translateRegion(piece.wood, x, y),
    stock: piece.stock,
    lift: piece.lift,
    leg: { start: moved(start), end: moved(end), width, thickness, angle },
    ...(on !== undefined && { on }),
    ...(relief && { relief: reliefAt(relief, moved) }),
  };
};

const reliefAt = (relief: Relief, moved: (p: Point) => Point): Relief => ({
  ...relief,
  sunk: transformRegion(relief.sunk, moved),
  ...(relief.lean && { lean: { ...relief.lean, at: moved(relief.lean.at) } }),
});

const sameFill = (a: FillLike, b: FillLike): boolean =>
  a.shape === b.shape &&
  a.openings === b.openings &&
  a.stock === b.stock &&
  a.width === b.width &&
  a.pattern === b.pattern &&
  a.gap === b.gap &&
  a.angle === b.angle &&
  a.start === b.start &&
  a.flip === b.flip;

function cutAtOrigin(fill: FillLike, box: Box, stocks: Stocks, less: Region): FillPiece[] {
  const first = sectionOf(fill, stocks, fill.stock);
  const shape = regionOfShape(fill.shape, box);
  const free = fill.openings ? regionOfFill(fill, box) : shape;
  const region = less.length > 0 ? clipped(free, less) : free;
  if (!first || region.length === 0) return [];
  // Openings are cut out of what is laid out over the whole shape: rows begin where they began without them.
  const laidOver = fill.openings && less.length > 0 ? clipped(shape, less) : fill.openings ? shape : region;
  const frame = frameOf(fill, shape);
  const onFace = flipped(fill, frame);
  const toFace = ringsOf(fill, onFace);
  const sizes = settingOf(fill, stocks);
  const pieces: FillPiece[] = [];
  for (const cell of cellsOf(asFlipped(fill), groundOf(frame, laidOver, onFace, toFace), sizes)) {
    const cut = cutOut(cell, region, toFace, sizes);
    const { column, row, stock, on } = cell;
    const lift = cell.over || on !== undefined ? first.thickness : 0;
    if (cut) pieces.push({ column, row, stock, lift, ...cut, ...(on !== undefined && { on }) });
  }
  return pieces;
}

/** How many pieces a fill has at most, counted without cutting them and no further than to `most` and one. */
export function countOfFill(fill: FillLike, box: Box, stocks: Stocks, most: number): number {
  const region = regionOfShape(fill.shape, box);
  const of = settingOf(fill, stocks);
  if (stocksOfFill(fill).some((id) => of.widthOf(id) <= 0) || region.length === 0) return 1;
  let count = 0;
  const { room } = frameOf(fill, region);
  const ground: Ground = { room, reach: () => [0, room.w] };
  for (const _ of cellsOf(asFlipped(fill), ground, of)) if (++count > most) break;
  return count;
}

/** Every stock that a fill names. */
export const stocksOfFill = ({ stock, pattern }: Pick<Fill, 'stock' | 'pattern'>): readonly string[] =>
  pattern.form === 'battened' ? [stock, pattern.stock] : [stock];

/** Width and thickness of what is sawn from a stock: those of its boards, or as wide as it is ripped from sheet. */
function sectionOf({ width = RIPPED }: Pick<Fill, 'width'>, stocks: Stocks, id: string) {
  const stock = stocks.get(id);
  return stock?.form === 'sheet' ? { width, thickness: stock.thickness } : section(stock, false);
}

/** The width of each stock, none of one that is not there, and the largest sheet of the fill's own. */
export function settingOf(fill: Pick<Fill, 'width' | 'stock'>, stocks: Stocks): Sizes {
  const own = stocks.get(fill.stock);
  const sheets = own?.form === 'sheet' ? own.sizes : [];
  return {
    widthOf: (id) => sectionOf(fill, stocks, id)?.width ?? 0,
    thicknessOf: (id) => sectionOf(fill, stocks, id)?.thickness ?? 0,
    sheet: {
      w: Math.max(0, ...sheets.map(({ length }) => length)),
      h: Math.max(0, ...sheets.map(({ width }) => width)),
    },
  };
}

/** An edge stays the one that it is called where the pieces are turned about across. */
function asFlipped<F extends FillLike>(fill: F): F {
  const across = fill.flip === 'across' || fill.flip === 'both';
  return across ? { ...fill, start: otherStart(fill.start) } : fill;
}

/** Points of the frame on the face, turned about where the fill is. */
function flipped({ flip }: FillLike, { room, toFace }: Frame): (p: Point) => Point {
  const [along, across] = [flip === 'along' || flip === 'both', flip === 'across' || flip === 'both'];
  return ({ x, y }) => toFace({ x: along ? room.w - x : x, y: across ? room.h - y : y });
}

/** Rings of the frame on the face, counterclockwise; their first side stays along the piece. */
function ringsOf({ flip }: FillLike, onFace: (p: Point) => Point): (ring: Ring) => Ring {
  if (flip !== 'along' && flip !== 'across') return (ring) => ring.map(onFace);
  return ([a, b, c, d]) => [b, a, d, c].flatMap((p) => (p ? [onFace(p)] : []));
}

/** What is to be covered, in the frame. */
function groundOf(
  { room }: Frame,
  region: Region,
  onFace: (p: Point) => Point,
  toFace: (ring: Ring) => Ring,
): Ground {
  const origin = onFace({ x: 0, y: 0 });
  const along = subtract(onFace({ x: 1, y: 0 }), origin);
  return {
    room,
    reach: (y, width) => {
      const places = withinConvex(region, toFace(rectangle(0, y, room.w, width))).flatMap(({ outer }) =>
        outer.map((p) => dot(subtract(p, origin), along)),
      );
      return places.length > 0 ? [Math.min(...places), Math.max(...places)] : [0, 0];
    },
  };
}

function cutOut(
  cell: Cell,
  region: Region,
  toFace: (ring: Ring) => Ring,
  { thicknessOf, widthOf }: Sizes,
): Pick<FillPiece, 'region' | 'wood' | 'leg' | 'relief'> | null {
  const seen = withinConvex(region, toFace(cell.seen));
  if (areaOf(seen) <= 0) return null;
  const board = toFace(cell.wood);
  const wood = cell.wood === cell.seen ? seen : withinConvex(region, board);
  const thickness = thicknessOf(cell.stock);
  const leg = legOf(board, wood, cell.lean?.depth ?? thickness);
  const within = (rings: readonly Ring[]): Region =>
    rings.flatMap((ring) => withinConvex(wood, toFace(ring)));
  const shown = cell.between ? within(cell.between) : seen;
  if (shown.length === 0) return null;
  if (cell.lean) {
    const relief = leaning(cell.lean, { board, seen, wood }, widthOf(cell.stock), thickness);
    return { region: shown, wood, leg, relief };
  }
  if (!cell.sunk) return { region: shown, wood, leg };
  const { rings, side, width, depth } = cell.sunk;
  const sunk = within(rings);
  const area = side === 'groove' ? areaOf(sunk) : 0;
  // Both walls of a groove are painted beside its bottom.
  const beyond = width > 0 ? (2 * depth * area) / width : 0;
  return { region: shown, wood, leg, relief: { sunk, side, depth, lacking: area * depth, beyond } };
}

/** A slat by its length: less wood than where it lies, and its face and both edges are painted. */
function leaning(
  { depth, ...lean }: NonNullable<Cell['lean']>,
  { board, seen, wood }: { readonly board: Ring; readonly seen: Region; readonly wood: Region },
  width: Mm,
  thickness: Mm,
): Relief {
  const [a, b, c] = board as [Point, Point, Point];
  const across = subtract(c, b);
  const length = areaOf(wood) / Math.hypot(across.x, across.y);
  const area = areaOf(seen);
  return {
    ...{ sunk: [], side: 'groove', depth: 0 },
    lacking: area * depth - length * width * thickness,
    beyond: Math.max(0, length * (width + 2 * thickness) - area),
    lean: { ...lean, at: a, across: unit(across) },
  };
}

/** The center line of a board over what is left of it, from left to right or upward. */
function legOf(board: Ring, wood: Region, thickness: number): Leg {
  const [a, b] = board as [Point, Point];
  const forward = b.x > a.x + DUST || (Math.abs(b.x - a.x) <= DUST && b.y > a.y);
  const along = unit(forward ? subtract(b, a) : subtract(a, b));
  const across = { x: -along.y, y: along.x };
  const corners = wood.flatMap(({ outer }) => outer);
  const own = boxOfPoints(corners.map((p) => ({ x: dot(p, along), y: dot(p, across) })));
  const onFace = (x: number): Point => {
    const y = own.y + own.h / 2;
    return { x: along.x * x + across.x * y, y: along.y * x + across.y * y };
  };
  return {
    start: onFace(own.x),
    end: onFace(own.x + own.w),
    width: own.h,
    thickness,
    angle: angleOf(along),
  };
}
