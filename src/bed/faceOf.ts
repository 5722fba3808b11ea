import type { Check } from '../check/check.ts';
import { ringOfBox } from '../geometry/region.ts';
import type { Box, Ring } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { Bed } from './bed.ts';
import { boardsOf, platformSize } from './boards.ts';
import { edgesWith, outlineOf } from './bows.ts';
import { type BedDepths, depthsOf } from './depths.ts';
import type { Face, Level, RealEdges } from './face.ts';
import { betweenLegs } from './legFootprints.ts';
import { movedIn, realEdges } from './realEdges.ts';

/** Feet this much off the floor are taken up by a leveler or a shim. Common practice, no source. */
export const LEG_SLACK: Mm = 3;

/** The box drawn in by the same margin on all sides; null when nothing is left. */
function inset(box: Box, by: Mm): Box | null {
  const w = box.w - 2 * by;
  const h = box.h - 2 * by;
  return w > SAME_LENGTH && h > SAME_LENGTH ? { x: box.x + by, y: box.y + by, w, h } : null;
}

/** A level over `box` with the opening `inner` in it, its region where `edgeOf` has those really. */
type LevelMaker = (
  id: Level['id'],
  z: Mm,
  box: Box,
  inner: Box | null,
  wood: Pick<Level, 'behind' | 'material'>,
) => Level;

const levelMaker =
  (edgeOf: (box: Box) => Ring): LevelMaker =>
  (id, z, box, inner, wood) => {
    const holes = inner ? [[...edgeOf(inner)].reverse()] : [];
    return { id, z, region: [{ outer: edgeOf(box), holes }], box, inner, ...wood };
  };

/** The real outline of a box of the face; what lies within the frame boards begins where those end. */
function realRing(real: readonly RealEdges[], of: Box, within: Box, board: Mm): Ring {
  const [rim] = real;
  if (rim && of === within) return outlineOf(edgesWith(movedIn(rim.corners, board), rim.bows));
  const own = real.find(({ box }) => box === of);
  return own ? outlineOf(own.edges) : ringOfBox(of);
}

interface Boxes {
  readonly outer: Box;
  readonly within: Box;
  readonly field: Box | null;
}

function recessedLevels(bed: Bed, depths: BedDepths, boxes: Boxes, level: LevelMaker): Level[] {
  const { outer, within, field } = boxes;
  const rim = { behind: bed.frame.depth, material: bed.frame.material };
  // A brad in the ledge meets the cleat, then the platform that lies on it, then the mattress.
  const ledge = { behind: bed.cleats.depth + bed.platform.thickness, material: bed.frame.material };
  const levels = [level('rim', 0, outer, within, rim), level('ledge', depths.cleatLow, within, field, ledge)];
  if (field) {
    const platform = { behind: bed.platform.thickness, material: bed.platform.material };
    levels.push(level('field', depths.platformLow, field, null, platform));
  }
  return levels;
}

function bedChecks(bed: Bed, depths: BedDepths, within: Box, height: Mm): Check[] {
  const checks: Check[] = [];
  const noRoom = (what: string, size_mm: Mm) =>
    checks.push({ code: 'bed.no-room', severity: 'error', parts: [], figures: { what, size_mm } });
  if (depths.platformLow > depths.frameLow + SAME_LENGTH)
    noRoom('platform', depths.frameLow - depths.platformLow);
  if (depths.cleatLow > depths.frameLow + SAME_LENGTH) noRoom('cleats', depths.frameLow - depths.cleatLow);
  const opening = Math.min(within.w, within.h) - 2 * bed.cleats.width;
  if (opening <= SAME_LENGTH) noRoom('field', opening);
  const legRoom = height - bed.legs.fromEnd - bed.legs.section;
  if (legRoom < -SAME_LENGTH) noRoom('legs', legRoom);
  const between = betweenLegs(within.w + 2 * bed.frame.thickness, bed.legs);
  if (bed.legs.where === 'on-face' && between < -SAME_LENGTH) noRoom('legs', between);
  const needed = bed.pivot.height - bed.pivot.fromFace;
  if (Math.abs(needed - bed.legs.length) > LEG_SLACK) {
    checks.push({
      code: 'bed.legs',
      severity: 'warning',
      parts: [],
      figures: { legs_mm: bed.legs.length, needed_mm: needed },
    });
  }
  return checks;
}

/**
 * The face that the room sees, from the measures of the bed as it was built: its size, its levels from
 * the highest to the deepest, and the boards behind it.
 *
 * The platform is the mattress and its allowance; the frame stands around it, so the face is larger by
 * two board thicknesses each way. An end-pivoted bed stands upright (width across, height along the bed);
 * a side-pivoted bed lies lengthwise.
 *
 * Checks: `bed.no-room` (error) where boards cannot be as measured: cleats or platform standing below the
 * frame's lower edge, no opening left between the cleats, legs set back by more than the face has; `bed.legs` (warning)
 * where the lowered face would not stand level on its legs. A face always comes back, so that the editor
 * can draw a bed while it is being entered; levels without area are left out.
 */
export function faceOf(bed: Bed): { readonly face: Face; readonly checks: readonly Check[] } {
  const { across, along } = platformSize(bed);
  const upright = bed.pivotAlong === 'end';
  const platform = upright ? { w: across, h: along } : { w: along, h: across };
  const t = bed.frame.thickness;
  const width = platform.w + 2 * t;
  const height = platform.h + 2 * t;
  const box: Box = { x: 0, y: 0, w: width, h: height };
  const within: Box = { x: t, y: t, ...platform };
  const depths = depthsOf(bed);
  const field = bed.skin ? null : inset(within, bed.cleats.width);
  const { real, checks } = realEdges(bed, box, field);
  const level = levelMaker((of) => realRing(real, of, within, t));
  const levels = bed.skin
    ? [level('skin', 0, box, null, { behind: bed.skin.thickness, material: bed.skin.material })]
    : recessedLevels(bed, depths, { outer: box, within, field }, level);
  const platformBelowTop = depths.platformTop - depths.frameTop;
  const face: Face = {
    width,
    height,
    box,
    levels,
    boards: boardsOf(bed),
    platform,
    platformBelowTop,
    mattressProud: bed.mattress.thickness - platformBelowTop,
    frameDepth: -depths.frameTop,
    ...(real.length > 0 && { real }),
  };
  return { face, checks: [...bedChecks(bed, depths, within, height), ...checks] };
}
