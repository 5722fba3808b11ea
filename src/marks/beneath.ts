import { isBars, isPaint } from '../design/made.ts';
import { sharedArea } from '../geometry/box.ts';
import { intersect } from '../geometry/clip.ts';
import { meetingPairs } from '../geometry/meeting.ts';
import { areaOf, boxOf } from '../geometry/region.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import type { KeptResults } from '../layout/kept.ts';
import type { LaidPart } from '../layout/laid.ts';

/** Square millimeters in common that are rounding along a shared edge and no overlap. */
const TOUCHING_MM2 = 1;

/** Ids of what lies right beneath each part; parts with nothing beneath are left out. */
export type Beneath = ReadonlyMap<string, ReadonlySet<string>>;

/** Whether the first has its top no higher than the back of the second. */
const isLower = (a: LaidPart, b: LaidPart): boolean =>
  a.z1 <= b.z0 + SAME_LENGTH && a.z0 + a.z1 < b.z0 + b.z1 - SAME_LENGTH;

/** Where a part lies: as it is laid, and as its joints leave it where these cut it. */
interface Ground {
  readonly laid: LaidPart;
  readonly regions: readonly Region[];
  readonly box: Box;
  /** A rectangle along the axes, which most parts are: boxes tell all of it without cutting anything. */
  readonly plain: boolean;
}

function groundOf(laid: LaidPart, left: Region | undefined): Ground[] {
  const jointed = left !== undefined && isBars(laid);
  const regions = jointed ? [laid.region, left] : [laid.region];
  const box = boxOf(regions.flat());
  if (!box) return [];
  return [{ laid, regions, box, plain: Math.abs(areaOf(laid.region) - box.w * box.h) <= TOUCHING_MM2 / 2 }];
}

function shared(a: Ground, b: Ground, results: KeptResults): number {
  if (a.plain && b.plain) return sharedArea(a.box, b.box);
  return results.of(a.laid, `shared with ${b.laid.id}`, [...a.regions, ...b.regions], () =>
    Math.max(0, ...a.regions.flatMap((p) => b.regions.map((q) => areaOf(intersect(p, q))))),
  );
}

/**
 * What lies under what: parts that share ground on the face, as laid or as their joints leave them, one of
 * them wholly below the other; and what a part is said to lie on. Paint is looked through. Each part stands
 * higher than all that is beneath it, so nothing goes in a circle.
 *
 * @param results what was found of the parts before
 */
export function beneathOf(
  parts: readonly LaidPart[],
  solids: readonly Solid[],
  results: KeptResults,
): Beneath {
  const byId = new Map(parts.map((laid) => [laid.id, laid]));
  const left = new Map(solids.map((solid) => [solid.part, solid.region]));
  const bodies = parts.filter((laid) => !isPaint(laid));
  const beneath = new Map<string, Set<string>>();
  const put = (low: LaidPart, high: LaidPart) => {
    const known = beneath.get(high.id);
    if (known) known.add(low.id);
    else beneath.set(high.id, new Set([low.id]));
  };
  for (const laid of bodies) {
    const support = supportOf(laid, byId);
    if (support && isLower(support, laid)) put(support, laid);
  }
  const grounds = bodies.flatMap((laid) => groundOf(laid, left.get(laid.id)));
  for (const [i, j] of meetingPairs(grounds.map(({ box }) => box))) {
    const [a, b] = [grounds[i], grounds[j]];
    if (!a || !b) continue;
    const [low, high] = isLower(a.laid, b.laid) ? [a, b] : [b, a];
    if (!isLower(low.laid, high.laid) || beneath.get(high.laid.id)?.has(low.laid.id)) continue;
    if (shared(low, high, results) > TOUCHING_MM2) put(low.laid, high.laid);
  }
  return beneath;
}

/** The part that holds this one: paint is looked through, a level is none. */
function supportOf(laid: LaidPart, byId: ReadonlyMap<string, LaidPart>): LaidPart | undefined {
  const seen = new Set<string>();
  let on = byId.get(laid.on);
  while (on && isPaint(on) && !seen.has(on.id)) {
    seen.add(on.id);
    on = byId.get(on.on);
  }
  return on;
}
