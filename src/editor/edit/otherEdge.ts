import { inSlot, slotsOf, withFields } from '../../design/rule/table.ts';
import type { Axis, Edge, Rule } from '../../design/schema.ts';
import { boundsIn, type Shown } from '../document/shown.ts';

/** The edges that a rule holds its parts to, where the person may choose the other one, by their fields. */
export const edgesHeldTo = (rule: Rule): readonly { readonly field: string; readonly edge: Edge }[] =>
  slotsOf(rule).flatMap((slot) =>
    slot.is === 'edge' && slot.turns ? [{ field: slot.field, edge: inSlot(rule, slot) }] : [],
  );

/** A rule with the other edge of a thing in one field: of a frame its other face, of anything else its far side. */
export function withOtherEdge(
  rule: Rule,
  field: string,
  shown: Shown,
): { readonly rule: Rule; readonly edge: Edge; readonly axis: Axis } | null {
  const edge = edgesHeldTo(rule).find((held) => held.field === field)?.edge;
  const bounds = edge && boundsIn(shown, edge.of);
  if (!edge || !bounds || edge.side === 'mid' || !('axis' in rule)) return null;
  const { inner, ...outer } = edge;
  const far = edge.side === 'low' ? 'high' : 'low';
  const other: Edge = !bounds.inner ? { ...outer, side: far } : inner ? outer : { ...edge, inner: true };
  return { rule: withFields(rule, { [field]: other }), edge: other, axis: rule.axis };
}
