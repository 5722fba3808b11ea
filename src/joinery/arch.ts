import { segmentRadius } from '../geometry/curve.ts';
import type { LaidPart } from '../layout/laid.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import { sawnArch } from './head.ts';
import type { ArchFound, SegmentedArch } from './piece.ts';

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

/** The figures of every arched run, by its laid part. */
export function archesOf(parts: readonly LaidPart[]): ArchFound[] {
  return parts.flatMap((laid): ArchFound[] => {
    if (laid.kind === 'run' && laid.head) return [{ part: laid.id, ...sawnArch(laid.head) }];
    if (laid.kind !== 'run' || laid.spec.path.form !== 'arched' || laid.box.w <= 0) return [];
    const { segments } = laid.spec.path;
    // Layout springs the arch no higher than its box has room for.
    const rise = Math.min(laid.spec.path.rise, laid.box.w / 2, laid.box.h);
    return [{ part: laid.id, ...segmentedArch(laid.box.w, rise, segments) }];
  });
}
