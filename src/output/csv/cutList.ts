import { numbered } from '../../cutting/numbered.ts';
import { groupPieces } from '../../joinery/label.ts';
import type { Notch, PieceEnd } from '../../joinery/piece.ts';
import { formatLength } from '../../measure/format.ts';
import type { Deg } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import { styleIn } from '../../plan/words/languages.ts';
import type { Cell } from './csv.ts';

const HEAD = [
  'label',
  'quantity',
  'name',
  'stock',
  'length',
  'long_point_mm',
  'short_point_mm',
  'width_mm',
  'thickness_mm',
  'start_cut',
  'start_miter_deg',
  'start_bevel_deg',
  'start_second_miter_deg',
  'start_second_bevel_deg',
  'start_nested_miter_deg',
  'start_nested_bevel_deg',
  'start_long_edge',
  'end_cut',
  'end_miter_deg',
  'end_bevel_deg',
  'end_second_miter_deg',
  'end_second_bevel_deg',
  'end_nested_miter_deg',
  'end_nested_bevel_deg',
  'end_long_edge',
  'notches',
  'measured_in_place',
  'boards',
];

const rounded = (value: number, places: number): number => Number(value.toFixed(places)) + 0;

/** Miter and bevel; both empty where there is no such cut. */
const settingCells = (cut: { readonly miter: Deg; readonly bevel: Deg } | null): Cell[] =>
  cut ? [rounded(cut.miter, 2), rounded(cut.bevel, 2)] : [null, null];

function endCells(end: PieceEnd): Cell[] {
  return [end.cut, ...settingCells(end), ...settingCells(end.second), ...settingCells(end.nested), end.long];
}

/** `face 254-317.5, 9.525 deep`, millimeters from the start end; several parted by semicolons. */
function notchCell({ side, from, to, depth, miter }: Notch): string {
  const shoulders = miter === 0 ? '' : `, miter ${rounded(miter, 2)}`;
  return `${side} ${rounded(from, 2)}-${rounded(to, 2)}, ${rounded(depth, 3)} deep${shoulders}`;
}

/** The cut list as rows: identical pieces in one, with the boards or sheets that they come from. */
export function cutListRows(plan: Plan): Cell[][] {
  const from = sourcesOf(plan);
  const rows = groupPieces(plan.joinery.pieces).map(({ label, pieces, quantity }): Cell[] => {
    const [piece] = pieces;
    if (!piece) return [];
    const sources = [...new Set(pieces.flatMap((p) => from.get(p.id) ?? []))];
    return [
      label,
      quantity,
      piece.name,
      plan.stocks.get(piece.stock)?.name ?? piece.stock,
      formatLength(piece.shown, styleIn(plan.language, plan.design.measure)),
      rounded(piece.length, 2),
      rounded(piece.short, 2),
      rounded(piece.width, 2),
      rounded(piece.thickness, 2),
      ...endCells(piece.ends[0]),
      ...endCells(piece.ends[1]),
      piece.notches.map(notchCell).join('; '),
      piece.fit.inPlace ? 'yes' : 'no',
      sources.join(' '),
    ];
  });
  return [HEAD, ...rows.filter((row) => row.length > 0)];
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
