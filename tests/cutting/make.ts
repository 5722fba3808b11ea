import type { Owned, Shop } from '../../src/design/schema.ts';
import { lengthsOf } from '../../src/joinery/lengths.ts';
import type { Piece, PieceEnd } from '../../src/joinery/piece.ts';
import type { FlatStock, ShapedStock, SheetStock, Stock } from '../../src/materials/types.ts';
import { radians } from '../../src/measure/units.ts';

/** Pieces, stocks and shops for the tests of cutting. */

export const end = (miter = 0, bevel = 0): PieceEnd => ({
  cut: miter === 0 && bevel === 0 ? 'square' : 'miter',
  miter,
  bevel,
  long: miter === 0 ? 'both' : miter > 0 ? 'left' : 'right',
  with: null,
  second: null,
  nested: null,
});

/** A board piece of the given long-point length, drawn with its slanted ends. */
export function boardPiece(
  id: string,
  length: number,
  miters: readonly [number, number] = [0, 0],
  change: Partial<Piece> = {},
): Piece {
  const width = change.width ?? 40;
  const fall = (m: number, up: boolean) =>
    (up ? m < 0 : m > 0) ? width * Math.tan(radians(Math.abs(m))) : 0;
  const outline = [
    { x: fall(miters[0], false), y: 0 },
    { x: length - fall(miters[1], false), y: 0 },
    { x: length - fall(miters[1], true), y: width },
    { x: fall(miters[0], true), y: width },
  ];
  const ends = [end(miters[0]), end(miters[1])] as const;
  return {
    id,
    part: `part-${id}`,
    label: id,
    name: id,
    stock: 'strip',
    form: 'flat',
    ...lengthsOf(outline, ends),
    margin: 0,
    width,
    thickness: 19,
    ends,
    fit: { inPlace: false, allowance: 0 },
    outline,
    holes: [],
    notches: [],
    placed: [],
    z0: 0,
    z1: 19,
    grain: 'along',
    shown: { length, width, edges: { left: length, right: length } },
    ...change,
  };
}

export const sheetPiece = (id: string, w: number, h: number, grain: Piece['grain'] = 'any'): Piece =>
  boardPiece(id, w, [0, 0], {
    stock: 'sheet',
    form: 'sheet',
    width: h,
    grain,
    outline: [
      { x: 0, y: 0 },
      { x: w, y: 0 },
      { x: w, y: h },
      { x: 0, y: h },
    ],
  });

export const flat = (lengths: FlatStock['lengths'], width = 40): FlatStock => ({
  form: 'flat',
  id: 'strip',
  name: 'strip',
  material: 'pine',
  width,
  thickness: 19,
  lengths,
});

export const shaped = (lengths: ShapedStock['lengths']): ShapedStock => ({
  form: 'shaped',
  id: 'strip',
  name: 'molding',
  material: 'pine',
  width: 40,
  thickness: 19,
  girth: 70,
  section: [
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 0, y: 19 },
  ],
  lengths,
});

export const sheet = (sizes: SheetStock['sizes'], grain = false): SheetStock => ({
  form: 'sheet',
  id: 'sheet',
  name: 'sheet',
  material: 'mdf',
  thickness: 6,
  grain,
  sizes,
});

export const shop = (change: Partial<Shop> = {}): Shop => ({
  boardKerf: 3,
  sheetKerf: 3,
  endTrim: 0,
  edgeTrim: 0,
  saw: { miter: 50, bevel: 45 },
  fitAllowance: 10,
  keepOffcut: 300,
  ...change,
});

export const ownedBoard = (id: string, length: number, count = 1, defects: Owned['defects'] = []): Owned => ({
  id,
  stock: 'strip',
  length,
  count,
  defects,
});

export const stockMap = (...stocks: Stock[]): ReadonlyMap<string, Stock> =>
  new Map(stocks.map((s) => [s.id, s]));
