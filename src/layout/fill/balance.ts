import type { Fill } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';

/** How wide the outermost piece is where the next one would lie over the edge: a whole one where it just fits. */
function endPiece(rest: Mm, cover: Mm, gap: Mm): Mm {
  const end = rest - gap;
  return end <= SAME_LENGTH || end >= cover - SAME_LENGTH ? cover : end;
}

/** The same row of pieces from the first one of which something lies past 0, when one of them begins at `at`. */
export const firstFrom = (at: Mm, cover: Mm, gap: Mm): Mm =>
  at - Math.floor((at + cover - SAME_LENGTH) / (cover + gap)) * (cover + gap);

/**
 * Where the first of a row of pieces begins, at or before 0, so that they cover a width.
 *
 * `balanced` is the rule of tilers: with a piece or a joint in the middle, whichever leaves the wider pieces at the
 * edges, so that these are alike and hardly under half a piece (US Navy, Builder, NAVEDTRA 14044, chapter 7).
 *
 * @param cover what is seen of a whole piece
 * @param gap seen between two pieces
 */
export function firstStart(width: Mm, cover: Mm, gap: Mm, start: Fill['start']): Mm {
  switch (start) {
    case 'low':
      return 0;
    case 'high':
      return firstFrom(width - cover, cover, gap);
    case 'piece':
      return firstFrom((width - cover) / 2, cover, gap);
    case 'gap':
      return firstFrom((width + gap) / 2, cover, gap);
    case 'balanced':
      return firstStart(width, cover, gap, widerEnds(width, cover, gap));
  }
}

/** Whether a piece or a gap in the middle leaves the wider pieces at the edges; a piece where both do. */
function widerEnds(width: Mm, cover: Mm, gap: Mm): 'piece' | 'gap' {
  const pitch = cover + gap;
  if (width <= cover) return 'piece';
  const rest = (half: Mm): Mm => half - Math.floor((half + SAME_LENGTH) / pitch) * pitch;
  const byPiece = endPiece(rest((width - cover) / 2), cover, gap);
  const byGap = endPiece(rest((width + gap) / 2), cover, gap);
  return byGap > byPiece + SAME_LENGTH ? 'gap' : 'piece';
}
