import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Polygon } from '../geometry/shape.ts';
import type { Stock } from '../materials/types.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { type CutsAsRead, cutsAsRead } from './asRead.ts';
import { type Bar, type End, TOUCH, toFace } from './bar.ts';
import { returnReach } from './end/return.ts';
import { END_KINDS } from './end/table.ts';
import type { EndCut, Notch, PieceEnd } from './piece.ts';
import type { Touch } from './touch.ts';
import { type Corner, type Cut, keep, miterOf, outlineOf } from './trim.ts';
import { type BarWork, endCuts, type Gap, type Halving } from './work.ts';

/**
 * What is sawn of a bar between two of its ends, after its joints, and what of it is seen on the face; a bar may come to
 * several.
 */
export interface SawnBar {
  readonly bar: Bar;
  /** In the bar's coordinates, wood for copes and for fitting included. */
  readonly outline: readonly Corner[];
  readonly ends: readonly [PieceEnd, PieceEnd];
  readonly notches: readonly NotchedOut[];
  /** On the face; what is halved into another piece is counted there. */
  readonly seen: readonly Polygon[];
  /** Footprint of the returns at the start and the end, which is no longer in `seen`. */
  readonly returns: { readonly start: Polygon | null; readonly end: Polygon | null };
  /** What its ends lie against as they were laid, without a joint that cut them. */
  readonly touches: readonly Touch[];
  /** Where it is cut to what a tape read in place: the angles of its ends that were planned. */
  readonly plannedMiters: readonly [Deg, Deg] | null;
}

/** A notch in the bar's coordinates. */
export type NotchedOut = Pick<Notch, 'depth' | 'side' | 'miter' | 'outline'> & Pick<Halving, 'with'>;

/** What sawing needs to know beyond the bar itself. */
export interface SawContext {
  readonly fitAllowance: Mm;
  readonly stockOf: (laidId: string) => Stock | null;
  /** What the side of an end from `p` to `q`, cut as it was laid, lies against. */
  readonly against: (p: Point, q: Point) => Touch | null;
}

interface EndPairs {
  readonly start: readonly Cut[];
  readonly end: readonly Cut[];
}

/** Saws a bar into its lengths, from start to end; stretches that nothing is left of are dropped. */
export function sawBar(work: BarWork, context: SawContext): SawnBar[] {
  const whole = { start: endCuts(work, 'start'), end: endCuts(work, 'end') };
  const read = work.gaps.length === 0 ? cutsAsRead(work.bar, whole) : null;
  return between(whole, work.gaps)
    .map((cuts) => sawLength(work, cuts, { ...context, read }))
    .filter((length) => length !== null);
}

/** The stretches that gaps part a bar into: each lies beyond all gaps before it and before all after it. */
function between(whole: EndPairs, gaps: readonly Gap[]): EndPairs[] {
  const ordered = [...gaps].sort((a, b) => a.near.at + a.far.at - b.near.at - b.far.at);
  return Array.from({ length: ordered.length + 1 }, (_, i) => ({
    start: [...whole.start, ...ordered.slice(0, i).map((gap) => gap.far)],
    end: [...whole.end, ...ordered.slice(i).map((gap) => gap.near)],
  }));
}

/** On the face a piece lies as it was laid; its wood is cut to what a tape read there. */
interface LengthContext extends SawContext {
  readonly read: CutsAsRead | null;
}

function sawLength(work: BarWork, cuts: EndPairs, context: LengthContext): SawnBar | null {
  const { bar } = work;
  const asLaid = outlineOf(bar.width, cuts.start, cuts.end);
  if (asLaid.length < 3) return null;
  const { read } = context;
  const toFit = bar.laid.spec.fit && !read;
  const allowance = toFit ? context.fitAllowance : 0;
  const meant: EndPairs = read ? { start: [read.start], end: [read.end] } : cuts;
  const sawn: EndPairs = {
    start: meant.start.map((cut) => shifted(cut, -reachOf(bar, cut, context))),
    end: meant.end.map((cut) => shifted(cut, reachOf(bar, cut, context) + allowance)),
  };
  const wood = outlineOf(bar.width, sawn.start, sawn.end);
  const met = { start: meetsOf(bar, 'start', asLaid, context), end: meetsOf(bar, 'end', asLaid, context) };
  const ends: [PieceEnd, PieceEnd] = [
    endOf(bar, 'start', wood, met.start, toFit),
    endOf(bar, 'end', wood, met.end, toFit),
  ];
  const touches = [...met.start, ...met.end].map(({ touch }) => touch).filter((touch) => touch !== null);
  const notches = notchesOf(work, sawn);
  return {
    bar,
    outline: wood,
    ends,
    notches,
    ...onFace(work, cuts, ends),
    touches,
    plannedMiters: read?.miters ?? null,
  };
}

