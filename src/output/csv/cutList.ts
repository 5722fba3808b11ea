import { numbered } from '../../cutting/numbered.ts';
import { groupPieces } from '../../joinery/label.ts';
import type { Notch, PieceEnd } from '../../joinery/piece.ts';
import { formatLength } from '../../measure/format.ts';
import type { Deg } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import { LANGUAGES, styleIn } from '../../plan/words/languages.ts';
import { pieceNames } from '../../plan/words/pieces.ts';
import { sayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { tapeWords } from '../../plan/words/tape.ts';
import type { Cell } from './csv.ts';

const HEAD = [
  'label',
  'quantity',
  'name',
  'stock',
  'length',
  'width',
  'length_mm',
  'measured',
  'upper_edge_mm',
  'lower_edge_mm',
  'overall_mm',
  'width_mm',
  'thickness_mm',
  'left_end_cut',
  'left_end_miter_deg',
  'left_end_bevel_deg',
  'left_end_second_miter_deg',
  'left_end_second_bevel_deg',
  'left_end_nested_miter_deg',
  'left_end_nested_bevel_deg',
  'left_end_long_edge',
  'right_end_cut',
  'right_end_miter_deg',
  'right_end_bevel_deg',
  'right_end_second_miter_deg',
  'right_end_second_bevel_deg',
  'right_end_nested_miter_deg',
  'right_end_nested_bevel_deg',
  'right_end_long_edge',
  'notches',
  'measured_in_place',
  'boards',
];

const rounded = (value: number, places: number): number => Number(value.toFixed(places)) + 0;

const orEmpty = (value: number | null): Cell => value && rounded(value, 2);

/** Miter and bevel; both empty where there is no such cut. */
const settingCells = (cut: { readonly miter: Deg; readonly bevel: Deg } | null): Cell[] =>
  cut ? [rounded(cut.miter, 2), rounded(cut.bevel, 2)] : [null, null];

/** The piece lies with its left end on the left, show face up. */
const LONG_EDGE = { left: 'upper', right: 'lower', both: 'both', middle: 'middle' } as const;

function endCells(end: PieceEnd): Cell[] {
  return [
    end.cut,
    ...settingCells(end),
    ...settingCells(end.second),
    ...settingCells(end.nested),
    LONG_EDGE[end.long],
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
  const rows = groupPieces(plan.joinery.pieces).map(({ label, pieces, quantity }): Cell[] => {
    const [piece] = pieces;
    const sources = [...new Set(pieces.flatMap((p) => from.get(p.id) ?? []))];
    return [
      label,
      quantity,
      pieceNames(pieces, say).join(', '),
      plan.stocks.get(piece.stock)?.name ?? piece.stock,
      formatLength(piece.shown.length, style),
      formatLength(piece.shown.width, style),
      rounded(piece.length, 2),
      tapeWords(piece, PLAN_WORDS.en.tape),
      orEmpty(piece.edges.left),
      orEmpty(piece.edges.right),
      rounded(piece.overall, 2),
      rounded(piece.width, 2),
      rounded(piece.thickness, 2),
      ...endCells(piece.ends[0]),
      ...endCells(piece.ends[1]),
      piece.notches
        .map((notch) => notchCell(notch, LANGUAGES[plan.language].notation.decimalMark))
        .join('; '),
      piece.fit.inPlace ? 'yes' : 'no',
      sources.join(' '),
    ];
  });
  return [HEAD, ...rows];
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
