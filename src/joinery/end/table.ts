import type { EndCut } from '../piece.ts';
import { butt } from './butt.ts';
import { cope } from './cope.ts';
import type { EndKind } from './kind.ts';
import { miter } from './miter.ts';
import { plunge } from './plunge.ts';
import { point } from './point.ts';
import { returned } from './return.ts';
import { sawn } from './sawn.ts';
import { square } from './square.ts';

/** Every kind of end; a kind without its line does not compile. */
export const END_KINDS: Readonly<Record<EndCut, EndKind>> = {
  square,
  miter,
  butt,
  cope,
  return: returned,
  plunge,
  point,
  sawn,
};
