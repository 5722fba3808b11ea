import type { Face } from '../bed/face.ts';
import { type Check, orderChecks } from '../check/check.ts';
import { isBoards, isBought, isLettered } from '../design/made.ts';
import { boxOf } from '../geometry/region.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { type Edge, edgesOfFace, ON, other, spanOn } from './along/edge.ts';
import { regionAlong } from './along/region.ts';
import { runAlong } from './along/run.ts';
import {
  edgeOfSide,
  type Follower,
  followerOn,
  innerEdges,
  type Sides,
  sidesOf,
  stripAlong,
} from './along/strip.ts';
import type { LaidPart, Layout } from './laid.ts';

/** What is ripped and what follows: a strip follows what it lies along unless its other side has to stay true. */
interface Found {
  readonly edges: readonly Edge[];
  readonly followers: ReadonlyMap<LaidPart, Follower>;
  readonly runs: ReadonlyMap<LaidPart, LaidPart>;
}

function findFollowers(parts: readonly LaidPart[], face: Face, stocks: ReadonlyMap<string, Stock>): Found {
  const edges = edgesOfFace(face);
  const ofFace = edges.length;
  const followers = new Map<LaidPart, Follower>();
  const runs = new Map<LaidPart, LaidPart>();
  for (let before = -1; before !== edges.length; ) {
    before = edges.length;
    for (const laid of parts) {
      if (followers.has(laid) || runs.has(laid)) continue;
      if (laid.kind === 'run') {
        const next = runAlong(laid, edges);
        if (!next) continue;
        runs.set(laid, next.laid);
        edges.push(...next.edges);
      } else if (laid.kind === 'strip') {
        const sides = sidesOf(laid);
        const own = sides && edgeOfSide(edges, sides);
        if (!sides || !own) continue;
        const { edge, far } = own;
        const shaped = stocks.get(laid.stock ?? '')?.form === 'shaped';
        const follows =
          shaped ||
          edges.indexOf(edge) < ofFace ||
          !parts.some(
            (one) => one !== laid && !followers.has(one) && !runs.has(one) && touches(one, laid, sides, far),
          );
        if (!follows) continue;
        const follower = followerOn(laid, sides, edge);
        followers.set(laid, follower);
        edges.push(...innerEdges(follower));
      }
    }
  }
  return { edges, followers, runs };
}

/** Whether a part at the same height has a side along the far side of another. */
function touches(one: LaidPart, laid: LaidPart, { axis, along }: Sides, far: Mm): boolean {
  if (Math.min(one.z1, laid.z1) - Math.max(one.z0, laid.z0) <= ON) return false;
  const box = boxOf(one.region);
  if (!box || !spanOn(box, axis).some((edge) => Math.abs(edge - far) <= ON)) return false;
  const [from, to] = spanOn(box, other(axis));
  return Math.min(to, along[1]) - Math.max(from, along[0]) > ON;
}

function partAlong(laid: LaidPart, { edges, followers, runs }: Found, checks: Check[]): LaidPart {
  if (isBought(laid)) return laid;
  if (laid.kind === 'run') return runs.get(laid) ?? laid;
  if (laid.kind === 'strip') return stripAlong(laid, followers.get(laid), edges, checks);
  const region = regionAlong(laid.region, edges);
  // Letters keep the box that they were set in; all else is marked and measured by where it really is.
  const box = region === laid.region || isLettered(laid) ? laid.box : (boxOf(region) ?? laid.box);
  if (!isBoards(laid)) return region === laid.region ? laid : { ...laid, region, box };
  const wood = regionAlong(laid.wood, edges);
  return region === laid.region && wood === laid.wood ? laid : { ...laid, region, wood, box };
}

/**
 * The layout with its border along the edges as they really are. Rules hold the true rectangle; of what lies in it
 *
 * - strips and runs along an edge of the face or of a level follow it as wide as they are, and so does what lies along
 *   the inside of those, as moldings do; of an edge that bows a board lies straight over all of it, and is scribed;
 * - arcs of runs are struck anew through their ends and their crown, braces lie from corner to corner of what their box is;
 * - a flat strip between such a border and something that stays true is ripped to a taper;
 * - ends that come to a border, and sides of panels and fills along one, are cut to it;
 * - all else stays square.
 *
 * Everything that follows from the layout, joints and pieces first, works on these outlines.
 */
export function alongEdges(layout: Layout, face: Face, stocks: ReadonlyMap<string, Stock>): Layout {
  const found = findFollowers(layout.parts, face, stocks);
  const checks: Check[] = [];
  const parts = layout.parts.map((laid) => partAlong(laid, found, checks));
  return {
    ...layout,
    parts,
    checks: checks.length === 0 ? layout.checks : orderChecks([...layout.checks, ...checks]),
  };
}
