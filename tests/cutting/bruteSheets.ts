/** Every edge-to-edge cut at every whole millimeter, every sharing of the pieces: small cases only. */

export interface BrutePiece {
  readonly w: number;
  readonly h: number;
  readonly turn: boolean;
}

export interface BruteSheet {
  readonly w: number;
  readonly h: number;
  readonly price: number;
  readonly count?: number;
}

/** Whether the pieces of `set` can be cut out of w by h, the kerf a whole number of millimeters. */
export function bruteFits(
  pieces: readonly BrutePiece[],
  kerf: number,
): (set: number, w: number, h: number) => boolean {
  const memo = new Map<string, boolean>();
  const can = (set: number, w: number, h: number): boolean => {
    if (set === 0) return true;
    if (w <= 0 || h <= 0) return false;
    const key = `${set}/${w}/${h}`;
    const known = memo.get(key);
    if (known !== undefined) return known;
    memo.set(key, false);
    const members = pieces.filter((_, i) => set & (1 << i));
    let ok = false;
    const [only] = members;
    // A piece that does not fill the block is cut free by trimming it, which takes nothing that is needed.
    if (members.length === 1 && only) {
      ok = (only.w <= w && only.h <= h) || (only.turn && only.h <= w && only.w <= h);
    } else {
      for (let sub = (set - 1) & set; sub > 0 && !ok; sub = (sub - 1) & set) {
        for (let cut = 1; cut < w && !ok; cut++) ok = can(sub, cut, h) && can(set ^ sub, w - cut - kerf, h);
        for (let cut = 1; cut < h && !ok; cut++) ok = can(sub, w, cut) && can(set ^ sub, w, h - cut - kerf);
      }
    }
    memo.set(key, ok);
    return ok;
  };
  return can;
}

/** Least cost, and fewest bought sheets at that cost; null when the pieces cannot be cut. */
export function bruteSheets(
  pieces: readonly BrutePiece[],
  sheets: readonly BruteSheet[],
  kerf: number,
): { cost: number; count: number } | null {
  const can = bruteFits(pieces, kerf);
  const used = sheets.map(() => 0);
  let best: { cost: number; count: number } | null = null;
  const go = (set: number, cost: number, count: number): void => {
    if (set === 0) {
      if (best === null || cost < best.cost || (cost === best.cost && count < best.count))
        best = { cost, count };
      return;
    }
    const first = set & -set;
    for (let sub = set; sub > 0; sub = (sub - 1) & set) {
      if (!(sub & first)) continue;
      sheets.forEach((s, i) => {
        if ((used[i] ?? 0) >= (s.count ?? Infinity) || !can(sub, s.w, s.h)) return;
        used[i] = (used[i] ?? 0) + 1;
        go(set ^ sub, cost + s.price, count + (s.count === undefined ? 1 : 0));
        used[i] = (used[i] ?? 0) - 1;
      });
    }
  };
  go((1 << pieces.length) - 1, 0, 0);
  return best;
}
