import type { Point, Polygon } from '../geometry/shape.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { type Bar, ENDS, type End, toFace } from './bar.ts';
import { END_KINDS } from './end/table.ts';
import type { EndCut, PieceEnd } from './piece.ts';
import type { Touch } from './touch.ts';
import { type Corner, type Cut, keep, miterOf, outlineOf } from './trim.ts';
import { type BarWork, endCuts, type Gap } from './work.ts';

/** A length of a bar after its joints: what is sawn, and what of it is seen on the face. */
export interface Length {
  readonly bar: Bar;
  /** In the bar's coordinates, wood for copes and for fitting included. */
  readonly outline: readonly Corner[];
  readonly ends: readonly [PieceEnd, PieceEnd];
  /** Long point to long point, and short point to short point. */
  readonly long: Mm;
  readonly short: Mm;
  /** On the face; what is halved into another piece is counted there. */
  readonly seen: readonly Polygon[];
  /** Footprint of the returns at the start and the end, which is no longer in `seen`. */
  readonly returns: { readonly start: Polygon | null; readonly end: Polygon | null };
  /** What its ends lie against as they were laid, without a joint that cut them. */
  readonly touches: readonly Touch[];
}

/** What sawing needs to know beyond the bar itself. */
export interface SawContext {
  readonly fitAllowance: Mm;
  readonly stockOf: (laidId: string) => Stock | null;
  /** What the side of an end from `p` to `q`, cut as it was laid, lies against. */
  readonly against: (bar: Bar, p: Point, q: Point) => Touch | null;
}

/** Saws a bar into its lengths, from start to end; stretches that nothing is left of are dropped. */
export function sawBar(work: BarWork, context: SawContext): Length[] {
  const gaps = [...work.gaps].sort(byPlace);
  const lengths: Length[] = [];
  for (let i = 0; i <= gaps.length; i++) {
    const cuts = {
      start: [...endCuts(work, 'start'), ...gaps.slice(0, i).map((gap) => gap.far)],
      end: [...endCuts(work, 'end'), ...gaps.slice(i).map((gap) => gap.near)],
    };
    const length = sawLength(work, cuts, context);
    if (length) lengths.push(length);
  }
  return lengths;
}

const byPlace = (a: Gap, b: Gap): number => a.near.at + a.far.at - b.near.at - b.far.at;

interface EndPairs {
  readonly start: readonly Cut[];
  readonly end: readonly Cut[];
}

function sawLength(work: BarWork, cuts: EndPairs, context: SawContext): Length | null {
  const { bar } = work;
  const asLaid = outlineOf(bar.width, cuts.start, cuts.end);
  if (asLaid.length < 3 || spanOf(asLaid).long <= 0) return null;
  const allowance = bar.laid.spec.fit ? context.fitAllowance : 0;
  const wood = outlineOf(
    bar.width,
    cuts.start.map((cut) => shifted(cut, -reachOf(bar, cut, context))),
    cuts.end.map((cut) => shifted(cut, reachOf(bar, cut, context) + allowance)),
  );
  const met = { start: meetsOf(bar, 'start', asLaid, context), end: meetsOf(bar, 'end', asLaid, context) };
  const ends: [PieceEnd, PieceEnd] = [endOf(bar, 'start', wood, met.start), endOf(bar, 'end', wood, met.end)];
  const seen = outlineOf(bar.width, [...cuts.start, ...work.laps.start], [...cuts.end, ...work.laps.end]);
  const returns = { start: returnAt(bar, 'start', ends[0], seen), end: returnAt(bar, 'end', ends[1], seen) };
  const touches = [...met.start, ...met.end].map(({ touch }) => touch).filter((touch) => touch !== null);
  return { bar, outline: wood, ends, ...spanOf(wood), ...onFace(work, seen, returns), touches };
}

function reachOf(bar: Bar, cut: Cut, context: SawContext): Mm {
  const through = cut.with === null ? null : context.stockOf(cut.with);
  return END_KINDS[cut.kind].reach({ through, ownThickness: bar.thickness });
}

const shifted = (cut: Cut, by: Mm): Cut => (by === 0 ? cut : { ...cut, at: cut.at + by });

