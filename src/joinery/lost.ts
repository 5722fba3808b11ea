import type { Check } from '../check/check.ts';
import { add, scale } from '../geometry/point.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { End } from './bar.ts';
import type { SawnBar } from './saw.ts';
import { type Cut, miterOf } from './trim.ts';
import { type BarWork, endCuts } from './work.ts';

/**
 * Lengths of strips and runs that their own end cuts, or what they run into, leave nothing of: an error, since
 * nobody can cut or fix them. At most one a part.
 */
export function lostChecks(works: readonly BarWork[], lengths: readonly SawnBar[]): Check[] {
  const sawn = new Set(lengths.map(({ bar }) => bar));
  const told = new Set<string>();
  return works.flatMap((work): Check[] => {
    const { bar } = work;
    if (sawn.has(bar) || told.has(bar.laid.id)) return [];
    told.add(bar.laid.id);
    const [start, end] = [cutOf(work, 'start'), cutOf(work, 'end')];
    return [
      {
        code: 'piece.nothing-left',
        severity: 'error',
        parts: [bar.laid.id],
        at: add(bar.start, scale(bar.along, bar.length / 2)),
        figures: {
          length_mm: bar.length,
          left_deg: start.angle,
          left_with: start.with,
          right_deg: end.angle,
          right_with: end.with,
        },
      },
    ];
  });
}

/** The cut of an end that takes most: its angle, and the part that it runs into where there is one. */
function cutOf(work: BarWork, end: End): { readonly angle: Deg; readonly with: string } {
  const deepest = (cut: Cut): Mm => (end === 'start' ? cut.at : -cut.at);
  const taking = [...endCuts(work, end), ...work.gaps.map((gap) => (end === 'start' ? gap.far : gap.near))];
  const [most] = taking.sort((a, b) => deepest(b) - deepest(a));
  return most ? { angle: Math.abs(miterOf(most, end)), with: most.with ?? '' } : { angle: 0, with: '' };
}
