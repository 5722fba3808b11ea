import type { Bed, KeepClear } from '../bed/bed.ts';
import { depthsOf } from '../bed/depths.ts';
import type { Face } from '../bed/face.ts';
import { type Arm, armOf } from '../bed/swing.ts';
import { isPaint } from '../design/made.ts';
import { boxOf } from '../geometry/region.ts';
import type { Solid } from '../joinery/piece.ts';
import type { Mm } from '../measure/units.ts';
import type { SideShape } from './result.ts';

/** What is swept: the bed by its measures, everything on its face, and what stands out of it. */
export interface FoldInput {
  readonly bed: Bed;
  readonly face: Face;
  readonly keepClears: readonly KeepClear[];
  readonly solids: readonly Solid[];
}

/**
 * A rigid body of the swing by its side profile, the rectangle `y0..y1` up the face by `z0..z1` out of it,
 * and how far it reaches along the pivot line.
 *
 * The rectangle is all that is needed. A prism over any footprint shows its side as a union of rectangles
 * of equal thickness, and the corners of their hull are points of the prism. Floor, wall and ceiling are
 * planes, the distance from a plane is linear in the point, and a linear function has its least over a
 * body at a corner of its hull: so the corners clear a plane exactly when the body does. Shaped stock lies
 * within its rectangle, so that for it the figures err to the safe side.
 */
export interface Body {
  readonly id: string;
  readonly kind: SideShape['kind'];
  readonly y0: Mm;
  readonly y1: Mm;
  readonly z0: Mm;
  readonly z1: Mm;
  readonly x0: Mm;
  readonly x1: Mm;
}

/** The four corners as arms from the pivot, counterclockwise as the room sees them from the bed's right. */
export function cornersOf(bed: Bed, { y0, y1, z0, z1 }: Body): readonly [Arm, Arm, Arm, Arm] {
  return [armOf(bed, y0, z0), armOf(bed, y0, z1), armOf(bed, y1, z1), armOf(bed, y1, z0)];
}

function bedBodies(bed: Bed, face: Face): Body[] {
  const z = depthsOf(bed);
  const t = bed.frame.thickness;
  const across = { x0: 0, x1: face.width };
  const whole = { y0: 0, y1: face.height, ...across };
  const mattress = bed.pivotAlong === 'end' ? bed.mattress.length : bed.mattress.width;
  const margin = (face.height - mattress) / 2;
  const legTop = face.height - bed.legs.fromEnd;
  const bodies: Body[] = [
    { id: 'bed:frame', kind: 'frame', ...whole, z0: z.frameTop, z1: z.frameLow },
    {
      id: 'bed:platform',
      kind: 'platform',
      ...across,
      y0: t,
      y1: face.height - t,
      z0: z.platformTop,
      z1: z.platformLow,
    },
    {
      id: 'bed:mattress',
      kind: 'mattress',
      ...across,
      y0: margin,
      y1: margin + mattress,
      z0: z.mattressTop,
      z1: z.platformTop,
    },
    // Legs that fold away sweep less than legs that stand out all the time: the safe side.
    {
      id: 'bed:legs',
      kind: 'leg',
      ...across,
      y0: legTop - bed.legs.section,
      y1: legTop,
      z0: 0,
      z1: bed.legs.length,
    },
  ];
  if (bed.skin) bodies.push({ id: 'bed:skin', kind: 'skin', ...whole, z0: z.frameLow, z1: 0 });
  return bodies;
}

/** What stands out of the bed before anything is put on it: its own bodies, then keep-clear things. */
export function bareBodies({ bed, face, keepClears }: Omit<FoldInput, 'solids'>): Body[] {
  const bodies = bedBodies(bed, face);
  for (const { id, why, box, height } of keepClears) {
    if (height <= 0) continue;
    bodies.push({
      id: `keep:${id}`,
      kind: why === 'leg' ? 'leg' : 'keep-clear',
      y0: box.y,
      y1: box.y + box.h,
      z0: 0,
      z1: height,
      x0: box.x,
      x1: box.x + box.w,
    });
  }
  return bodies;
}

/** The body of a part; null for paint and for what nothing is left of. */
export function bodyOf(solid: Solid): Body | null {
  const box = boxOf(solid.region);
  if (!box || isPaint(solid)) return null;
  return {
    id: solid.part,
    kind: 'part',
    y0: box.y,
    y1: box.y + box.h,
    z0: solid.z0,
    z1: Math.max(solid.z1, solid.sawn?.z1 ?? solid.z1),
    x0: box.x,
    x1: box.x + box.w,
  };
}

/** Every body of the swing: the bed's own, then keep-clear things, then the parts in their order. */
export const bodiesOf = ({ solids, ...bare }: FoldInput): Body[] => [
  ...bareBodies(bare),
  ...solids.flatMap((solid) => bodyOf(solid) ?? []),
];
