import type { Check } from '../check/check.ts';
import { intersect } from '../geometry/clip.ts';
import { areaOf, centroidOf } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { TOUCH } from './bar.ts';
import type { Meeting } from './meet.ts';

/**
 * Wood that lies in other wood with nothing to join it: strips along or within each other. Told with the
 * area that is left after their other joints.
 */
export function overlapChecks(meetings: readonly Meeting[], seenOf: (laidId: string) => Region): Check[] {
  const told = new Set<string>();
  const checks: Check[] = [];
  for (const meeting of meetings) {
    if (meeting.shape !== 'alike' || !meeting.laps) continue;
    const [a, b] = [meeting.a.laid.id, meeting.b.laid.id];
    if (a === b || told.has(`${a}\n${b}`)) continue;
    told.add(`${a}\n${b}`);
    const shared = intersect(seenOf(a), seenOf(b));
    const area = areaOf(shared);
    // Two meters of touching edge, at the most that counts as touching.
    if (area <= 2000 * TOUCH) continue;
    checks.push({
      code: 'joint.overlap',
      severity: 'error',
      parts: [a, b],
      at: centroidOf(shared),
      figures: { area_m2: area / 1e6 },
    });
  }
  return checks;
}
