import { numbered } from '../../cutting/numbered.ts';
import { groupPieces, type PieceGroup } from '../../joinery/label.ts';
import type { Notch, Piece, PieceEnd } from '../../joinery/piece.ts';
import { formatLength } from '../../measure/format.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import { LANGUAGES, styleIn } from '../../plan/words/languages.ts';
import { pieceNames } from '../../plan/words/pieces.ts';
import { sayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { tapeWords } from '../../plan/words/tape.ts';
import { type Cell, type Column, rowsOf } from './csv.ts';

const rounded = (value: number, places: number): number => Number(value.toFixed(places)) + 0;

/** The piece lies with its left end on the left, show face up. */
const LONG_EDGE = { left: 'upper', right: 'lower', both: 'both', middle: 'middle' } as const;

/** Miter and bevel of one of the cuts of an end; both empty where there is no such cut. */
const settingColumns = (
  head: string,
  cutOf: (group: PieceGroup) => { readonly miter: Deg; readonly bevel: Deg } | null,
): Column<PieceGroup>[] =>
  (['miter', 'bevel'] as const).map((angle) => [
    `${head}_${angle}_deg`,
    (group) => {
      const cut = cutOf(group);
      return cut && rounded(cut[angle], 2);
    },
  ]);

function endColumns(head: string, endOf: (piece: Piece) => PieceEnd): Column<PieceGroup>[] {
  const end = ({ pieces: [piece] }: PieceGroup) => endOf(piece);
  return [
    [`${head}_cut`, (group) => end(group).cut],
    ...settingColumns(head, end),
    ...settingColumns(`${head}_second`, (group) => end(group).second),
    ...settingColumns(`${head}_nested`, (group) => end(group).nested),
    [`${head}_long_edge`, (group) => LONG_EDGE[end(group).long]],
  ];
}

/** `face 254-317.5, 9.525 deep`, millimeters from the left end; several parted by semicolons. */
function notchCell({ side, from, to, depth, miter }: Notch, decimalMark: string): string {
  const n = (value: number, places: number) => String(rounded(value, places)).replace('.', decimalMark);
  const shoulders = miter === 0 ? '' : `, miter ${n(miter, 2)}`;
  return `${side} ${n(from, 2)}-${n(to, 2)}, ${n(depth, 3)} deep${shoulders}`;
}

/** The cut list as rows: identical pieces in one, with the boards or sheets that they come from. */
export function cutListRows(plan: Plan): Cell[][] {
  const from = sourcesOf(plan);
  const say = sayFor(plan);
  const style = styleIn(plan.language, plan.design.measure);
  const { decimalMark } = LANGUAGES[plan.language].notation;
  const figure = (head: string, of: (piece: Piece) => Mm | null): Column<PieceGroup> => [
    head,
    ({ pieces: [piece] }) => {
      const value = of(piece);
      return value && rounded(value, 2);
    },
  ];
  const columns: Column<PieceGroup>[] = [
    ['label', ({ label }) => label],
    ['quantity', ({ quantity }) => quantity],
    ['name', ({ pieces }) => pieceNames(pieces, say).join(', ')],
    ['stock', ({ pieces: [{ stock }] }) => plan.stocks.get(stock)?.name ?? stock],
    ['length', ({ pieces: [piece] }) => formatLength(piece.shown.length, style)],
    ['width', ({ pieces: [piece] }) => formatLength(piece.shown.width, style)],
    figure('length_mm', ({ length }) => length),
    ['measured', ({ pieces: [piece] }) => tapeWords(piece, PLAN_WORDS.en.tape)],
    figure('upper_edge_mm', ({ edges }) => edges.left),
    figure('lower_edge_mm', ({ edges }) => edges.right),
    figure('overall_mm', ({ overall }) => overall),
    figure('width_mm', ({ width }) => width),
    figure('thickness_mm', ({ thickness }) => thickness),
    ...endColumns('left_end', ({ ends }) => ends[0]),
    ...endColumns('right_end', ({ ends }) => ends[1]),
    ['notches', ({ pieces: [piece] }) => piece.notches.map((one) => notchCell(one, decimalMark)).join('; ')],
    ['measured_in_place', ({ pieces: [piece] }) => (piece.fit.inPlace ? 'yes' : 'no')],
    ['boards', ({ pieces }) => [...new Set(pieces.flatMap(({ id }) => from.get(id) ?? []))].join(' ')],
  ];
  return rowsOf(columns, groupPieces(plan.joinery.pieces));
}

/** Which board or sheet each piece is cut from, numbered as the packet numbers them. */
function sourcesOf(plan: Plan): ReadonlyMap<string, string> {
  const from = new Map<string, string>();
  for (const { number, cut: board } of numbered(plan.cutting.boards)) {
    for (const cut of board.cuts) from.set(cut.piece, `board ${number}`);
  }
  for (const { number, cut: sheet } of numbered(plan.cutting.sheets)) {
    for (const placed of sheet.placements) from.set(placed.piece, `sheet ${number}`);
  }
  return from;
}
