import type { Fill } from '../../design/schema.ts';
import { withinConvex } from '../../geometry/cut.ts';
import { angleOf, subtract, unit } from '../../geometry/point.ts';
import { areaOf } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { DUST } from '../../geometry/tolerance.ts';
import type { Stock } from '../../materials/types.ts';
import type { Leg } from '../laid.ts';
import { regionOfShape } from '../place/shape.ts';
import { section } from '../structure.ts';
import { frameOf } from './frame.ts';
import { type Cell, cellsOf } from './patterns.ts';

/** A piece of a fill, cut by its outline. */
export interface FillPiece {
  readonly column: number;
  readonly row: number;
  /** Seen on the face. */
  readonly region: Region;
  /** What is sawn: with what reaches under its neighbor. */
  readonly wood: Region;
  /** The board before the outline cuts it. */
  readonly leg: Leg;
}

type FillLike = Pick<Fill, 'shape' | 'stock' | 'pattern' | 'gap' | 'angle' | 'start' | 'overrides'>;
type Stocks = ReadonlyMap<string, Stock>;

/** The pieces of a fill in its box that something is left of, those left out by the person too. */
export function piecesOfFill(fill: FillLike, box: Box, stocks: Stocks): FillPiece[] {
  const stock = section(stocks.get(fill.stock), false);
  const region = regionOfShape(fill.shape, box);
  if (!stock || region.length === 0) return [];
  const frame = frameOf(fill, region);
  const pieces: FillPiece[] = [];
  for (const cell of cellsOf(fill, frame.room, stock.width)) {
    const piece = cutOut(cell, region, (ring) => ring.map(frame.toFace), stock.thickness);
    if (piece) pieces.push(piece);
  }
  return pieces;
}

/** How many pieces a fill has at most, counted without cutting them and no further than to `most` and one. */
export function countOfFill(fill: FillLike, box: Box, stocks: Stocks, most: number): number {
  const width = section(stocks.get(fill.stock), false)?.width ?? 0;
  const region = regionOfShape(fill.shape, box);
  if (width <= 0 || region.length === 0) return 1;
  let count = 0;
  for (const _ of cellsOf(fill, frameOf(fill, region).room, width)) if (++count > most) break;
  return count;
}

function cutOut(
  cell: Cell,
  region: Region,
  toFace: (ring: Ring) => Ring,
  thickness: number,
): FillPiece | null {
  const seen = withinConvex(region, toFace(cell.seen));
  if (areaOf(seen) <= 0) return null;
  const board = toFace(cell.wood);
  const wood = cell.wood === cell.seen ? seen : withinConvex(region, board);
  return { column: cell.column, row: cell.row, region: seen, wood, leg: legOf(board, wood, thickness) };
}

/** The center line of a board over what is left of it, from left to right or upward. */
function legOf(board: Ring, wood: Region, thickness: number): Leg {
  const [a, b] = board as [Point, Point];
  const forward = b.x > a.x + DUST || (Math.abs(b.x - a.x) <= DUST && b.y > a.y);
  const along = unit(forward ? subtract(b, a) : subtract(a, b));
  const across = { x: -along.y, y: along.x };
  const corners = wood.flatMap(({ outer }) => outer);
  const own = boxOfPoints(
    corners.map((p) => ({ x: p.x * along.x + p.y * along.y, y: p.x * across.x + p.y * across.y })),
  );
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
