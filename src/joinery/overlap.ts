import type { Check } from '../check/check.ts';
import { intersect } from '../geometry/clip.ts';
import { meetingPairs } from '../geometry/meeting.ts';
import { areaOf, centroidOf } from '../geometry/region.ts';
import type { Polygon, Region } from '../geometry/shape.ts';
import { type Bar, boxAround, sameHeight, TOUCH } from './bar.ts';
import { lapDepth } from './meet.ts';
import type { Length } from './saw.ts';

/** Shared area, square millimeters, that is the touch of two long edges and no overlap. */
const TOUCHING_MM2 = 2000 * TOUCH;

interface Seen {
  readonly bar: Bar;
  readonly polygon: Polygon;
}

/**
 * Wood that still lies in other wood after all joints: strips along or within each other, for which there
 * is no joint. One check a pair of parts, with all the area they share and the middle of it.
 */
export function overlapChecks(lengths: readonly Length[]): Check[] {
  const seen = lengths.flatMap(({ bar, seen }) => seen.map((polygon): Seen => ({ bar, polygon })));
  const shared = new Map<string, { parts: readonly [string, string]; region: Region }>();
  for (const [i, j] of meetingPairs(seen.map(({ polygon }) => boxAround(polygon.outer)))) {
    const [a, b] = [seen[i], seen[j]];
    if (!a || !b || !sameHeight(a.bar, b.bar) || lapDepth(a.polygon.outer, b.polygon.outer) <= TOUCH)
      continue;
    const parts = [a.bar.laid.id, b.bar.laid.id] as const;
    const key = parts.join('\n');
    const region = intersect([a.polygon], [b.polygon]);
    shared.set(key, { parts, region: [...(shared.get(key)?.region ?? []), ...region] });
  }
  return [...shared.values()].flatMap(({ parts, region }): Check[] => {
    const area = areaOf(region);
    if (area <= TOUCHING_MM2) return [];
    return [
      {
        code: 'joint.overlap',
        severity: 'error',
        parts: parts[0] === parts[1] ? [parts[0]] : parts,
        at: centroidOf(region),
        figures: { area_m2: area / 1e6 },
      },
    ];
  });
}
