import { segmentRadius } from '../geometry/curve.ts';
import { distance } from '../geometry/point.ts';
import { riseOfArc } from '../geometry/stretch.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import { bowsOfRun } from '../layout/place/run.ts';
import { pick } from '../list/at.ts';
import { grouped } from '../list/grouped.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import type { ArchFound, SawnArch, SegmentedArch } from './piece.ts';
import { sawnArch } from './sawnArcs.ts';

/** How far a straight segment falls short of its arc: radius * (1 - cos(angle / 2)), `angle` at the center. */
export const sagitta = (radius: Mm, angle: Deg): Mm => radius * (1 - Math.cos(radians(angle) / 2));

/** Figures of a head of the given width and rise; the whole arc spans 4 * atan(2 * rise / width). */
export function segmentedArch(width: Mm, rise: Mm, segments: number): SegmentedArch {
  const radius = segmentRadius(width, rise);
  const angle = (4 * degrees(Math.atan2(2 * rise, width))) / segments;
  return {
    radius,
    segments,
    angle,
    chord: 2 * radius * Math.sin(radians(angle) / 2),
    miter: angle / 2,
    sagitta: sagitta(radius, angle),
  };
}

/** The figures of every arc of a run, by its laid part; arcs alike are told once. */
export function archesOf(parts: readonly LaidPart[]): ArchFound[] {
  return parts.flatMap((laid): ArchFound[] => {
    if (laid.kind !== 'run') return [];
    const { sawn } = laid;
    const found = sawn ? sawn.arcs.map((arc) => sawnArch(arc, sawn.bent)) : segmentedArches(laid);
    return [...grouped(found, figuresOf).values()].map(([arch]) => ({ part: laid.id, ...arch }));
  });
}

const segmentedArches = ({ spec, box, legs, bows }: Laid<'run'>): SegmentedArch[] =>
  (bows ?? (legs.length > 0 ? bowsOfRun(spec, box, pick(legs, 0).width) : [])).map(({ arc, count }) =>
    segmentedArch(distance(arc.from, arc.to), Math.abs(riseOfArc(arc)), count),
  );

/** What tells arcs apart, to the hundredth of a millimeter. */
const figuresOf = (arch: SegmentedArch | SawnArch): string =>
  ('segments' in arch
    ? [arch.radius, arch.chord]
    : [arch.inner, arch.outer, arch.lengths.inner, arch.lengths.outer]
  )
    .map((mm) => Math.round(mm * 100))
    .join();
