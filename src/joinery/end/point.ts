import { type EndKind, noReach } from './kind.ts';

/** Two cuts that meet in a point, where a brace lands in the corner of a stile and a rail. */
export const point: EndKind = {
  settle: (at) => ({
    cut: 'point',
    miter: at.miter,
    bevel: 0,
    long: 'middle',
    with: at.with,
    second: at.secondMiter === null ? null : { miter: at.secondMiter, bevel: 0 },
    nested: null,
  }),
  reach: noReach,
};
