import type { EndCut } from '../piece.ts';
import { cope } from './cope.ts';
import { type EndKind, plainKind } from './kind.ts';
import { miter } from './miter.ts';
import { point } from './point.ts';
import { returned } from './return.ts';

/** Every kind of end; a kind without its line does not compile. */
export const END_KINDS: Readonly<Record<EndCut, EndKind>> = {
  /** A free end, straight across. */
  square: plainKind('square'),
  miter,
  /** It stops against another piece, square or at the angle at which it meets it. */
  butt: plainKind('butt'),
  cope,
  return: returned,
  /** The shop's allowance is left on, cut off when the piece has been held in place. */
  plunge: plainKind('plunge'),
  point,
  /** A side of a sheet piece that follows its outline: an arch, a circle, any polygon. */
  sawn: plainKind('sawn'),
};
