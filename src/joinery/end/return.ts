import { sprungSetting } from '../sprung.ts';
import { type EndKind, noReach, plainEnd, sprungStock } from './kind.ts';

/** An outside corner of a wall, from within the room. */
const OUTSIDE_CORNER = 270;

/**
 * A mitered return: the molding is turned back to the face by a short piece, so that its end shows the same
 * section. Lying on its back it is a bevel of 45 degrees; sprung molding turns an outside corner.
 */
export const returned: EndKind = {
  cut: 'return',
  settle: (at) => {
    const plain = { ...plainEnd('return', at), bevel: 45 };
    const stock = sprungStock(at.stock);
    if (!stock) return plain;
    const setting = sprungSetting(stock.spring, OUTSIDE_CORNER);
    return {
      ...plain,
      miter: Math.abs(setting.flat.miter),
      bevel: Math.abs(setting.flat.bevel),
      long: 'left',
      nested: { miter: Math.abs(setting.nested.miter), bevel: 0 },
    };
  },
  reach: noReach,
};
