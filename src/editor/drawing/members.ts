import type { Design } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { overrideOf } from '../edit/members.ts';
import { isMany, placesOf } from '../edit/places.ts';
import { stocksOf } from '../shipped/tables.ts';

/** What is shown of a selected array besides its members. */
export interface MemberMarks {
  /** The chosen member; null: the array as a whole. */
  readonly chosen: string | null;
  /** Outlined by dashes: places left empty, and the whole while one member is chosen. */
  readonly boxes: readonly Box[];
}

/** Null for parts that are neither arrays nor fills. */
export function memberMarks(
  design: Design,
  layout: Layout,
  id: string,
  member: string | null,
): MemberMarks | null {
  const array = design.parts.find((p) => p.id === id);
  if (!isMany(array)) return null;
  // Of a fill all pieces would be cut to tell that there is nothing to mark, in every frame of a drag.
  if (member === null && !Object.values(array.overrides).some(({ omit }) => omit))
    return { chosen: null, boxes: [] };
  const box = layout.boxes.get(id) ?? array.box;
  const { slots } = placesOf(array, box, stocksOf(design));
  const chosen = slots.find((s) => s.id === member)?.id ?? null;
  const empty = slots.filter((s) => overrideOf(array, s).omit && (chosen === null || s.id === chosen));
  return { chosen, boxes: [...empty.map((s) => s.box), ...(chosen === null ? [] : [box])] };
}
