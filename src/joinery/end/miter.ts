import { frameCornerSetting } from '../sprung.ts';
import { type EndKind, noReach, plainEnd, sprungStock } from './kind.ts';

/**
 * A cut at an angle, alone or with its neighbor at a corner. Sprung molding, which leans on the face, is cut
 * at the compound setting of a corner in the plane of the face; which edge is long follows from the turn.
 */
export const miter: EndKind = {
  settle: (at) => {
    const plain = plainEnd('miter', at);
    const stock = sprungStock(at.stock);
    if (!stock || at.corner === null) return plain;
    const setting = frameCornerSetting(stock.spring, at.corner);
    const hand = at.miter < 0 ? -1 : 1;
    return {
      ...plain,
      miter: hand * Math.abs(setting.flat.miter),
      bevel: Math.abs(setting.flat.bevel),
      nested: { miter: hand * Math.abs(setting.nested.miter), bevel: 0 },
    };
  },
  reach: noReach,
};