/** The notches of one length; what another length of the bar was halved for leaves none in it. */
function notchesOf({ bar, halvings }: BarWork, sawn: EndPairs): NotchedOut[] {
  return halvings
    .map(({ near, far, depth, side, with: other }) => ({
      depth,
      side,
      with: other,
      miter: miterOf(far, 'end'),
      outline: outlineOf(bar.width, [...sawn.start, near], [...sawn.end, far]),
    }))
    .filter(({ outline }) => outline.length >= 3 && boxOfPoints(outline).w > TOUCH)
    .sort((a, b) => boxOfPoints(a.outline).x - boxOfPoints(b.outline).x);
}

function reachOf(bar: Bar, cut: Cut, context: SawContext): Mm {
  const through = cut.with === null ? null : context.stockOf(cut.with);
  return END_KINDS[cut.kind].reach({ through, ownThickness: bar.thickness });
}

function shifted(cut: Cut, by: Mm): Cut {
  if (by === 0) return cut;
  const moved = { ...cut, at: cut.at + by };
  return cut.line ? { ...moved, line: cut.line.map((p) => ({ x: p.x + by, y: p.y })) } : moved;
}

/** The sides of an outline that cuts of one end made, from the left edge to the right edge. */
function endSides(outline: readonly Corner[], end: End): { p: Corner; q: Corner; cut: Cut }[] {
  const sides = outline.flatMap((p, i) => {
    const q = outline[(i + 1) % outline.length];
    return q && p.edge?.end === end ? [{ p, q, cut: p.edge.cut }] : [];
  });
  return sides.sort((a, b) => b.p.y + b.q.y - a.p.y - a.q.y);
}

/** What one side of an end meets: by its joint, or because it was laid against it. */
interface Met {
  readonly id: string | null;
  readonly touch: Touch | null;
}

function meetsOf(bar: Bar, end: End, asLaid: readonly Corner[], context: SawContext): Met[] {
  return endSides(asLaid, end).map(({ p, q, cut }) => {
    if (cut.with !== null || cut.kind === 'return') return { id: cut.with, touch: null };
    const touch = context.against(toFace(bar, p), toFace(bar, q));
    return { id: touch?.other.laid.id ?? null, touch };
  });
}

function endOf(bar: Bar, end: End, wood: readonly Corner[], met: readonly Met[], toFit: boolean): PieceEnd {
  const sides = endSides(wood, end);
  const left = sides[0];
  const right = sides[sides.length - 1];
  if (!left || !right) return END_KINDS.square.settle(bareCase(bar));
  const meets = met.find(({ id }) => id !== null)?.id ?? null;
  const followed = sides.some(({ cut }) => cut.line);
  const pointed = sides.length > 1 && !followed;
  const kind = followed ? 'sawn' : pointed ? 'point' : kindOf(end, left.cut, meets, toFit);
  return END_KINDS[kind].settle({
    ...bareCase(bar),
    miter: followed ? 0 : miterOf(left.cut, end),
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
function kindOf(end: End, cut: Cut, meets: string | null, toFit: boolean): EndCut {
  const stops = cut.with === null && meets !== null && cut.kind !== 'return';
  const kind = stops ? 'butt' : cut.kind;
  const plain = kind === 'butt' || kind === 'square';
  return toFit && end === 'end' && plain ? 'plunge' : kind;
}

/** The footprints of a length: its body, in parts where it is halved into others, and its returns. */
function onFace(
  work: BarWork,
  cuts: EndPairs,
  ends: readonly [PieceEnd, PieceEnd],
): Pick<SawnBar, 'seen' | 'returns'> {
  const { bar, laps } = work;
  const whole = { start: [...cuts.start, ...laps.start], end: [...cuts.end, ...laps.end] };
  const outline = outlineOf(bar.width, whole.start, whole.end);
  const returns = {
    start: ends[0].cut === 'return' ? returnCut(bar, 'start', outline) : null,
    end: ends[1].cut === 'return' ? returnCut(bar, 'end', outline) : null,
  };
  const body = {
    start: returns.start ? [...whole.start, returns.start] : whole.start,
    end: returns.end ? [...whole.end, returns.end] : whole.end,
  };
  return {
    seen: between(body, work.lapGaps)
      .map(({ start, end }) => polygonOf(bar, outlineOf(bar.width, start, end)))
      .filter((polygon) => polygon !== null),
    returns: {
      start: returns.start && polygonOf(bar, keep(outline, 'end', returns.start)),
      end: returns.end && polygonOf(bar, keep(outline, 'start', returns.end)),
    },
  };
}

/** Where a return leaves the body: as far back from the end as the molding stands out of the face. */
function returnCut(bar: Bar, end: End, outline: readonly Corner[]): Cut {
  const xs = outline.map((p) => p.x);
  const reach = returnReach(bar.stock, bar.width, bar.thickness);
  const at = end === 'start' ? Math.min(...xs) + reach : Math.max(...xs) - reach;
  return { at, slope: 0, kind: 'return', with: null, corner: null };
}

const polygonOf = (bar: Bar, outline: readonly Corner[]): Polygon | null =>
  outline.length >= 3 ? { outer: outline.map((p) => toFace(bar, p)), holes: [] } : null;
