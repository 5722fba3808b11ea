import { boxOfPoints } from '../../geometry/ring.ts';
import type { Point, Ring } from '../../geometry/shape.ts';
import type { Piece } from '../../joinery/piece.ts';
import type { SheetPlacement } from '../result.ts';
import { blank } from './stock.ts';

/**
 * Outline and openings of a piece as they lie on the sheet, in the middle of their blank; turned pieces lie
 * a quarter counterclockwise, so that nothing is mirrored.
 */
export function ringsOnSheet(place: SheetPlacement, piece: Piece): Ring[] {
  const box = boxOfPoints(piece.outline);
  const { w, h } = blank(piece);
  const [left, low] = [(w - box.w) / 2 - box.x, (h - box.h) / 2 - box.y];
  const lie = (p: Point): Point => {
    const [x, y] = [p.x + left, p.y + low];
    return place.turned ? { x: place.x + place.w - y, y: place.y + x } : { x: place.x + x, y: place.y + y };
  };
  return [piece.outline, ...piece.holes].map((ring) => ring.map(lie));
}
