import { newLettering } from '../design/defaults.ts';
import { isLettered } from '../design/made.ts';
import { kept } from '../layout/changes.ts';
import type { LaidLetters, LaidPart } from '../layout/laid.ts';
import { reuse } from './reuse.ts';

const NOTHING_WRITTEN = newLettering('', '');

/**
 * The parts as wood: nothing is written on signs. Of their letters stays how they are made, and what is painted around
 * them, which the steps of the work follow from. Parts that are as before are the earlier ones, so that what follows
 * from the wood is not found again for every letter that is typed.
 */
export function bodiesOf(
  parts: readonly LaidPart[],
  last: readonly LaidPart[] | undefined,
): readonly LaidPart[] {
  const before = new Map(last?.map((laid) => [laid.id, laid]));
  const bodies = parts.map((laid) => (isLettered(laid) ? reuse(before.get(laid.id), unwritten(laid)) : laid));
  return kept(last, bodies);
}

const unwritten = (sign: LaidLetters): LaidPart => {
  const { make, outline, shade, ribbon, lines } = sign.lettering;
  const looks = lines.flatMap(({ look }) => (look ? [{ text: '', look }] : []));
  return { ...sign, lettering: { ...NOTHING_WRITTEN, lines: looks, make, outline, shade, ribbon } };
};
