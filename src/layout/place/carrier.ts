import type { Face } from '../../bed/face.ts';
import { isBoards, isBought } from '../../design/made.ts';
import type { Part } from '../../design/schema.ts';
import { boxArea, sharedArea } from '../../geometry/box.ts';
import { intersect, union } from '../../geometry/clip.ts';
import { areaOf, boxesMeet, boxOf } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { DUST, SAME_LENGTH } from '../../geometry/tolerance.ts';
import { grouped } from '../../list/grouped.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Stock } from '../../materials/types.ts';
import type { LaidPart } from '../laid.ts';
import { expandArray } from './array.ts';
import { bodyOf, isSingle } from './body.ts';
import { regionOfFill } from './shape.ts';
import { levelUnder } from './support.ts';

/**
 * Least share of the underside that must lie on something. Common practice, no source: enough for a
 * board that bridges a recess between two rails, not for one that hangs on by an edge.
 */
export const LEAST_CARRIED = 0.25;
/** Shares that differ by less are the same: curves are drawn as chords. */
const SAME_SHARE = 1e-4;

export interface CarrierInput {
  readonly parts: readonly LaidPart[];
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
}

/** Whether a part goes with the one that is laid; asked only of what lies there. */
export type Without = (part: string) => boolean;

/** What the part would cover of the face, were its box there. */
function outlineOf(part: Part, box: Box, stocks: CarrierInput['stocks']): Region {
  if (isSingle(part)) return bodyOf(part, box, stocks).region;
  if (isBoards(part)) return regionOfFill(part, box);
  return union(
    expandArray(part, box, stocks).slots.map((slot) => bodyOf(slot.member, slot.box, stocks).region),
  );
}

/** The box of a region that fills it: most parts are upright rectangles, and a drag asks twice in each step. */
const filledBox = keptBy((region: Region): Box | null => {
  const box = boxOf(region);
  return box && region.length === 1 && areaOf(region) >= boxArea(box) * (1 - DUST) ? box : null;
});

/** The area that both cover; of two rectangles nothing needs to be cut. */
function areaOfBoth(a: Region, b: Region): number {
  const [one, other] = [filledBox(a), filledBox(b)];
  return one && other ? sharedArea(one, other) : areaOf(intersect(a, b));
}

/** The share of an outline, of an area over zero, that each part under it would carry, and how high that part is. */
function sharesOf(outline: Region, bounds: Box, { parts }: CarrierInput, without: Without) {
  // Paint carries nothing, and what is bought is no board.
  const carries = (laid: LaidPart) => laid.z1 - laid.z0 > SAME_LENGTH && !isBought(laid);
  const beneath = grouped(
    parts.filter((laid) => boxesMeet(laid.box, bounds) && carries(laid) && !without(laid.part)),
    (laid) => laid.part,
  );
  const area = areaOf(outline);
  return [...beneath].map(([part, laid]) => ({
    part,
    top: Math.max(...laid.map((one) => one.z1)),
    share: laid.reduce((sum, one) => sum + areaOfBoth(outline, one.region), 0) / area,
  }));
}

/**
 * What a part lies on when its box is there: the topmost part that its whole outline lies on, else the one that
 * carries most of it; where that is less than a quarter, the face. `without`: parts that go with it, and itself.
 */
export function carrierOf(
  input: CarrierInput,
  part: Part,
  box: Box,
  without: Without,
): { readonly part: string } | { readonly level: string | null } {
  const outline = outlineOf(part, box, input.stocks);
  const bounds = boxOf(outline) ?? box;
  const shares = areaOf(outline) > 0 ? sharesOf(outline, bounds, input, without) : [];
  const whole = shares.filter(({ share }) => share >= 1 - SAME_SHARE);
  const best =
    whole.length > 0
      ? whole.reduce((a, b) => (b.top >= a.top ? b : a))
      : shares
          .filter(({ share }) => share >= LEAST_CARRIED)
          .reduce<(typeof shares)[number] | null>((a, b) => {
            if (!a || b.share > a.share + SAME_SHARE) return b;
            return b.share > a.share - SAME_SHARE && b.top > a.top + SAME_LENGTH ? b : a;
          }, null);
  return best ? { part: best.part } : { level: levelUnder(input.face, outline, bounds) };
}
