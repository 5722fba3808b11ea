import type { Design } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { keptBy } from '../../list/keptBy.ts';
import { namesIn } from '../../plan/words/say.ts';
import type { Boxes } from './place.ts';

/** Ids of parts and keep-clears that a selection stands for: groups opened. */
export function itemsOf(design: Design, selection: readonly string[]): string[] {
  const ids = selection.flatMap((id) => design.groups.find((g) => g.id === id)?.parts ?? [id]);
  return [...new Set(ids)];
}

/** The parts among what is selected. */
export const partsIn = (design: Design, selection: readonly string[]): string[] =>
  itemsOf(design, selection).filter((id) => design.parts.some((part) => part.id === id));

/** What of the selection may be moved, with its box as laid out: locked parts stay. */
export function movableBoxes(design: Design, boxes: Boxes, selection: readonly string[]): Map<string, Box> {
  const found = new Map<string, Box>();
  for (const id of itemsOf(design, selection)) {
    const part = design.parts.find((p) => p.id === id);
    const box = part ? (boxes.get(id) ?? part.box) : design.keepClears.find((k) => k.id === id)?.box;
    if (box && !part?.locked) found.set(id, box);
  }
  return found;
}

/** The outermost group that holds a part, if any: clicking a part of a group takes the group. */
export function groupOf(design: Design, part: string): string | null {
  return design.groups.find((g) => g.parts.includes(part))?.id ?? null;
}

/** Kept: lists name every part. */
const namesOf = keptBy(({ keepClears, groups, parts }: Design) => namesIn(keepClears, groups, parts));

/** Name of a part, group or keep-clear. */
export const nameOf = (design: Design, id: string): string => namesOf(design).get(id) ?? id;
