import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { readOf } from './asRead.ts';
import { type Bar, ENDS, type End, toFace } from './bar.ts';
import { atOrigin, type Draft, type Placed, type Stretch } from './draft.ts';
import { returnReach } from './end/return.ts';
import { END_KINDS } from './end/table.ts';
import { type Edge, type Lengths, lengthsOf, longEdges } from './lengths.ts';
import type { PieceEnd } from './piece.ts';
import type { SawnBar } from './saw.ts';
import { scribedEdges, scribedOff } from './scribe.ts';

/** The pieces of the lengths of one strip or run: the lengths in order, then their returns. */
export function stickPieces(lengths: readonly SawnBar[], allowance: number): Placed[] {
  const bodies = lengths.map((length) => bodyOf(length, allowance));
  const returns = lengths.flatMap((length) => ENDS.map((end) => returnAt(length, end)));
  return numbered([...bodies, ...returns].filter((placed) => placed !== null));
}

function returnAt({ bar, returns }: SawnBar, end: End): Placed | null {
  const footprint = returns[end];
  const draft = footprint && returnOf(bar, end, [footprint]);
  return draft ? { draft, kind: 'stick', stretch: null } : null;
}

/** Several pieces of one part are told apart by a number. */
function numbered(pieces: readonly Placed[]): Placed[] {
  if (pieces.length < 2) return [...pieces];
  return pieces.map((placed, i) => ({
    ...placed,
    draft: { ...placed.draft, id: `${placed.draft.part}#${i + 1}` },
  }));
}

function bodyOf(length: SawnBar, allowance: number): Placed | null {
  const { bar, ends } = length;
  const base = baseOf(bar);
  if (!base) return null;
  const { fit } = bar.laid.spec;
  const { plannedMiters: miters } = length;
  const taken = readOf(bar);
  const read = taken && miters ? { ...taken, miters } : undefined;
  const left = fit && !read ? allowance : 0;
  const { outline, notches } = shapeOf(length);
  const scribed = scribedEdges(bar, length.outline);
  return {
    draft: {
      ...base,
      ...('legs' in bar.laid && { leg: bar.leg }),
      ...lengthsOf(outline, ends),
      ends,
      fit: { inPlace: fit, allowance: left, ...(read ? { read } : {}) },
      outline,
      notches,
      placed: scribedOff(bar, length.seen),
      ...(scribed.length > 0 && { scribed }),
    },
    kind: 'stick',
    stretch: fit ? null : stretchOf(length),
  };
}

/** Outline and notches in the piece's own coordinates. */
function shapeOf({ outline, notches }: SawnBar): Pick<Draft, 'outline' | 'notches'> {
  const own = atOrigin(
    outline,
    notches.map((notch) => notch.outline),
  );
  return {
    outline: own.outline,
    notches: notches.map(({ depth, side, miter }, i) => {
      const ring = pick(own.holes, i);
      const { x, w } = boxOfPoints(ring);
      return { from: x, to: x + w, depth, side, miter, outline: ring };
    }),
  };
}

/** Copes reach over what they meet, and fill no span by their own length. */
function stretchOf({ bar, ends, outline }: SawnBar): Stretch | null {
  if (ends.some((end) => end.cut === 'cope')) return null;
  const { left, right } = longEdges({ outline, ends });
  const onFace = (edge: Edge | null) => edge && { start: toFace(bar, edge.from), end: toFace(bar, edge.to) };
  return { left: onFace(left), right: onFace(right) };
}

/** The fields that do not depend on the cuts; null for stock that is in no table, which cannot be cut. */
function baseOf(
  bar: Bar,
): Omit<Draft, keyof Lengths | 'ends' | 'fit' | 'outline' | 'notches' | 'placed'> | null {
  const { laid, stock } = bar;
  if (!stock) return null;
  return {
    id: laid.id,
    part: laid.id,
    name: laid.name,
    stock: stock.id,
    form: stock.form,
    margin: 0,
    width: bar.width,
    thickness: bar.thickness,
    holes: [],
    z0: laid.z0,
    z1: laid.z1,
    grain: stock.form === 'sheet' && !stock.grain ? 'any' : 'along',
  };
}

/** A mitered return: as long at its face as the molding stands out, running out to nothing at its back. */
function returnOf(bar: Bar, end: End, placed: Region): Draft | null {
  const base = baseOf(bar);
  if (!base) return null;
  const mitered = END_KINDS.return.settle({
    miter: 0,
    secondMiter: null,
    with: bar.laid.id,
    stock: bar.stock,
    corner: null,
  });
  const back: PieceEnd = END_KINDS.square.settle({
    miter: 0,
    secondMiter: null,
    with: null,
    stock: bar.stock,
    corner: null,
  });
  const [l, w] = [returnReach(bar.stock, bar.width, bar.thickness), bar.width];
  const outline = returnOutline(l, w, end === 'start' ? 'end' : 'start', mitered.long);
  const ends = end === 'start' ? ([back, mitered] as const) : ([mitered, back] as const);
  return {
    ...base,
    ...lengthsOf(outline, ends),
    ends,
    fit: { inPlace: false, allowance: 0 },
    notches: [],
    outline,
    placed,
  };
}

/** A rectangle whose bevel hides behind its face, or, of sprung molding, the triangle that its miter leaves. */
function returnOutline(l: Mm, w: Mm, miteredAt: End, long: PieceEnd['long']): Point[] {
  const corners = [
    { x: 0, y: 0 },
    { x: l, y: 0 },
    { x: l, y: w },
    { x: 0, y: w },
  ];
  const cutOff = { x: miteredAt === 'start' ? 0 : l, y: long === 'left' ? 0 : w };
  return long === 'both' ? corners : corners.filter((p) => p.x !== cutOff.x || p.y !== cutOff.y);
}
