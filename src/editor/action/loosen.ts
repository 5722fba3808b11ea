import type { Edit } from '../../design/edit/edit.ts';
import { partOfReference } from '../../design/references.ts';
import type { Axis, Design, Edge, Rule, RuleOf } from '../../design/schema.ts';
import { partOf } from '../../layout/reference.ts';
import { mentionsOf } from '../../layout/rule/table.ts';
import { otherAxis } from '../../layout/span.ts';
import { freeId } from './ids.ts';

/** What the hand has of the parts along an axis: all as one, the edge of one that it pulls, or each by itself. */
export type Loosening = 'move' | 'low' | 'high' | 'each';

/** Whether a rule places the part, rather than something else by it. */
export const placesPart = (rule: Rule, id: string): boolean =>
  mentionsOf(rule).follow.some((of) => partOf(of) === id);

/** Whether a rule still says where a part is along an axis, so that a pulled edge has no say in it. */
export const isPlacedBy = (design: Design, id: string, axis: Axis): boolean =>
  design.rules.some(
    (rule) =>
      (rule.kind === 'even' || rule.kind === 'graded' || rule.kind === 'mirror') &&
      (rule.axis === axis || rule.kind === 'mirror') &&
      placesPart(rule, id),
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
    if (!first) edits.push({ kind: 'remove', list: 'rules', id: rule.id });
    else if (first !== rule) edits.push({ kind: 'replace', list: 'rules', id: rule.id, item: first });
    if (!more) continue;
    const id = freeId(design, 'rule', taken);
    taken.add(id);
    edits.push({ kind: 'insert', list: 'rules', item: { ...more, id } });
  }
  return edits;
}

const isOf = (of: string, ids: ReadonlySet<string>) => partOfReference(of).some((id) => ids.has(id));

/** What is left of a rule when parts are carried along an axis; what goes along keeps its distance. */
function carried(rule: Rule, ids: ReadonlySet<string>, axis: Axis, asOne: boolean): Rule | null {
  const goesAlong = (of: string) => asOne && isOf(of, ids);
  if (rule.kind === 'reveal') return ids.has(rule.part) ? revealParts(rule, axis).across : rule;
  // A twin is held along both axes, or not at all.
  if (rule.kind === 'mirror') return ids.has(rule.twin) && !goesAlong(rule.part) ? null : rule;
  if (rule.axis !== axis) return rule;
  switch (rule.kind) {
    case 'between':
      return ids.has(rule.part) ? null : rule;
    case 'set':
    case 'gap':
      return isOf(rule.edge.of, ids) && !goesAlong(rule.from.of) ? null : rule;
    case 'same':
      return rule;
    case 'center':
    case 'even': {
      const parts = rule.parts.filter((id) => !ids.has(id));
      return parts.length === rule.parts.length ? rule : parts.length === 0 ? null : { ...rule, parts };
    }
    case 'graded':
      return rule.parts.some((id) => ids.has(id)) ? null : rule;
  }
}

/** What is left of a rule when one edge of a part is pulled: what held the other edge still does. */
function pulled(
  rule: Rule,
  ids: ReadonlySet<string>,
  axis: Axis,
  side: 'low' | 'high',
): readonly (Rule | null)[] {
  const other = side === 'low' ? 'high' : 'low';
  switch (rule.kind) {
    case 'reveal': {
      if (!ids.has(rule.part)) return [rule];
      const { along, across } = revealParts(rule, axis);
      return [across, endOf(along, other)];
    }
    case 'between':
      return [rule.axis === axis && ids.has(rule.part) ? endOf(rule, other) : rule];
    case 'set':
    case 'gap':
      return [rule.axis === axis && isOf(rule.edge.of, ids) && rule.edge.side !== other ? null : rule];
    case 'center':
      return [carried(rule, ids, axis, true)];
    case 'even':
    case 'graded':
    case 'mirror':
    case 'same':
      return [rule];
  }
}

type Between = RuleOf<'between'>;

/** One end of a part that ran between two edges. */
function endOf({ id, axis, part, insetLow, insetHigh, ...edges }: Between, side: 'low' | 'high'): Rule {
  const distance = side === 'low' ? insetLow : -insetHigh;
  return { id, kind: 'set', axis, edge: { of: part, side }, from: edges[side], distance };
}

/** A margin all around as what it is along and across an axis. */
function revealParts({ id, part, inside, inner, margin }: RuleOf<'reveal'>, axis: Axis) {
  const edge = (side: Edge['side']): Edge => (inner ? { of: inside, side, inner } : { of: inside, side });
  const ends = { low: edge('low'), high: edge('high'), insetLow: margin, insetHigh: margin };
  const on = (axis: Axis): Between => ({ id, kind: 'between', axis, part, ...ends });
  return { along: on(axis), across: on(otherAxis(axis)) };
}
