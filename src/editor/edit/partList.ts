import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Design } from '../../design/schema.ts';
import { editsToLayOn } from './lay.ts';
import { groupOf } from './movable.ts';

/** Where something of the part list is let go: over or under a row, or on it. */
export interface RowDrop {
  readonly target: string;
  readonly place: 'before' | 'after' | 'onto';
}

/**
 * The edits of a drop in the part list: over or under a row it goes to that place in the order, on a part it lies on it
 * from now on. None where that cannot be.
 */
export function editsToDrop(design: Design, id: string, { target, place }: RowDrop): Edit[] {
  if (id === target) return [];
  if (place === 'onto') return onto(design, id, target);
  const group = design.groups.find((one) => one.parts.includes(id) && one.parts.includes(target));
  if (group) {
    const parts = [...group.parts];
    parts.splice(placeOf(group.parts, id, target, place), 0, ...parts.splice(parts.indexOf(id), 1));
    return [replacing('groups', { ...group, parts })];
  }
  // What is in a group has its place there.
  if (groupOf(design, id) !== groupOf(design, target)) return [];
  for (const list of ['parts', 'groups', 'keepClears'] as const) {
    const ids = design[list].map((item) => item.id);
    if (ids.includes(id) && ids.includes(target))
      return [{ kind: 'move', list, id, to: placeOf(ids, id, target, place) }];
  }
  return [];
}

/** The place that it then has among the others. */
function placeOf(ids: readonly string[], id: string, target: string, place: 'before' | 'after'): number {
  const rest = ids.filter((one) => one !== id);
  return rest.indexOf(target) + (place === 'after' ? 1 : 0);
}

function onto(design: Design, id: string, target: string): Edit[] {
  const part = design.parts.find((one) => one.id === id);
  const isThere = design.parts.some((one) => one.id === target);
  return part && isThere ? editsToLayOn(design, part, target) : [];
}

/** The edits by which a part, group or keep-clear has another name; none where it has it, or is given none. */
export function editsToName(design: Design, id: string, name: string): Edit[] {
  const given = name.trim();
  const named = <T extends { readonly id: string; readonly name: string }>(list: readonly T[]) => {
    const item = list.find((one) => one.id === id);
    return item && given !== '' && item.name !== given ? { ...item, name: given } : null;
  };
  const part = named(design.parts);
  if (part) return [replacing('parts', part)];
  const group = named(design.groups);
  if (group) return [replacing('groups', group)];
  const keepClear = named(design.keepClears);
  return keepClear ? [replacing('keepClears', keepClear)] : [];
}
