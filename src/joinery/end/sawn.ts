import { type EndKind, noReach, plainEnd } from './kind.ts';

/** A side of a sheet piece that follows its outline: an arch, a circle, any polygon. */
export const sawn: EndKind = {
  cut: 'sawn',
  settle: (at) => plainEnd('sawn', at),
  reach: noReach,
};
