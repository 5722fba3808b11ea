import { KeptResults } from '../layout/kept.ts';
import { pick, under } from '../list/at.ts';
import { grouped } from '../list/grouped.ts';
import type { Stock } from '../materials/types.ts';
import type { Draft } from './draft.ts';
import type { Piece, Shown } from './piece.ts';
import { SAWN_ALIKE, sameCut } from './same.ts';

/** I and O are left out: on wood they read as 1 and 0. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
const FORM_ORDER: Record<Stock['form'], number> = { flat: 0, shaped: 1, sheet: 2 };

interface Numbered {
  readonly draft: Draft;
  readonly shown: Shown;
  readonly index: number;
}

/**
 * Marks for the wood: a letter for each stock (boards, moldings, then sheets, each by id), and numbers from
 * the longest piece down. Identical pieces share one. Pieces of one length that are told differently,
 * because they share a span with others, are not identical to the person who cuts them.
 */
export function labelPieces(
  drafts: readonly Draft[],
  shown: readonly Shown[],
  stocks: ReadonlyMap<string, Stock>,
  kept: KeptResults = new KeptResults(),
): Piece[] {
  const labels = new Map<number, string>();
  stocksInOrder(drafts).forEach((stock, i) => {
    const own = drafts
      .map((draft, index) => ({ draft, shown: pick(shown, index), index }))
      .filter(({ draft }) => draft.stock === stock);
    alikeFirst(own, stocks.get(stock) ?? null).forEach((group, k) => {
      for (const { index } of group) labels.set(index, `${letters(i)}${k + 1}`);
    });
  });
  return drafts.map((draft, i) => {
    const label = under(labels, i);
    const told = pick(shown, i);
    const { left, right } = told.edges;
    const facts = [label, told.length, told.width, left, right];
    return kept.of(draft, 'piece', facts, () => ({ ...draft, label, shown: told }));
  });
}

function stocksInOrder(drafts: readonly Draft[]): string[] {
  const forms = new Map(drafts.map((draft) => [draft.stock, draft.form]));
  return [...forms]
    .sort(([a, f], [b, g]) => FORM_ORDER[f] - FORM_ORDER[g] || (a < b ? -1 : a > b ? 1 : 0))
    .map(([stock]) => stock);
}

/** A, B, … Z, AA, AB, … */
function letters(index: number): string {
  const last = LETTERS.charAt(index % LETTERS.length);
  return index < LETTERS.length ? last : letters(Math.floor(index / LETTERS.length) - 1) + last;
}

/** Groups of identical pieces, the longest first, then the widest, then in order of the parts. */
function alikeFirst(pieces: readonly Numbered[], stock: Stock | null): Numbered[][] {
  const byLength = [...pieces].sort((a, b) => b.draft.length - a.draft.length || a.index - b.index);
  const groups: Numbered[][] = [];
  for (const piece of byLength) {
    const group = alike(groups, piece, stock);
    if (group) group.push(piece);
    else groups.push([piece]);
  }
  return groups
    .map((group) => group.sort((a, b) => a.index - b.index))
    .sort((a, b) => compareGroups(a[0], b[0]));
}

/** The group of the piece, looked for among those that are no longer than the tolerance over it. */
function alike(groups: readonly Numbered[][], piece: Numbered, stock: Stock | null): Numbered[] | null {
  for (let i = groups.length - 1; i >= 0; i--) {
    const group = groups[i];
    const first = group?.[0];
    if (!group || !first || first.draft.length > piece.draft.length + SAWN_ALIKE) return null;
    if (toldAlike(first.shown, piece.shown) && sameCut(first.draft, piece.draft, stock)) return group;
  }
  return null;
}

/** Told by the same figures; a piece that lies turned end for end has its edges the other way around. */
function toldAlike(a: Shown, b: Shown): boolean {
  const inOrder = ({ edges }: Shown) => [edges.left ?? 0, edges.right ?? 0].sort((p, q) => p - q);
  return a.length === b.length && a.width === b.width && inOrder(a).join() === inOrder(b).join();
}

function compareGroups(a: Numbered | undefined, b: Numbered | undefined): number {
  if (!a || !b) return 0;
  const longer = b.draft.length - a.draft.length;
  if (Math.abs(longer) > SAWN_ALIKE) return longer;
  return b.shown.length - a.shown.length || b.draft.width - a.draft.width || a.index - b.index;
}

/** Identical pieces and how many there are. */
export interface PieceGroup {
  readonly label: string;
  readonly pieces: readonly [Piece, ...Piece[]];
  readonly quantity: number;
}

/** The pieces by their label, in the order of letters and numbers. */
export function groupPieces(pieces: readonly Piece[]): PieceGroup[] {
  return [...grouped(pieces, ({ label }) => label)]
    .sort(([a], [b]) => compareLabels(a, b))
    .map(([label, own]) => ({ label, pieces: own, quantity: own.length }));
}

/** A before B before AA, and 2 before 10. */
export function compareLabels(a: string, b: string): number {
  const parts = (label: string) => {
    const at = label.search(/\d/);
    return { letters: label.slice(0, at), number: Number(label.slice(at)) };
  };
  const [p, q] = [parts(a), parts(b)];
  if (p.letters.length !== q.letters.length) return p.letters.length - q.letters.length;
  if (p.letters !== q.letters) return p.letters < q.letters ? -1 : 1;
  return p.number - q.number;
}
