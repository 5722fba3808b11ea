import type { Piece } from '../../src/joinery/piece.ts';
import { radians } from '../../src/measure/units.ts';

/** Every order, every turn and every sharing of pieces among boards, tried one by one. */

export interface BruteBoard {
  readonly length: number;
  readonly price: number;
  /** How many there are; absent: any number. */
  readonly count?: number;
}

interface Slanted {
  readonly length: number;
  /** Recess of the end at the lower and the upper edge. */
  readonly left: readonly [number, number];
  readonly right: readonly [number, number];
  readonly miters: readonly [number, number];
}

function lie(p: Piece, flipped: boolean): Slanted {
  const fall = (m: number): [number, number] => {
    const t = p.width * Math.tan(radians(Math.abs(m)));
    return m > 0 ? [t, 0] : [0, t];
  };
  const [a, b] = [p.ends[0].miter, p.ends[1].miter];
  return flipped
    ? { length: p.overall, left: fall(-b), right: fall(-a), miters: [-b, -a] }
    : { length: p.overall, left: fall(a), right: fall(b), miters: [a, b] };
}

/** Least length of board that holds all of the pieces. */
export function bruteLength(pieces: readonly Piece[], kerf: number, turn: boolean): number {
  let best = Infinity;
  const along = (m: number) => kerf / Math.cos(radians(m));
  const go = (left: readonly Piece[], end: number, last: Slanted | null): void => {
    if (left.length === 0) {
      best = Math.min(best, end);
      return;
    }
    for (const [i, piece] of left.entries()) {
      for (const flipped of turn ? [false, true] : [false]) {
        const s = lie(piece, flipped);
        let at = end;
        if (last) {
          const k = Math.max(along(last.miters[1]), along(s.miters[0]));
          at = end + k - Math.min(last.right[0] + s.left[0], last.right[1] + s.left[1]);
        }
        go(
          left.filter((_, j) => j !== i),
          at + s.length,
          s,
        );
      }
    }
  };
  go(pieces, 0, null);
  return best;
}

/** Least cost and, at that cost, fewest bought boards and the longest rest (kerf not taken off). */
export function bruteBoards(
  pieces: readonly Piece[],
  boards: readonly BruteBoard[],
  kerf: number,
  turn: boolean,
): { cost: number; count: number; rest: number } | null {
  const n = pieces.length;
  const need = Array.from({ length: 1 << n }, (_, set) =>
    bruteLength(
      pieces.filter((_, i) => set & (1 << i)),
      kerf,
      turn,
    ),
  );
  let best: { cost: number; count: number; rest: number } | null = null;
  const used = boards.map(() => 0);
  const go = (set: number, cost: number, count: number, rest: number): void => {
    if (set === 0) {
      const lighter =
        best === null ||
        cost < best.cost - 1e-9 ||
        (cost < best.cost + 1e-9 && (count < best.count || (count === best.count && rest > best.rest)));
      if (lighter) best = { cost, count, rest };
      return;
    }
    const first = set & -set;
    for (let sub = set; sub > 0; sub = (sub - 1) & set) {
      if (!(sub & first)) continue;
      for (const [b, board] of boards.entries()) {
        const takes = need[sub] ?? Infinity;
        if (takes > board.length + 1e-6 || (used[b] ?? 0) >= (board.count ?? Infinity)) continue;
        used[b] = (used[b] ?? 0) + 1;
        const bought = board.count === undefined ? 1 : 0;
        go(set ^ sub, cost + board.price, count + bought, Math.max(rest, board.length - takes));
        used[b] = (used[b] ?? 0) - 1;
      }
    }
  };
  go((1 << n) - 1, 0, 0, 0);
  return best;
}
