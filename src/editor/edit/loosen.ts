import type { Edit } from '../../design/edit/edit.ts';
import { inserting, removing, replacing } from '../../design/edit/make.ts';
import { mentionsOf, partOfReference } from '../../design/references.ts';
import { inSlot, isAlong, type NamedSlot, shapeOf, slotsOf, withFields } from '../../design/rule/table.ts';
import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import { partOf } from '../../layout/reference.ts';
import { freeId } from './ids.ts';

/** What the hand has of the parts along an axis: all as one, the edge of one that it pulls, or each by itself. */
export type Loosening = 'move' | 'low' | 'high' | 'each';

/** Whether a rule places the part, rather than something else by it. */
export const placesPart = (rule: Rule, id: string): boolean =>
  mentionsOf(rule).follow.some((of) => partOf(of) === id);

/** Whether a rule still says where a part is along an axis, so that a pulled edge has no say in it. */
export const isPlacedBy = (design: Design, id: string, axis: Axis): boolean =>
  design.rules.some(
    (rule) => shapeOf(rule).pulled === 'place' && isAlong(rule, axis) && placesPart(rule, id),
  );

/** The edits that let parts go from the rules that a gesture along an axis breaks, and from no others. */
export function editsToLoosen(
  design: Design,
  ids: ReadonlySet<string>,
  axis: Axis,
  hand: Loosening = 'move',
  breaks: (rule: Rule) => boolean = () => true,
): Edit[] {
  const edits: Edit[] = [];
  const taken = new Set<string>();
  for (const rule of design.rules) {
    if (!breaks(rule)) continue;
    const kept =
      hand === 'low' || hand === 'high'
        ? pulled(rule, ids, axis, hand)
        : [carried(rule, ids, axis, hand === 'move')];
    const [first, more] = kept;
    if (!first) edits.push(removing('rules', rule.id));
    else if (first !== rule) edits.push(replacing('rules', first));
    if (!more) continue;
    const id = freeId(design, 'rule', taken);
    taken.add(id);
    edits.push(inserting('rules', { ...more, id }));
  }
  return edits;
}

const isOf = (of: string, ids: ReadonlySet<string>) => partOfReference(of).some((id) => ids.has(id));

/** What is left of a rule when parts are carried along an axis; what goes along keeps its distance. */
function carried(rule: Rule, ids: ReadonlySet<string>, axis: Axis, asOne: boolean): Rule | null {
  const split = shapeOf(rule).split?.(rule, axis);
  if (split) return placesAny(rule, ids) ? (split.across as Rule) : rule;
  if (!isAlong(rule, axis)) return rule;
  let kept = rule;
  for (const slot of slotsOf(rule)) {
    if (slot.is === 'parts') {
      const parts = inSlot(rule, slot);
      const others = parts.filter((id) => !ids.has(id));
      if (others.length === parts.length || slot.carried === 'all') continue;
      if (others.length === 0 || slot.carried === 'nothing') return null;
      kept = withFields(kept, { [slot.field]: others });
    } else if ((slot.is === 'part' || slot.is === 'edge') && slot.role === 'follow') {
      const by = slotsOf(rule).find(({ field }) => field === slot.by);
      const goesAlong = asOne && by !== undefined && isOf(namedIn(rule, by), ids);
      if (isOf(namedIn(rule, slot), ids) && !goesAlong) return null;
    }
  }
  return kept;
}

const namedIn = (rule: Rule, slot: NamedSlot): string =>
  slot.is === 'edge' ? inSlot(rule, slot).of : slot.is === 'part' ? inSlot(rule, slot) : '';

/** What is left of a rule when one edge of a part is pulled: what held the other edge still does. */
function pulled(
  rule: Rule,
  ids: ReadonlySet<string>,
  axis: Axis,
  side: 'low' | 'high',
): readonly (Rule | null)[] {
  const other = side === 'low' ? 'high' : 'low';
  const shape = shapeOf(rule);
  const split = shape.split?.(rule, axis);
  switch (shape.pulled) {
    case 'half': {
      if (!isAlong(rule, axis) || !placesAny(rule, ids)) return [rule];
      const along = (split?.along ?? rule) as Rule;
      const half = shapeOf(along).half?.(along, other) as Rule;
      return split ? [split.across as Rule, half] : [half];
    }
    case 'edge':
      return [
        isAlong(rule, axis) && placedEdges(rule, ids).some((edge) => edge.side !== other) ? null : rule,
      ];
    case 'block':
      return [carried(rule, ids, axis, true)];
    case 'place':
    case 'size':
      return [rule];
  }
}

/** Whether a rule places one of the parts by name. */
const placesAny = (rule: Rule, ids: ReadonlySet<string>): boolean =>
  mentionsOf(rule).follow.some((id) => ids.has(id));

/** The edges of parts that a rule places. */
const placedEdges = (rule: Rule, ids: ReadonlySet<string>): readonly Edge[] =>
  slotsOf(rule).flatMap((slot) =>
    slot.is === 'edge' && slot.role === 'follow' && isOf(inSlot(rule, slot).of, ids)
      ? [inSlot(rule, slot)]
      : [],
  );
