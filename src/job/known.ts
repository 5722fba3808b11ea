import { factsOf } from '../design/job/record.ts';
import type { Fact, FactOf } from '../design/job/schema.ts';
import type { Owned } from '../design/schema.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Piece } from '../joinery/piece.ts';
import { at } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { radians } from '../measure/units.ts';
import { isMarked, MARKED, type Mark } from './mark.ts';

/** Which cut wood serves as which piece. */
export interface Known {
  /** By the ids of pieces. */
  readonly byPiece: ReadonlyMap<string, FactOf<'cut'>>;
  /** Cut, and nothing of the design is like it: wood on hand. */
  readonly idle: readonly FactOf<'cut'>[];
}

/**
 * Finds pieces again in what is cut. Wood that was cut for a piece serves as it while the piece is as it was; else it
 * serves as any piece that it is like, for wood does not know its name.
 */
export function knownAgain(pieces: readonly Piece[], facts: readonly Fact[], stock: Stock): Known {
  // Cut up for other pieces, it is no piece any more.
  const cutUp = new Set(factsOf(facts, 'board').map(({ of }) => of));
  const cuts = factsOf(facts, 'cut').filter((fact) => fact.stock === stock.id && !cutUp.has(fact.id));
  const byPiece = new Map<string, FactOf<'cut'>>();
  const open = new Map(pieces.filter((piece) => piece.stock === stock.id).map((piece) => [piece.id, piece]));
  const left = cuts.filter((fact) => {
    const piece = open.get(fact.piece);
    if (!piece || !isMarked(fact.mark, piece, stock)) return true;
    byPiece.set(piece.id, fact);
    open.delete(piece.id);
    return false;
  });
  const idle = left.filter((fact) => {
    const like = [...open.values()].find((piece) => isMarked(fact.mark, piece, stock));
    if (!like) return true;
    byPiece.set(like.id, fact);
    open.delete(like.id);
    return false;
  });
  return { byPiece, idle };
}

/**
 * What other pieces can be cut of wood that is sawn already: of a board the length that its slanted ends leave square,
 * of a sheet the whole rectangle, where it is one.
 */
export function usable(mark: Mark, form: Stock['form']): { length: number; width?: number } | null {
  const figure = (name: keyof typeof MARKED) => at(mark, MARKED[name]);
  if (form === 'sheet') {
    const [length, width] = [figure('boxWidth'), figure('boxHeight')];
    const whole = figure('area') * Math.max(1, figure('overall') + figure('width'));
    return Math.abs(whole - length * width) > SAME_LENGTH * (length + width) * 100 ? null : { length, width };
  }
  const slant = (miter: number, bevel: number) =>
    figure('width') * Math.tan(radians(Math.abs(miter))) +
    figure('thickness') * Math.tan(radians(Math.abs(bevel)));
  const ends = [MARKED.ends, MARKED.ends + MARKED.perEnd].map((end) =>
    Math.max(slant(at(mark, end + 1), at(mark, end + 2)), slant(at(mark, end + 3), at(mark, end + 4))),
  );
  const length = figure('overall') - at(ends, 0) - at(ends, 1);
  return length > SAME_LENGTH ? { length } : null;
}

/** Idle wood as something on hand. */
export function shelved(idle: readonly FactOf<'cut'>[], stock: Stock): Owned[] {
  return idle.flatMap(({ id, mark }) => {
    const size = usable(mark, stock.form);
    return size ? [{ id, stock: stock.id, ...size, count: 1, defects: [] }] : [];
  });
}
