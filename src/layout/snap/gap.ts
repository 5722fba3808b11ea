import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { spansMeet } from '../span.ts';
import { ownEdges } from './around.ts';
import { dimensionAlong, offerOf } from './drawing.ts';
import { type Neighbor, type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

/** The neighbor next to a place, looking to one side; what lies behind a nearer one is hidden. */
function nextTo(
  on: SnapAxis,
  side: 'low' | 'high',
  past: number,
  among: readonly Neighbor[],
): Neighbor | null {
  const sign = side === 'low' ? -1 : 1;
  const facing = side === 'low' ? 'high' : 'low';
  let found: Neighbor | null = null;
  for (const one of among) {
    if (sign * (one.span[facing] - past) < -on.input.reach) continue;
    const nearer = found === null ? -1 : sign * (one.span[facing] - found.span[facing]);
    if (nearer < -SAME_LENGTH || (nearer < SAME_LENGTH && found && one.thing.id < found.thing.id))
      found = one;
  }
  return found;
}

/** The gap to the neighbor as the row has it already: from the third part on. */
export function equalGaps(on: SnapAxis): Offer[] {
  return ownEdges(on).flatMap(({ edge, side, at }): Offer[] => {
    const facing = side === 'low' ? 'high' : 'low';
    const first = nextTo(on, side, at, on.beside);
    if (!first) return [];
    const row = on.beside.filter((one) => one !== first && spansMeet(one.across, first.across));
    const second = nextTo(on, side, first.span[side], row);
    if (!second) return [];
    const gap = Math.abs(first.span[side] - second.span[facing]);
    const isApart = side === 'low' ? first.span.low > second.span.high : first.span.high < second.span.low;
    if (!isApart || gap < SAME_LENGTH) return [];
    const to = first.span[facing] + (side === 'low' ? gap : -gap);
    if (Math.abs(to - at) > on.input.reach) return [];
    return [
      offerOf(on, {
        reading: 'gap',
        side,
        at: to,
        miss: to - at,
        prefer: PREFERENCE.part,
        rule: {
          kind: 'gap',
          axis: on.axis,
          edge,
          from: { of: first.thing.id, side: facing },
          likeEdge: { of: first.thing.id, side },
          likeFrom: { of: second.thing.id, side: facing },
        },
        dimensions: [
          dimensionAlong(on, second.span[facing], first.span[side]),
          dimensionAlong(on, first.span[facing], to),
        ],
      }),
    ];
  });
}
