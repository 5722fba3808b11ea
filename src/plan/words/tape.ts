import type { Point } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { ENDS } from '../../joinery/bar.ts';
import { endCurve, isSquareEnded } from '../../joinery/lengths.ts';
import type { Measured, Piece, Scribed, TapeCorner } from '../../joinery/piece.ts';
import type { Layout } from '../../layout/laid.ts';
import { formatReading } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';

/** How the tape lies that reads the length of a piece. Of its edges the left one lies up, show face up. */
export interface TapeWords {
  readonly edge: { readonly [E in Measured['edge']]: string };
  readonly corner: { readonly [C in TapeCorner]: string };
  readonly along: (edge: string, from: string, to: string) => string;
  /** Said where an end is beveled, so that the back of the piece is of another length. */
  readonly onShowFace: (tape: string) => string;
  /** What is left to do at an end that no saw cuts, and how deep its curve is. */
  readonly curved: (depth: string) => string;
  /** How far what is cut straight is bent, by the radius of its inner edge. */
  readonly bent: (radius: string) => string;
  /** What comes off an edge that is scribed to the bed, and where most of it. */
  readonly scribed: (edge: string, most: string, where: string) => string;
  readonly scribedAt: {
    readonly [E in 'start' | 'end' | 'both']: string;
  } & { readonly from: (start: string) => string };
  /** What a tape read in place, beside what was planned. */
  readonly read: {
    readonly lead: (measures: string) => string;
    readonly edge: (edge: string, read: string, planned: string) => string;
    readonly diagonal: (read: string) => string;
    readonly follow: (names: string) => string;
    readonly alone: string;
  };
}

/** Which edge and which corners a length is read between; empty where any edge tells the same. */
export function tapeWords(piece: Piece, words: TapeWords): string {
  if (isSquareEnded(piece)) return '';
  const { edge, from, to } = piece.measured;
  const named = words.edge[edge];
  const tape = edge === 'overall' ? named : words.along(named, words.corner[from], words.corner[to]);
  return piece.ends.some(({ bevel }) => bevel !== 0) ? words.onShowFace(tape) : tape;
}

/**
 * What is left to do with a bar once it is cut: its edges are scribed, it is bent, or its ends are marked from their pattern, with the larger depth
 * of their curves; empty where nothing is.
 */
export function curveWords(piece: Piece, words: TapeWords, measure: MeasureStyle): string {
  return [shapeWords(piece, words, measure), ...scribeWords(piece, words, measure)]
    .filter((text) => text !== '')
    .join('; ');
}

/** What is planed off a bar's edges, with where the most of it; small depths count as those of curves do. */
const scribeWords = (piece: Piece, words: TapeWords, measure: MeasureStyle): string[] =>
  (piece.scribed ?? []).map((one) =>
    words.scribed(
      words.edge[one.edge],
      formatReading(one.most, { ...measure, fraction: '32' }),
      whereScribed(one, piece, words.scribedAt, measure),
    ),
  );

/** At an end, at both where as much comes off there, else so far from the start. */
function whereScribed(
  { edge, most, at, line }: Scribed,
  { outline, width }: Piece,
  words: TapeWords['scribedAt'],
  measure: MeasureStyle,
): string {
  const long = outline.reduce((longest, { x }) => Math.max(longest, x), 0);
  const off = ({ y }: Point) => (edge === 'left' ? width - y : y);
  const ends = [line[0], line.at(-1)].map((p) => p !== undefined && most - off(p) < NO_MATTER);
  if (ends[0] && ends[1]) return words.both;
  if (at < NO_MATTER || ends[0]) return words.start;
  return long - at < NO_MATTER || ends[1] ? words.end : words.from(formatReading(at, measure));
}

/** What is taken off within this is as much, half of a thirty-second of an inch; common practice, no source. */
const NO_MATTER = 25.4 / 64;

function shapeWords(piece: Piece, words: TapeWords, measure: MeasureStyle): string {
  if (piece.bent) return words.bent(formatReading(piece.bent.radius, measure));
  const depths = ENDS.map((end) => endCurve(piece, end)?.depth ?? 0).filter((depth) => depth > SAME_PLACE);
  // How deep a curve is counts where it is less than an eighth of an inch too.
  return depths.length > 0
    ? words.curved(formatReading(Math.max(...depths), { ...measure, fraction: '32' }))
    : '';
}

/** What a tape read of a piece in place, each measure with the planned one; empty where nothing was. */
export function readWords(
  { fit: { read } }: Pick<Piece, 'fit'>,
  words: TapeWords,
  measure: MeasureStyle,
): string {
  if (!read) return '';
  const told = (mm: number): string => formatReading(mm, measure);
  const edges = (['left', 'right'] as const).flatMap((side) => {
    const edge = read[side];
    return edge ? [words.read.edge(words.edge[side], told(edge.read), told(edge.planned))] : [];
  });
  const diagonal = read.diagonal === undefined ? [] : [words.read.diagonal(told(read.diagonal))];
  return words.read.lead([...edges, ...diagonal].join(', '));
}

/** Who is elsewhere for what a tape read of a part's piece; empty where it was not measured. */
export function followWords(
  part: string,
  layout: Pick<Layout, 'read'>,
  words: TapeWords,
  name: (part: string) => string,
): string {
  const followers = layout.read?.find((one) => one.part === part)?.followers;
  if (!followers) return '';
  return followers.length > 0 ? words.read.follow(followers.map(name).join(', ')) : words.read.alone;
}
