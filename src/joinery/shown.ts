import { dot, subtract } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { roundLength, shareOut, stepOf } from '../measure/round.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import { TOUCH } from './bar.ts';
import type { Placed, Stretch } from './draft.ts';
import type { Shown } from './piece.ts';

interface StretchEnd {
  readonly piece: number;
  readonly at: Point;
  /** Unit vector out of the piece. */
  readonly out: Point;
}

/**
 * Lengths as told to a person. Square-ended pieces in one line that stop against the same pieces, or against
 * each other, fill one span: they are rounded together, so that their sum is the wood of the span. All
 * others are rounded by themselves.
 *
 * @param widths width of the strip or run with a laid id: how far apart two pieces may lie that meet there
 */
export function shownLengths(
  pieces: readonly Placed[],
  style: MeasureStyle,
  widths: ReadonlyMap<string, Mm>,
): Shown[] {
  const shown = pieces.map(({ draft }) => roundedAlone(draft, style));
  for (const chain of chainsOf(pieces, linksOf(pieces, widths))) {
    const lengths = chain.map((i) => pieces[i]?.draft.length ?? 0);
    const whole = lengths.reduce((sum, length) => sum + length, 0);
    const shares = shareOut(whole, lengths, stepOf(style));
    chain.forEach((piece, k) => {
      const length = roundLength(shares[k] ?? 0, style);
      const own = shown[piece];
      if (own) shown[piece] = { ...own, length, edges: { left: length, right: length } };
    });
  }
  return shown;
}

/** Measures of a piece that shares no span. */
export function roundedAlone({ length, width, edges }: Shown, style: MeasureStyle): Shown {
  const told = (mm: Mm | null): Mm | null => mm && roundLength(mm, style);
  return {
    length: roundLength(length, style),
    width: roundLength(width, style),
    edges: { left: told(edges.left), right: told(edges.right) },
  };
}

/** Neighbors of every piece in its line. */
type Links = ReadonlyMap<number, readonly number[]>;

function linksOf(pieces: readonly Placed[], widths: ReadonlyMap<string, Mm>): Links {
  const links = new Map<number, number[]>();
  const link = (i: number, j: number): void => {
    const known = links.get(i);
    if (known) known.push(j);
    else links.set(i, [j]);
  };
  for (const [key, ends] of endsByMeeting(pieces)) {
    const room = (widths.get(key) ?? 0) + TOUCH;
    ends.forEach((a, i) => {
      for (const b of ends.slice(i + 1)) {
        if (a.piece === b.piece || !inLine(a, b, room)) continue;
        link(a.piece, b.piece);
        link(b.piece, a.piece);
      }
    });
  }
  return links;
}

/** Ends by what they stop against, and, for pieces end to end, by the two of them. */
function endsByMeeting(pieces: readonly Placed[]): Map<string, StretchEnd[]> {
  const groups = new Map<string, StretchEnd[]>();
  pieces.forEach(({ draft, stretch }, piece) => {
    if (!stretch) return;
    stretchEnds(stretch, piece).forEach((end, i) => {
      const other = draft.ends[i]?.with ?? null;
      if (other === null) return;
      for (const key of [other, [draft.part, other].sort().join('\n')]) {
        const known = groups.get(key);
        if (known) known.push(end);
        else groups.set(key, [end]);
      }
    });
  });
  return groups;
}

function stretchEnds({ start, end }: Stretch, piece: number): [StretchEnd, StretchEnd] {
  const v = subtract(end, start);
  const size = Math.hypot(v.x, v.y) || 1;
  const out = { x: v.x / size, y: v.y / size };
  return [
    { piece, at: start, out: { x: -out.x, y: -out.y } },
    { piece, at: end, out },
  ];
}

function inLine(a: StretchEnd, b: StretchEnd, room: Mm): boolean {
  if (dot(a.out, b.out) > -1 + 1e-9) return false;
  const gap = subtract(b.at, a.at);
  const along = dot(gap, a.out);
  const aside = Math.abs(gap.x * a.out.y - gap.y * a.out.x);
  return along >= -TOUCH && along <= room && aside <= TOUCH;
}

/** Rows of linked pieces, each walked from the end that lies lower left. */
function chainsOf(pieces: readonly Placed[], links: Links): number[][] {
  const seen = new Set<number>();
  const tips = [...links.keys()].filter((i) => links.get(i)?.length === 1);
  tips.sort((i, j) => placeOf(pieces, i) - placeOf(pieces, j) || i - j);
  const chains: number[][] = [];
  for (const tip of tips) {
    const chain: number[] = [];
    let at: number | undefined = tip;
    while (at !== undefined && !seen.has(at)) {
      seen.add(at);
      chain.push(at);
      at = links.get(at)?.find((next) => !seen.has(next));
    }
    if (chain.length > 1) chains.push(chain);
  }
  return chains;
}

function placeOf(pieces: readonly Placed[], i: number): number {
  const stretch = pieces[i]?.stretch;
  return stretch ? Math.min(stretch.start.x, stretch.end.x) + Math.min(stretch.start.y, stretch.end.y) : 0;
}
