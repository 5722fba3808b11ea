import { isStraight } from '../design/reading.ts';
import type { TapeRead } from '../design/schema.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import { type Bar, ENDS, type End } from './bar.ts';
import type { Piece } from './piece.ts';
import { type Cut, miterOf, outlineOf } from './trim.ts';

/** Where an end is cut: x = at + slope * y, from the center line. */
type Slanted = Pick<Cut, 'at' | 'slope'>;
type Ends<C> = Readonly<Record<End, C>>;

/** What a tape read where a bar is to go; nothing where it was not measured. */
export const readOf = ({ laid, leg }: Pick<Bar, 'laid' | 'leg'>): TapeRead | undefined =>
  isStraight(laid)
    ? laid.spec.read
    : laid.spec.reads?.legs === laid.legs.length
      ? laid.spec.reads.at[leg]
      : undefined;

/** The straight cut that makes an end by itself; null where there are more, or another line. */
function soleCut(outline: ReturnType<typeof outlineOf>, end: End): Cut | null {
  const cuts = new Set(outline.flatMap(({ edge }) => (edge?.end === end ? [edge.cut] : [])));
  const [cut] = cuts;
  return cut && cuts.size === 1 && !cut.line && cut.kind !== 'return' && cut.kind !== 'cope' ? cut : null;
}

/** Where a cut crosses the left and the right edge. */
const crossings = ({ at, slope }: Slanted, width: Mm): readonly [Mm, Mm] => [
  at + (slope * width) / 2,
  at - (slope * width) / 2,
];

/** A cut through a place on each edge. */
const through = (left: Mm, right: Mm, width: Mm): Slanted => ({
  at: (left + right) / 2,
  slope: Math.abs(left - right) < SAME_LENGTH ? 0 : (left - right) / width,
});

/**
 * Both ends of a band as a tape reads it where it is to go; null where no piece has such edges and diagonal.
 *
 * One edge: both ends keep their angle, and the end is cut where the edge has its length. Both: what the two differ by
 * more than planned is the slant of one end, or half of each. With a diagonal nothing is left to choose, since width,
 * edges and diagonal make two triangles.
 */
function endsAsRead({ start, end }: Ends<Slanted>, width: Mm, read: TapeRead): Ends<Slanted> | null {
  const [from, to] = [crossings(start, width), crossings(end, width)];
  const planned = [to[0] - from[0], to[1] - from[1]] as const;
  const off = [read.left, read.right].map(
    (edge, i) => edge && edge.read - (i === 0 ? planned[0] : planned[1]),
  );
  const [left, right] = [off[0] ?? off[1] ?? 0, off[1] ?? off[0] ?? 0];
  const both = (left + right) / 2;
  const slant = (left - right) / 2;
  const { diagonal } = read;
  const reach = diagonal === undefined ? null : diagonal > width ? Math.sqrt(diagonal ** 2 - width ** 2) : 0;
  if (reach === 0) return null;
  // With a diagonal the middle of the start stays where it was.
  const lead = reach === null ? 0 : (reach - planned[1] - right) / 2;
  const share = { start: 0, end: 1, both: 0.5 }[read.slant];
  const now =
    reach === null
      ? {
          start: through(from[0] - slant * (1 - share), from[1] + slant * (1 - share), width),
          end: through(to[0] + both + slant * share, to[1] + both - slant * share, width),
        }
      : {
          start: through(start.at - lead, start.at + lead, width),
          end: through(start.at - lead + planned[0] + left, start.at - lead + reach, width),
        };
  const [low, high] = [crossings(now.start, width), crossings(now.end, width)];
  return high[0] - low[0] > SAME_LENGTH && high[1] - low[1] > SAME_LENGTH ? now : null;
}

/** The cuts of a bar as a tape read it, and the angles that were planned. */
export type CutsAsRead = Ends<Cut> & { readonly miters: readonly [Deg, Deg] };

/** Null where its ends are no single straight cuts, or nothing can be as it was read. */
export function cutsAsRead(bar: Bar, cuts: Ends<readonly Cut[]>): CutsAsRead | null {
  const read = readOf(bar);
  const outline = outlineOf(bar.width, cuts.start, cuts.end);
  const [start, end] = ENDS.map((one) => soleCut(outline, one));
  if (!read || !start || !end) return null;
  const now = endsAsRead({ start, end }, bar.width, read);
  // What is slanted is a miter, where it is not cut against something.
  const as = (cut: Cut, next: Slanted): Cut => ({
    ...cut,
    ...next,
    kind: cut.kind === 'butt' ? 'butt' : next.slope === 0 ? 'square' : 'miter',
  });
  const miters = [miterOf(start, 'start'), miterOf(end, 'end')] as const;
  return now && { start: as(start, now.start), end: as(end, now.end), miters };
}

const SAWN_ACROSS: ReadonlySet<string> = new Set(['square', 'miter', 'butt', 'plunge']);

/** The edges of a piece as they were planned, without what is left on it to be cut to fit. */
export function plannedEdges({
  edges,
  fit: { read, allowance },
}: Piece): Record<'left' | 'right', Mm> | null {
  const { left, right } = edges;
  if (left === null || right === null) return null;
  // An edge that was not read is as much longer as the one that was.
  const grown = (edge: TapeRead['left']): Mm => (edge ? edge.read - edge.planned : 0);
  return {
    left: read?.left?.planned ?? left - allowance - grown(read?.right),
    right: read?.right?.planned ?? right - allowance - grown(read?.left),
  };
}

/** Whether a tape can tell how a piece is to be cut: a strip cut to fit, each end by one straight cut. */
export const isReadable = (piece: Piece): boolean =>
  piece.fit.inPlace &&
  piece.form !== 'sheet' &&
  piece.notches.length === 0 &&
  plannedEdges(piece) !== null &&
  piece.ends.every(({ cut, second }) => second === null && SAWN_ACROSS.has(cut));

/** What a piece comes to by a reading, before a plan is made with it; null where nothing can be so. */
export interface PieceAsRead {
  readonly left: Mm;
  readonly right: Mm;
  /** Of each end, as `PieceEnd` counts them. */
  readonly miters: readonly [Deg, Deg];
}

export function pieceAsRead(piece: Piece, read: TapeRead): PieceAsRead | null {
  const planned = plannedEdges(piece);
  if (!planned) return null;
  const { width } = piece;
  const [first, last] = piece.fit.read?.miters ?? [piece.ends[0].miter, piece.ends[1].miter];
  const ends = endsAsRead(
    {
      start: { at: 0, slope: -Math.tan(radians(first)) },
      end: { at: (planned.left + planned.right) / 2, slope: Math.tan(radians(last)) },
    },
    width,
    read,
  );
  if (!ends) return null;
  const [low, high] = [crossings(ends.start, width), crossings(ends.end, width)];
  const angle = (slope: number): Deg => degrees(Math.atan(slope)) + 0;
  return {
    left: high[0] - low[0],
    right: high[1] - low[1],
    miters: [angle(-ends.start.slope), angle(ends.end.slope)],
  };
}