/** The sides of an outline that cuts of one end made, from the left edge to the right edge. */
function endSides(outline: readonly Corner[], end: End): { p: Corner; q: Corner; cut: Cut }[] {
  const sides = outline.flatMap((p, i) => {
    const q = outline[(i + 1) % outline.length];
    return q && p.edge?.end === end ? [{ p, q, cut: p.edge.cut }] : [];
  });
  return sides.sort((a, b) => b.p.y + b.q.y - a.p.y - a.q.y);
}

function spanOf(outline: readonly Corner[]): { long: Mm; short: Mm } {
  const xs = (end: End): number[] => endSides(outline, end).flatMap(({ p, q }) => [p.x, q.x]);
  const starts = xs('start');
  const ends = xs('end');
  return {
    long: Math.max(...ends) - Math.min(...starts),
    short: Math.min(...ends) - Math.max(...starts),
  };
}

/** What one side of an end meets: by its joint, or because it was laid against it. */
interface Met {
  readonly id: string | null;
  readonly touch: Touch | null;
}

function meetsOf(bar: Bar, end: End, asLaid: readonly Corner[], context: SawContext): Met[] {
  return endSides(asLaid, end).map(({ p, q, cut }) => {
    if (cut.with !== null || cut.kind === 'return') return { id: cut.with, touch: null };
    const touch = context.against(bar, toFace(bar, p), toFace(bar, q));
    return { id: touch?.other.laid.id ?? null, touch };
  });
}

function endOf(bar: Bar, end: End, wood: readonly Corner[], met: readonly Met[]): PieceEnd {
  const sides = endSides(wood, end);
  const left = sides[0];
  const right = sides[sides.length - 1];
  if (!left || !right) return END_KINDS.square.settle(bareCase(bar));
  const meets = met.find(({ id }) => id !== null)?.id ?? null;
  const pointed = sides.length > 1;
  const kind = pointed ? 'point' : kindOf(bar, end, left.cut, meets);
  return END_KINDS[kind].settle({
    ...bareCase(bar),
    miter: miterOf(left.cut, end),
    secondMiter: pointed ? miterOf(right.cut, end) : null,
    with: meets,
    corner: left.cut.corner,
  });
}

const bareCase = (bar: Bar) => ({
  miter: 0,
  secondMiter: null,
  with: null,
  stock: bar.stock,
  corner: null,
});

/** An end cut as it was laid stops against what it meets; the shop's allowance is left on the far end. */
function kindOf(bar: Bar, end: End, cut: Cut, meets: string | null): EndCut {
  const stops = cut.with === null && meets !== null && cut.kind !== 'return';
  const kind = stops ? 'butt' : cut.kind;
  const plain = kind === 'butt' || kind === 'square';
  return bar.laid.spec.fit && end === 'end' && plain ? 'plunge' : kind;
}

/** The footprint of a return: as far back from the end as the molding stands out of the face. */
function returnAt(bar: Bar, end: End, pieceEnd: PieceEnd, seen: readonly Corner[]): Corner[] | null {
  if (pieceEnd.cut !== 'return') return null;
  const cut = returnCut(bar, end, seen);
  return keep(seen, end === 'start' ? 'end' : 'start', cut);
}

function returnCut(bar: Bar, end: End, seen: readonly Corner[]): Cut {
  const xs = seen.map((p) => p.x);
  const at = end === 'start' ? Math.min(...xs) + bar.thickness : Math.max(...xs) - bar.thickness;
  return { at, slope: 0, kind: 'return', with: null, corner: null };
}

function onFace(
  work: BarWork,
  seen: readonly Corner[],
  returns: { readonly start: Corner[] | null; readonly end: Corner[] | null },
): Pick<Length, 'seen' | 'returns'> {
  const { bar } = work;
  let body = seen;
  for (const end of ENDS) {
    if (returns[end]) body = keep(body, end, returnCut(bar, end, seen));
  }
  const polygon = (outline: readonly Corner[] | null): Polygon | null =>
    outline && outline.length >= 3 ? { outer: outline.map((p) => toFace(bar, p)), holes: [] } : null;
  const parts = [...work.lapGaps]
    .sort(byPlace)
    .reduce<readonly Corner[][]>(
      (outlines, gap) => outlines.flatMap((o) => [keep(o, 'end', gap.near), keep(o, 'start', gap.far)]),
      [[...body]],
    );
  return {
    seen: parts.map(polygon).filter((p) => p !== null),
    returns: { start: polygon(returns.start), end: polygon(returns.end) },
  };
}
