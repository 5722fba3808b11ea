import { type EndKind, noReach, plainEnd } from './kind.ts';

/** A free end cut square across. */
export const square: EndKind = {
  cut: 'square',
  settle: (at) => plainEnd('square', at),
  reach: noReach,
};
