import type { Face, LevelId } from '../../bed/face.ts';
import { LEVEL_IDS } from '../../design/limits.ts';
import { isLettered, isPaint } from '../../design/made.ts';
import type { Part } from '../../design/schema.ts';
import { surrounds } from '../../geometry/box.ts';
import { intersect } from '../../geometry/clip.ts';
import { areaOf, boxesMeet } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { DUST, SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import { partOf } from '../reference.ts';

/** The level's region is just its box. */
export const fillsItsBox = (level: Face['levels'][number]): boolean => {
  const only = level.region.length === 1 ? level.region[0] : undefined;
  return only !== undefined && only.holes.length === 0 && only.outer.length === 4;
};

/** The level under the largest share of a footprint; of equal shares, and off the face, the highest. */
export function levelUnder(face: Face, region: Region, box: Box): LevelId | null {
  // Most parts lie wholly on one: that is seen without cutting anything.
  const whole = face.levels.find((level) => fillsItsBox(level) && surrounds(level.box, box, SAME_LENGTH));
  if (whole) return whole.id;
  let best: LevelId | null = face.levels[0]?.id ?? null;
  let most = SAME_LENGTH;
  for (const level of face.levels) {
    if (!boxesMeet(box, level.box)) continue;
    const share = areaOf(intersect(region, level.region));
    if (share > most * (1 + DUST)) {
      best = level.id;
      most = share;
    }
  }
  return best;
}

export const isLevelId = (on: string): on is LevelId => (LEVEL_IDS as readonly string[]).includes(on);

export interface SupportOrder {
  /** Supports before what lies on them; otherwise in the design's order, letters without a board last. */
  readonly order: readonly Part[];
  /** Rings of parts that lie on each other, each from its least id. */
  readonly cycles: readonly (readonly string[])[];
}

/** Orders parts so that each comes after the part it lies on. */
export function orderBySupport(parts: readonly Part[], byId: ReadonlyMap<string, Part>): SupportOrder {
  const order: Part[] = [];
  const cycles: string[][] = [];
  const state = new Map<string, 'open' | 'done'>();
  const free = (part: Part): boolean => isLettered(part) && isPaint(part);
  for (const first of [...parts.filter((part) => !free(part)), ...parts.filter(free)]) {
    // The chain of supports below, from the top down; each part lies on one thing only.
    const chain: Part[] = [];
    let part: Part | undefined = first;
    while (part !== undefined && !state.has(part.id)) {
      state.set(part.id, 'open');
      chain.push(part);
      part = supportOf(part, byId);
    }
    if (part !== undefined && state.get(part.id) === 'open') {
      const ring = chain.slice(chain.findIndex((p) => p.id === part?.id)).map((p) => p.id);
      const least = ring.indexOf(pick([...ring].sort(), 0));
      cycles.push([...ring.slice(least), ...ring.slice(0, least)]);
    }
    for (const link of chain.reverse()) {
      state.set(link.id, 'done');
      order.push(link);
    }
  }
  return { order, cycles };
}

/** The part that another lies on, or undefined for levels, the face and what is not there. */
function supportOf(part: Part, byId: ReadonlyMap<string, Part>): Part | undefined {
  if (part.on === 'face' || isLevelId(part.on)) return undefined;
  const id = partOf(part.on);
  return id === null ? undefined : byId.get(id);
}
