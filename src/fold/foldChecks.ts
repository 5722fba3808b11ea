import type { Check } from '../check/check.ts';
import type { CheckCode } from '../check/codes.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { Body } from './body.ts';
import type { Hit } from './result.ts';

/** Less room than this is taken up by a sagging floor or a bowed board. Common practice, no source. */
export const TIGHT: Mm = 6;

const CODE_OF: Readonly<Record<Hit['what'], CheckCode>> = {
  floor: 'fold.hits-floor',
  wall: 'fold.hits-wall',
  'wall-board': 'fold.hits-wall',
  ceiling: 'fold.hits-ceiling',
  legs: 'fold.hits-legs',
  'side-left': 'fold.hits-side',
  'side-right': 'fold.hits-side',
};

function figuresOf(hit: Hit): Check['figures'] {
  const cut: Record<string, number> = {};
  if (hit.thinner !== null) cut.thinner_mm = hit.thinner;
  if (hit.shorter !== null) cut.shorter_mm = hit.shorter;
  switch (hit.what) {
    case 'side-left':
      return { over_mm: hit.over, side: 'left' };
    case 'side-right':
      return { over_mm: hit.over, side: 'right' };
    case 'legs':
      return { over_mm: hit.over };
    case 'floor':
    case 'wall':
    case 'wall-board':
    case 'ceiling':
      return { over_mm: hit.over, angle_deg: hit.angle, what: hit.what, ...cut };
  }
}

/** Whether the floor is hit only because the part stands lower than the feet: told once, as the legs' check. */
function toldByLegs(hit: Hit, all: readonly Hit[]): boolean {
  if (hit.what !== 'floor') return false;
  return all.some(
    (other) =>
      other.part === hit.part &&
      other.what === 'legs' &&
      other.over >= (hit.thinner ?? Infinity) - SAME_LENGTH,
  );
}

/**
 * Checks of the hits. A part that hits forbids the plan; a body of the bed only warns, since the bed
 * stands and the measure is more likely wrong than the bed. Legs that are too long are `bed.legs`.
 */
export function hitChecks(hits: readonly Hit[], bodies: readonly Body[]): Check[] {
  const body = new Map(bodies.map((b) => [b.id, b]));
  return hits.flatMap((hit) => {
    const of = body.get(hit.part);
    if (!of || (of.id === 'bed:legs' && hit.what === 'floor') || toldByLegs(hit, hits)) return [];
    return [
      {
        code: CODE_OF[hit.what],
        severity: of.id.startsWith('bed:') ? ('warning' as const) : ('error' as const),
        parts: [hit.part],
        at: { x: (of.x0 + of.x1) / 2, y: (of.y0 + of.y1) / 2 },
        figures: figuresOf(hit),
      },
    ];
  });
}

/** A warning for each clearance that is there, but less than `TIGHT`. */
export function tightChecks(
  clearances: readonly {
    readonly what: string;
    readonly clear: Mm;
    readonly by: string;
    readonly angle: Deg;
  }[],
): Check[] {
  return clearances
    .filter(({ clear }) => clear >= -SAME_LENGTH && clear < TIGHT)
    .map(({ what, clear, by, angle }) => ({
      code: 'fold.tight',
      severity: 'warning',
      parts: [by],
      figures: { clear_mm: Math.max(0, clear), what, angle_deg: angle },
    }));
}
