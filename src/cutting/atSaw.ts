import type { Piece } from '../joinery/piece.ts';
import type { BoardCut, CutBoard, CutSheet, Cutting, SheetCut, SheetPlacement } from './result.ts';

/** A board or sheet, its number among its kind, from 1, and how many of these there are. */
interface WoodRef<Kind, Wood> {
  readonly kind: Kind;
  readonly wood: Wood;
  readonly number: number;
  readonly all: number;
}
type BoardRef = WoodRef<'board', CutBoard>;
type SheetRef = WoodRef<'sheet', CutSheet>;

/** Where a piece lies along its wood, and whether end for end. */
type Lies = Pick<BoardCut, 'from' | 'to' | 'flipped'>;

/** One thing to do at the saw. Its id is what is ticked: of a piece the piece's own, as in every other list. */
export type BenchStep =
  | {
      readonly kind: 'board-piece';
      readonly id: string;
      readonly piece: Piece;
      readonly from: BoardRef;
      readonly lies: Lies;
      readonly cut: BoardCut;
    }
  | { readonly kind: 'sheet-cut'; readonly id: string; readonly from: SheetRef; readonly cut: SheetCut }
  | {
      readonly kind: 'sheet-piece';
      readonly id: string;
      readonly piece: Piece;
      readonly from: SheetRef;
      readonly lies: Lies;
      readonly place: SheetPlacement;
    }
  | {
      readonly kind: 'loose-piece';
      readonly id: string;
      readonly piece: Piece;
      readonly from: null;
      readonly lies: Lies;
    };

const NOWHERE: Lies = { from: 0, to: 0, flipped: false };

/**
 * Everything to be sawn, in the order of the cutting plan: each board from left to right, then each sheet's
 * cuts in their sequence and the pieces that they set free. Pieces that no board holds come last.
 */
export function benchSteps(cutting: Cutting, pieces: readonly Piece[]): BenchStep[] {
  const byId = new Map(pieces.map((p) => [p.id, p]));
  const boards = cutting.boards.flatMap((wood, i, { length: all }) => {
    const from: BoardRef = { kind: 'board', wood, number: i + 1, all };
    return wood.cuts.flatMap((cut): BenchStep[] => {
      const piece = byId.get(cut.piece);
      const lies = { from: cut.from, to: cut.to, flipped: cut.flipped };
      return piece ? [{ kind: 'board-piece', id: piece.id, piece, from, lies, cut }] : [];
    });
  });
  const sheets = cutting.sheets.flatMap((sheet, i, { length: all }) => {
    const from: SheetRef = { kind: 'sheet', wood: sheet, number: i + 1, all };
    return [
      ...sheet.sequence.map((cut): BenchStep => ({ kind: 'sheet-cut', id: cutId(from, cut), from, cut })),
      ...sheet.placements.flatMap((place): BenchStep[] => {
        const piece = byId.get(place.piece);
        const lies = { from: place.x, to: place.x + place.w, flipped: false };
        return piece ? [{ kind: 'sheet-piece', id: piece.id, piece, from, lies, place }] : [];
      }),
    ];
  });
  const held = new Set([...boards, ...sheets].map((s) => s.id));
  const loose = pieces
    .filter((p) => !held.has(p.id))
    .map((piece): BenchStep => ({ kind: 'loose-piece', id: piece.id, piece, from: null, lies: NOWHERE }));
  return [...boards, ...sheets, ...loose];
}

/** Tells a cut by what it does, so that a tick does not pass to another cut when the plan changes. */
const cutId = ({ wood, number }: SheetRef, cut: SheetCut): string => `${wood.stock}:${number}:${cutKey(cut)}`;

/** What a cut does on its sheet, whichever number that has. */
export const cutKey = ({ kind, fence, of }: Pick<SheetCut, 'kind' | 'fence' | 'of'>): string =>
  `${kind}:${[fence, of.x, of.y, of.w, of.h].map((v) => v.toFixed(1)).join(':')}`;

/**
 * Which steps are done: those that are ticked, and the cuts of a sheet whose pieces all are, since they cannot lie
 * there sawn before. Wood step and saw count by it.
 */
export function doneAmong(steps: readonly BenchStep[], ticked: ReadonlySet<string>): ReadonlySet<string> {
  const open = new Set(
    steps.flatMap((s) => (s.kind === 'sheet-piece' && !ticked.has(s.id) ? [s.from.number] : [])),
  );
  return new Set(
    steps
      .filter((s) => ticked.has(s.id) || (s.kind === 'sheet-cut' && !open.has(s.from.number)))
      .map(({ id }) => id),
  );
}

/** Steps of one board or sheet together, in order. */
export interface BenchGroup {
  readonly from: BenchStep['from'];
  readonly steps: readonly { readonly step: BenchStep; readonly index: number }[];
}

export function benchGroups(steps: readonly BenchStep[]): BenchGroup[] {
  const groups: { from: BenchStep['from']; steps: { step: BenchStep; index: number }[] }[] = [];
  steps.forEach((step, index) => {
    const last = groups.at(-1);
    if (last && last.from === step.from) last.steps.push({ step, index });
    else groups.push({ from: step.from, steps: [{ step, index }] });
  });
  return groups;
}

/** The first step after `at` that is not done, from the start again if need be; null when all are. */
export function nextOpen(steps: readonly BenchStep[], done: ReadonlySet<string>, at: number): number | null {
  for (let n = 1; n <= steps.length; n++) {
    const index = (at + n) % steps.length;
    const step = steps[index];
    if (step && !done.has(step.id)) return index;
  }
  return null;
}
