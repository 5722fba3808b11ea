import type { Check } from '../check/check.ts';
import { intersect } from '../geometry/clip.ts';
import { meetingPairs } from '../geometry/meeting.ts';
import { areaOf, centroidOf } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { sameHeight, TOUCH } from './bar.ts';
import { lapDepth, type Outlined } from './meet.ts';

/** Shared area, square millimeters, that is the touch of two long edges and no overlap. */
const TOUCHING_MM2 = 2000 * TOUCH;

const areaIn = ({ outline }: Outlined): Region => [{ outer: outline, holes: [] }];

/**
 * Wood that still lies in other wood after all joints: strips along or within each other, for which there
 * is no joint. One check a pair of parts, with all the area they share and the middle of it.
 */
export function overlapChecks(seen: readonly Outlined[]): Check[] {
  const shared = new Map<string, { parts: readonly [string, string]; region: Region }>();
  for (const [i, j] of meetingPairs(seen.map(({ around }) => around))) {
    const [a, b] = [seen[i], seen[j]];
    if (!a || !b || !sameHeight(a.bar, b.bar) || lapDepth(a.outline, b.outline) <= TOUCH) continue;
    const parts = [a.bar.laid.id, b.bar.laid.id] as const;
    const key = parts.join('\n');
    const region = intersect(areaIn(a), areaIn(b));
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
