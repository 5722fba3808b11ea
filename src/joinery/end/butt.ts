import { type EndKind, noReach, plainEnd } from './kind.ts';

/** An end that stops against another piece, square or at the angle at which it meets it. */
export const butt: EndKind = {
  cut: 'butt',
  settle: (at) => plainEnd('butt', at),
  reach: noReach,
};
