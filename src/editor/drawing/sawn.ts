import { isBars } from '../../design/made.ts';
import { distance } from '../../geometry/point.ts';
import { ringsOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { MoldedLength, Piece, Solid } from '../../joinery/piece.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { grouped, groupOf } from '../../list/grouped.ts';
import type { Plan } from '../../plan/types.ts';

/** A part as it is drawn: once it is cut, its pieces where it has several, and straight lengths of molding. */
export type DrawnPart = LaidPart & {
  readonly pieces?: Region;
  readonly lengths?: readonly MoldedLength[];
};

/**
 * How parts are drawn: strips and runs to their cuts, where they lie as they did when the plan was made. Those that
 * are carried just now, and those that the saw leaves nothing of, are drawn as they are laid. The same part gives the
 * same object; where it stands as it did in the list before it is not even looked up.
 */
export function sawnBy(
  plan: Pick<Plan, 'layout' | 'joinery'> | null,
): (parts: readonly LaidPart[]) => readonly DrawnPart[] {
  const planned = new Map(plan?.layout.parts.map((part) => [part.id, part.region]));
  const left = new Map(plan?.joinery.solids.map((solid) => [solid.part, solid]));
  const pieces = grouped(plan?.joinery.pieces ?? [], ({ part }) => part);
  const drawn = new WeakMap<LaidPart, DrawnPart>();
  const drawnAs = (part: LaidPart): DrawnPart => {
    if (!isBars(part)) return part;
    const known = drawn.get(part);
    if (known) return known;
    const [before, solid] = [planned.get(part.id), left.get(part.id)];
    const lies = before !== undefined && sameRegion(before, part.region);
    const now = lies && solid ? cutTo(part, solid, groupOf(pieces, part.id)) : part;
    drawn.set(part, now);
    return now;
  };
  let last: readonly [laid: readonly LaidPart[], drawn: readonly DrawnPart[]] = [[], []];
  return (parts) => {
    const [laid, before] = last;
    const now = parts.map((part, i) => (part === laid[i] ? pick(before, i) : drawnAs(part)));
    last = [parts, now];
    return now;
  };
}

function cutTo(part: LaidPart, { region, lengths }: Solid, pieces: readonly Piece[]): DrawnPart {
  if (!lengths && pieces.length < 2 && sameRegion(region, part.region)) return part;
  const several = pieces.length > 1 && { pieces: pieces.flatMap(({ placed }) => placed) };
  return { ...part, region, ...several, ...(lengths && { lengths }) };
}

/** Whether two areas have the same corners, in the same order. */
function sameRegion(a: Region, b: Region): boolean {
  const [p, q] = [ringsOf(a).flat(), ringsOf(b).flat()];
  return (
    p.length === q.length &&
    p.every((one, i) => {
      const other = q[i];
      return other !== undefined && distance(one, other) <= SAME_LENGTH;
    })
  );
}
