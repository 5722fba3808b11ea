import type { Check } from '../check/check.ts';
import { isLettered } from '../design/made.ts';
import { UNDRIVEN } from '../fastening/driven.ts';
import { glueFor, glueUnder } from '../fastening/glue.ts';
import type { Fastened, FasteningPlan } from '../fastening/result.ts';
import { union } from '../geometry/clip.ts';
import { perimeterOf, translateRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { END_KINDS } from '../joinery/end/table.ts';
import { labelPieces } from '../joinery/label.ts';
import { lengthsOf } from '../joinery/lengths.ts';
import type { Joinery, Piece, Solid } from '../joinery/piece.ts';
import { roundedAlone } from '../joinery/shown.ts';
import type { LaidLetters, LaidPart } from '../layout/laid.ts';
import { papersOf } from '../layout/papers.ts';
import type { CutOut } from '../lettering/cut-out.ts';
import { addUp } from '../list/totals.ts';
import type { Glue, Stock } from '../materials/types.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Liters, Mm } from '../measure/units.ts';
import type { SignPlan } from './types.ts';

/** Letters sawn from sheet, for the rooms that cut, weigh and sweep. */
export interface LetterWork {
  readonly pieces: readonly Piece[];
  readonly solids: readonly Solid[];
  readonly checks: readonly Check[];
}

interface LetterInput {
  readonly parts: readonly LaidPart[];
  readonly signs: readonly SignPlan[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly kerf: Mm;
  readonly measure: MeasureStyle;
}

/**
 * The cut-out letters of all signs as pieces of sheet that lie on their signs. A piece takes the rectangle
 * around its letter with a kerf's width left on every side, so that the saw that follows the outline has wood
 * to run in.
 *
 * Checks: `part.unknown-stock` (error) where letters are to be made of a stock that is not there, or that is
 * no sheet.
 */
export function planLetters({ parts, signs, stocks, kerf, measure }: LetterInput): LetterWork {
  const pieces: Piece[] = [];
  const solids: Solid[] = [];
  const checks: Check[] = [];
  for (const { id, at, cutOuts } of signs) {
    const sign = parts.filter(isLettered).find((p) => p.id === id);
    if (!sign || cutOuts.length === 0) continue;
    const named = stockOf(sign);
    const stock = stocks.get(named ?? '');
    if (stock?.form !== 'sheet') {
      const figures = { stock: named ?? '' };
      checks.push({ code: 'part.unknown-stock', severity: 'error', parts: [id], figures });
      continue;
    }
    cutOuts.forEach((cutOut, i) => {
      const placed = translateRegion(cutOut.region, at.x, at.y);
      const piece = pieceOf(letterId(id, i), cutOut, placed, sign, stock, kerf);
      pieces.push({ ...piece, label: '', shown: roundedAlone(piece, measure) });
      solids.push(solidOf(placed, sign, stock, cutOut.finish ?? sign.lettering.finish));
    });
  }
  return { pieces, solids, checks };
}

const letterId = (sign: string, index: number): string => `${sign}#letter-${index + 1}`;

/** Whether a piece is one of the letters of a sign. */
export const isLetterOf = (sign: string, { id, part }: Pick<Piece, 'id' | 'part'>): boolean =>
  part === sign && id.startsWith(`${sign}#letter-`);

/** What the letters are made of: the sign's own stock where nothing else is chosen. */
const stockOf = ({ lettering, stock }: LaidLetters): string | null => lettering.stock ?? stock;

function pieceOf(
  id: string,
  { label, region, box }: CutOut,
  placed: Region,
  sign: LaidLetters,
  stock: Stock,
  kerf: Mm,
): Omit<Piece, 'label' | 'shown'> {
  const own = (ring: readonly Point[]) => ring.map((p) => ({ x: p.x - box.x, y: p.y - box.y }));
  const outline = region.flatMap(({ outer }) => own(outer));
  const end = END_KINDS.sawn.settle({ miter: 0, secondMiter: null, with: null, stock, corner: null });
  return {
    id,
    part: sign.id,
    name: `${sign.name} ${label}`,
    stock: stock.id,
    form: stock.form,
    ...lengthsOf(outline, [end, end], kerf),
    margin: kerf,
    width: box.h,
    thickness: stock.thickness,
    ends: [end, end],
    fit: { inPlace: false, allowance: 0 },
    outline,
    holes: region.flatMap(({ holes }) => holes.map(own)),
    notches: [],
    placed,
    z0: sign.z1,
    z1: sign.z1 + stock.thickness,
    grain: 'any',
  };
}

const solidOf = (region: Region, sign: LaidLetters, stock: Stock, finish: string): Solid => ({
  part: sign.id,
  kind: 'sign',
  region,
  z0: sign.z1,
  z1: sign.z1 + stock.thickness,
  stock: stock.id,
  finish,
  on: sign.id,
});

/** Joinery with the letters among its pieces, all marked anew so that no two kinds share a mark. */
export function withLetters(
  joinery: Joinery,
  letters: LetterWork,
  stocks: ReadonlyMap<string, Stock>,
): Joinery {
  if (letters.pieces.length === 0) return joinery;
  const all = [...joinery.pieces, ...letters.pieces];
  const shown = all.map((piece) => piece.shown);
  return { ...joinery, pieces: labelPieces(all, shown, stocks) };
}

/** Letters are glued on, a bead along the strokes: half as long as their outline is around; papers of prints whole. */
export function withLetterGlue(
  plan: FasteningPlan,
  { solids }: LetterWork,
  laid: readonly LaidPart[],
  glue: Glue | null,
): FasteningPlan {
  const amounts = new Map<string, Liters>();
  for (const { part, region } of solids) addUp(amounts, part, glueFor(glue, perimeterOf(region) / 2));
  for (const [first, ...others] of glue ? papersOf(laid) : []) {
    const paper = others.length > 0 ? union([first, ...others].map(({ region }) => region)) : first.region;
    addUp(amounts, first.id, glueUnder(paper));
  }
  if (amounts.size === 0) return plan;
  const parts = plan.parts.map((p): Fastened => {
    const more = amounts.get(p.part);
    // A sign that is fastened in two ways comes twice: its letters' glue goes with the first.
    amounts.delete(p.part);
    return more === undefined ? p : { ...p, glue: p.glue + more };
  });
  // Letters without a board are fastened by themselves.
  for (const [part, more] of amounts) parts.push({ part, how: 'glue', ...UNDRIVEN, glue: more });
  return { ...plan, parts, glue: parts.reduce((sum, p) => sum + p.glue, 0) };
}
