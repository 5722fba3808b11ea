import loadHighs from 'highs';

/**
 * Exact answers of an integer programming solver for boards of several priced lengths, all ends square:
 * every pattern is a column. For tests and benches only.
 */

interface OracleBoard {
  /** Length and one kerf: pieces are given with their kerf too. */
  readonly room: number;
  readonly price: number;
  /** Most of them; absent: any number. */
  readonly count?: number;
}

interface OracleAnswer {
  readonly cost: number;
  /** Fewest bought boards at that cost. */
  readonly count: number;
  readonly patterns: number;
}

export type Oracle = (
  sizes: readonly { readonly size: number; readonly count: number }[],
  boards: readonly OracleBoard[],
) => OracleAnswer;

function patternsOf(sizes: readonly { size: number; count: number }[], room: number): number[][] {
  const found: number[][] = [];
  const counts = sizes.map(() => 0);
  const go = (i: number, left: number): void => {
    const s = sizes[i];
    if (!s) {
      const open = sizes.some((t, k) => (counts[k] ?? 0) < t.count && t.size <= left + 1e-6);
      if (!open && counts.some((n) => n > 0)) found.push([...counts]);
      return;
    }
    for (let n = Math.min(s.count, Math.floor((left + 1e-6) / s.size)); n >= 0; n--) {
      counts[i] = n;
      go(i + 1, left - n * s.size);
    }
    counts[i] = 0;
  };
  go(0, room);
  return found;
}

const term = (n: number, name: string): string => `${n} ${name}`;

export async function openOracle(): Promise<Oracle> {
  const highs = await loadHighs();
  return (sizes, boards) => {
    const columns = boards.flatMap((board, b) =>
      patternsOf(sizes, board.room).map((counts) => ({ b, counts })),
    );
    const name = (j: number) => `x${j}`;
    const rows = sizes.map((s, i) => {
      const terms = columns.flatMap(({ counts }, j) => (counts[i] ? [term(counts[i] ?? 0, name(j))] : []));
      return ` c${i}: ${terms.join(' + ')} >= ${s.count}`;
    });
    boards.forEach((board, b) => {
      const terms = columns.flatMap((c, j) => (c.b === b ? [name(j)] : []));
      if (board.count !== undefined && terms.length > 0)
        rows.push(` l${b}: ${terms.join(' + ')} <= ${board.count}`);
    });
    const priceOf = (b: number) => boards[b]?.price ?? 0;
    const boughtOf = (b: number) => (boards[b]?.count === undefined ? 1 : 0);
    // Money first; a board more or less weighs less than any difference in price.
    const goal = columns.map(({ b }, j) => term(priceOf(b) * 1000 + boughtOf(b), name(j))).join(' + ');
    const text = `Minimize\n obj: ${goal}\nSubject To\n${rows.join('\n')}\nGeneral\n ${columns.map((_, j) => name(j)).join(' ')}\nEnd\n`;
    const solution = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
    if (solution.Status !== 'Optimal') throw new Error(`oracle: ${solution.Status}`);
    let cost = 0;
    let count = 0;
    columns.forEach(({ b }, j) => {
      const column = solution.Columns[name(j)];
      const n = column && 'Primal' in column ? Math.round(column.Primal) : 0;
      cost += n * priceOf(b);
      count += n * boughtOf(b);
    });
    return { cost, count, patterns: columns.length };
  };
}
