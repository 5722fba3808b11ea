import type { Axis } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { otherAxis, spanOf } from '../../layout/span.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

/** An edge that is taped out from the lower left corner of the face, and how far its line goes up or across. */
export interface TapeLine {
  readonly at: Mm;
  /** From the edge of the face to the part that begins or ends there. */
  readonly reach: Mm;
  /** Of a part that is selected. */
  readonly own: boolean;
}

/** Every edge of the parts along an axis beyond the datum, each once. */
export function tapeLines(
  parts: readonly Pick<LaidPart, 'box' | 'part'>[],
  axis: Axis,
  selected: ReadonlySet<string>,
): TapeLine[] {
  const all = parts
    .flatMap(({ box, part }) => {
      const { low, high } = spanOf(box, axis);
      const reach = spanOf(box, otherAxis(axis)).low;
      const own = selected.has(part);
      return [low, high].map((at): TapeLine => ({ at, reach, own }));
    })
    .filter(({ at }) => at > SAME_LENGTH)
    .sort((a, b) => a.at - b.at);
  const found: TapeLine[] = [];
  for (const line of all) {
    const last = found.at(-1);
    if (last && line.at - last.at < SAME_LENGTH)
      found[found.length - 1] = {
        at: last.at,
        reach: Math.min(last.reach, line.reach),
        own: last.own || line.own,
      };
    else found.push(line);
  }
  return found;
}

/**
 * The lane of each label along a line, the nearest one where it covers no other; null where all are taken. What is
 * selected is placed first, then from the datum on. Places, and how long a label is along the line, are pixels.
 */
export function lanesOf(
  lines: readonly { readonly at: number; readonly own: boolean }[],
  long: number,
  lanes: number,
): (number | null)[] {
  const taken: number[][] = Array.from({ length: lanes }, () => []);
  const found: (number | null)[] = lines.map(() => null);
  const order = lines.map((_, i) => i).sort((a, b) => Number(lines[b]?.own) - Number(lines[a]?.own) || a - b);
  for (const i of order) {
    const at = pick(lines, i).at;
    const lane = taken.findIndex((places) => places.every((place) => Math.abs(place - at) >= long));
    if (lane < 0) continue;
    taken[lane]?.push(at);
    found[i] = lane;
  }
  return found;
}
