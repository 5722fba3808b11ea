import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Polygon } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import type { Stock } from '../materials/types.ts';
import { atOrigin, type Placed } from './draft.ts';
import { END_KINDS } from './end/table.ts';
import { lengthsOf } from './lengths.ts';
import type { Piece } from './piece.ts';

/**
 * The pieces of a panel or sign: one, unless its openings part it. A piece taller than wide is told lying
 * down like a stile, its foot at the start: its length is its longer side.
 */
export function sheetPieces(laid: Laid<'panel'> | Laid<'sign'>, stock: Stock | null): Placed[] {
  if (!stock) return [];
  return laid.region.map((polygon, i) => ({
    draft: panelPiece(laid, stock, polygon, laid.region.length > 1 ? `${laid.id}#${i + 1}` : laid.id),
    kind: 'panel',
    stretch: null,
  }));
}

function panelPiece(
  laid: Laid<'panel'> | Laid<'sign'>,
  stock: Stock,
  polygon: Polygon,
  id: string,
): Placed['draft'] {
  const upright = isTaller(polygon.outer);
  const lay = (p: Point): Point => (upright ? { x: p.y, y: -p.x } : p);
  return sheetPiece({ laid, stock, polygon, id }, lay, grainOf(laid, stock, upright));
}

interface SheetPart {
  readonly laid: LaidPart;
  readonly stock: Stock;
  /** Where it lies on the face. */
  readonly polygon: Polygon;
  readonly id: string;
}

/** One piece of sheet, sawn to an outline that `lay` turns onto the bench. */
export function sheetPiece(
  { laid, stock, polygon, id }: SheetPart,
  lay: (p: Point) => Point,
  grain: Piece['grain'],
): Placed['draft'] {
  const { outline, holes, box } = atOrigin(
    polygon.outer.map(lay),
    polygon.holes.map((ring) => ring.map(lay)),
  );
  const plain = isRectangle(outline);
  const end = END_KINDS[plain ? 'square' : 'sawn'].settle({
    miter: 0,
    secondMiter: null,
    with: null,
    stock,
    corner: null,
  });
  return {
    id,
    part: laid.id,
    name: laid.name,
    stock: stock.id,
    form: stock.form,
    ...lengthsOf(outline, [end, end]),
    margin: 0,
    width: box.h,
    thickness: stock.thickness,
    ends: [end, end],
    fit: { inPlace: false, allowance: 0 },
    outline,
    holes,
    notches: [],
    placed: [polygon],
    z0: laid.z0,
    z1: laid.z0 + stock.thickness,
    grain,
  };
}

const isTaller = (ring: readonly Point[]): boolean => {
  const box = boxOfPoints(ring);
  return box.h > box.w + SAME_LENGTH;
};

const isRectangle = (outline: readonly Point[]): boolean =>
  outline.length === 4 &&
  outline.every((p, i) => {
    const q = outline[(i + 1) % 4];
    return q !== undefined && (Math.abs(p.x - q.x) < SAME_LENGTH || Math.abs(p.y - q.y) < SAME_LENGTH);
  });

/** The grain asked for, in the piece's own coordinates; stock without grain may turn as it likes. */
function grainOf(laid: Laid<'panel'> | Laid<'sign'>, stock: Stock, upright: boolean): Piece['grain'] {
  const { grain } = laid.spec;
  if (grain === 'any' || (stock.form === 'sheet' && !stock.grain)) return 'any';
  return (grain === 'up') === upright ? 'along' : 'across';
}
