import type { OwnAssembly } from '../../design/assembly/own.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { inserting } from '../../design/edit/make.ts';
import type { Design, Group, Part } from '../../design/schema.ts';
import { preview, startState } from '../../design/state.ts';
import type { Box } from '../../geometry/shape.ts';
import { AXES, middle, spanOf, withSpan } from '../../layout/span.ts';
import { under } from '../../list/at.ts';
import { namesOf, suppliesIn } from './built.ts';
import { copiesOf } from './copy.ts';
import type { Created } from './created.ts';
import { freeId, freeName, numberedName } from './ids.ts';

/** The axes along which an assembly of a person's own keeps its length. */
export const keptBy = (own: OwnAssembly) => ({ x: own.across.least === null, y: own.up.least === null });

/**
 * The edits that add an assembly of a person's own over a box: as long as that along the axes that it stretches along,
 * but no shorter than it can be, and in the middle of it along the others.
 */
export function createOwn(design: Design, own: OwnAssembly, over: Box): Created {
  const { edits, idOf } = copiesOf(design, { ...own, keepClears: [], from: null }, 0, 0);
  const id = idOf(own.ground);
  const groups = groupsOf(design, own, edits, idOf);
  const named = namesIn(design, edits, groups);
  const box = boxFor(own, over);
  const items = edits.flatMap((edit): Edit[] => {
    if (edit.kind !== 'insert' || edit.list === 'groups') return [];
    if (edit.list !== 'parts') return [edit];
    const name = under(named, edit.item.id);
    const item =
      edit.item.id === id ? { ...edit.item, name, box: groundBox(own, edit.item.box, box) } : edit.item;
    return [{ ...edit, item: { ...item, name } }];
  });
  const ground = items.flatMap((edit) => (edit.kind === 'insert' && edit.list === 'parts' ? edit.item : []));
  const part = under(new Map(ground.map((one) => [one.id, one])), id);
  const group = groups.find(({ parts }) => parts.includes(id));
  return {
    edits: [...items, ...groups.map((item) => inserting('groups', item))],
    id,
    name: group?.name ?? part.name,
    ...(group && { group: group.id }),
    keeps: keptBy(own),
    box: part.box,
    part,
  };
}

/** Where it lies over a box. */
function boxFor(own: OwnAssembly, over: Box): Box {
  let box = over;
  for (const axis of AXES) {
    const { size, least } = axis === 'x' ? own.across : own.up;
    const { low, high } = spanOf(over, axis);
    const length = least === null ? size : Math.max(least, high - low);
    box = withSpan(box, axis, middle({ low, high }) - length / 2, length);
  }
  return box;
}

/** The box of the ground of what takes up another: stock of a frame may lie outside of its path. */
function groundBox({ across, up }: OwnAssembly, { w, h }: Box, whole: Box): Box {
  const [dx, dy] = [(across.size - w) / 2, (up.size - h) / 2];
  return { x: whole.x + dx, y: whole.y + dy, w: whole.w - 2 * dx, h: whole.h - 2 * dy };
}

/** Its groups under names that are free, and one of all parts that are in none of them. */
function groupsOf(
  design: Design,
  own: OwnAssembly,
  edits: readonly Edit[],
  idOf: (id: string) => string,
): Group[] {
  const taken: { readonly name: string }[] = [...design.groups];
  const free = (name: string): string => {
    const found = freeName(taken, name.replace(/ \d+$/, ''));
    taken.push({ name: found });
    return found;
  };
  const inner = edits.flatMap((edit) => (edit.kind === 'insert' && edit.list === 'groups' ? edit.item : []));
  const grouped = new Set(inner.flatMap(({ parts }) => parts));
  const parts = own.parts.map(({ id }) => idOf(id)).filter((id) => !grouped.has(id));
  const ids = new Set(inner.map(({ id }) => id));
  const whole = parts.length > 1 ? [{ id: freeId(design, 'group', ids), name: free(own.name), parts }] : [];
  return [...whole, ...inner.map((group) => ({ ...group, name: free(group.name) }))];
}

/** What its parts are called: those of a door and such by that, the others as they were, counted where that is taken. */
function namesIn(design: Design, edits: readonly Edit[], groups: readonly Group[]): Map<string, string> {
  const there = preview(startState(design), edits);
  const has = suppliesIn(there);
  const built = new Map(groups.flatMap((group) => namesOf(there, group, has)));
  const taken = new Set(design.parts.map(({ name }) => name.toLowerCase()));
  const parts = edits.flatMap((edit): Part[] =>
    edit.kind === 'insert' && edit.list === 'parts' ? [edit.item] : [],
  );
  return new Map(
    parts.map(({ id, name }) => {
      const called = built.get(id) ?? (taken.has(name.toLowerCase()) ? counted(taken, name) : name);
      taken.add(called.toLowerCase());
      return [id, called];
    }),
  );
}

const counted = (taken: ReadonlySet<string>, name: string): string =>
  numberedName(taken, name.replace(/ \d+$/, ''), 2);
