import { newPart } from '../../design/defaults.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { removing, replacing } from '../../design/edit/make.ts';
import { partsListedBy } from '../../design/references.ts';
import { shapeOf } from '../../design/rule/table.ts';
import type { Axis, Design, Member, Part, PartArray, PartOf, Rule } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

export const MEMBER_KINDS = ['strip', 'run', 'panel', 'fitting', 'painted'] as const;
export type MemberKind = Member['kind'];
/** Parts that an array can be made of. */
export type Repeatable = PartOf<MemberKind>;

export const isRepeatable = (part: Part): part is Repeatable =>
  (MEMBER_KINDS as readonly string[]).includes(part.kind);

/** What a part is, without its name and place: a member of an array. */
export function memberOf(part: Repeatable): Member {
  const { id: _id, name: _name, box: _box, on: _on, fixing: _fixing, locked: _locked, ...member } = part;
  return member;
}

/** One member as a part of its own in its place, for whatever shows and changes parts. */
export function partOfMember<K extends MemberKind>(
  array: PartArray,
  member: Extract<Member, { kind: K }>,
  box: Box,
): PartOf<K> {
  const { id, name, on, fixing, locked } = array;
  return { id, name, on, fixing, locked, box, ...member } as unknown as PartOf<K>;
}

/** The array of members of another kind: stock is kept where it serves, and so is what was left out. */
export function withMemberKind(array: PartArray, kind: MemberKind): PartArray {
  const { member: was, box } = array;
  if (kind === was.kind) return array;
  const strips = (k: MemberKind) => k === 'strip' || k === 'run';
  const stock = 'stock' in was && strips(was.kind) && strips(kind) ? { stock: was.stock } : {};
  const finish = kind === 'fitting' ? null : was.finish;
  const made = memberOf(newPart(kind, { id: array.id, name: array.name, box, finish, ...stock }));
  // Strips stretch over the whole; the others begin with two thirds of the room that each has.
  const room = (size: Mm, spacing: PartArray['across']) => Math.max(1, (size / (spacing?.count ?? 1)) * 0.66);
  return {
    ...array,
    member: made.kind === 'strip' ? { ...made, lie: array.across ? 'up' : 'across' } : made,
    memberSize:
      was.kind === 'strip' ? { w: room(box.w, array.across), h: room(box.h, array.up) } : array.memberSize,
    overrides: withoutStocks(array.overrides, kind),
  };
}

/** Stocks of single members do not serve another kind; fittings have no finish either. */
function withoutStocks(overrides: PartArray['overrides'], kind: MemberKind): PartArray['overrides'] {
  return Object.fromEntries(
    Object.entries(overrides).flatMap(([key, { omit, finish }]) => {
      const own = {
        ...(omit ? { omit } : {}),
        ...(finish !== undefined && kind !== 'fitting' ? { finish } : {}),
      };
      return Object.keys(own).length > 0 ? [[key, own]] : [];
    }),
  );
}

export interface Repeat {
  readonly columns: number;
  readonly rows: number;
  readonly gap: Mm;
}

/** A part in its solved box as an array of itself, which grows to the right and up from where the part is. */
export function repeated(part: Repeatable, box: Box, { columns, rows, gap }: Repeat): PartArray {
  const { id, name, on, fixing, locked, finish } = part;
  const along = (size: Mm, count: number) => count * size + (count - 1) * gap;
  const spacing = (count: number) => (count > 1 ? ({ mode: 'flush', count } as const) : null);
  return {
    id,
    name,
    on,
    fixing,
    locked,
    finish,
    kind: 'array',
    box: { ...box, w: along(box.w, columns), h: along(box.h, rows) },
    member: memberOf(part),
    memberSize: { w: box.w, h: box.h },
    across: spacing(columns),
    up: spacing(rows),
    overrides: {},
  };
}

/** The edits that turn a part into an array of itself; rules that would squeeze the array to the part's size go. */
export function editsToRepeat(design: Design, part: Repeatable, box: Box, repeat: Repeat): Edit[] {
  const axes: Axis[] = [
    ...(repeat.columns > 1 ? ['x' as const] : []),
    ...(repeat.rows > 1 ? ['y' as const] : []),
  ];
  if (axes.length === 0) return [];
  const array = repeated(part, box, repeat);
  return [
    replacing('parts', array),
    ...design.rules.filter((rule) => sizes(rule, part.id, axes)).map((rule) => removing('rules', rule.id)),
  ];
}

const sizes = (rule: Rule, id: string, axes: readonly Axis[]): boolean =>
  shapeOf(rule).squeezes === true &&
  (!('axis' in rule) || axes.includes(rule.axis)) &&
  partsListedBy(rule).includes(id);
