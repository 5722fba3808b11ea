import type { Notch, Piece, PieceEnd } from '../../joinery/piece.ts';
import type { Deg } from '../../measure/units.ts';
import type { Packet } from './leaf.ts';

interface Setting {
  readonly miter: Deg;
  readonly bevel: Deg;
}

const isSquare = ({ miter, bevel }: Setting): boolean => miter === 0 && bevel === 0;

/** What the saw is set to: `31.6°, bevel 33.9°`. */
function settingWords({ terms, say }: Packet, { miter, bevel }: Setting): string {
  return [
    ...(miter === 0 && bevel !== 0 ? [] : [say.angle(Math.abs(miter))]),
    ...(bevel === 0 ? [] : [`${terms.saw.bevel.toLowerCase()} ${say.angle(Math.abs(bevel))}`]),
  ].join(', ');
}

/** An end in a few words: `miter 45°`, `square`, `point, upper 33.7°, lower 56.3°`, `miter 31.6°, bevel 33.9°, nested 45°`. */
export function endWords(packet: Packet, end: PieceEnd): string {
  const { terms } = packet;
  // An end that stops square against another piece is to the saw a square one.
  if (isSquare(end) && !end.second) return terms.end[end.cut === 'butt' ? 'square' : end.cut];
  const own = settingWords(packet, end);
  if (end.second) {
    return `${terms.end[end.cut]}, ${terms.cutList.twoCuts(own, settingWords(packet, end.second))}`;
  }
  const nested = end.nested ? `, ${terms.cutList.nested(settingWords(packet, end.nested))}` : '';
  return `${terms.end[end.cut]} ${own}${nested}`;
}

/** An end as it is written beside the drawing of a piece: each of its cuts, the upper one first; none for a square one. */
export function endMarks({ say }: Packet, end: PieceEnd): string[] {
  const mark = (cut: Setting): string =>
    [cut.miter, cut.bevel]
      .filter((angle) => angle !== 0)
      .map((angle) => say.angle(Math.abs(angle)))
      .join(' / ');
  if (end.second) return [end, end.second].map((cut) => (isSquare(cut) ? say.angle(0) : mark(cut)));
  return isSquare(end) ? [] : [mark(end)];
}

/** Both ends, told once when they are alike. */
export function endsWords(packet: Packet, { ends: [a, b] }: Piece): string {
  const [start, end] = [endWords(packet, a), endWords(packet, b)];
  return start === end ? start : `${start} / ${end}`;
}

/** Side and depth of a notch. */
export const notchWords = ({ terms, told }: Packet, { side, depth }: Notch): string =>
  terms.cutList.notch[side](told(depth));
