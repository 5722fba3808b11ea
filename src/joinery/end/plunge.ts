import { type EndKind, noReach, plainEnd } from './kind.ts';

/** The end where the shop's allowance is left on, cut off when the piece has been held in place. */
export const plunge: EndKind = {
  cut: 'plunge',
  settle: (at) => plainEnd('plunge', at),
  reach: noReach,
};
