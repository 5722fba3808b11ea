import { inSlot, slotsOf, withFields } from '../../design/rule/table.ts';
import type { Axis, Edge, Rule, RuleOf } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';

/** An edge as a part sees it that a tape found elsewhere than planned. */
export type ShiftedEdge = Edge & { readonly by?: Mm };

/** A part that a tape found elsewhere than planned: how far up or to the right, seen from what stands before it. */
export interface Found {
  readonly part: string;
  /** Toward which it lies from the piece that was measured against it. */
  readonly side: 'low' | 'high';
  readonly by: Mm;
  /** Where parts begin along the axis. */
  readonly startOf: (part: string) => Mm;
}

export const edgeBy = (edge: ShiftedEdge, by: Mm): ShiftedEdge => ({ ...edge, by: (edge.by ?? 0) + by });

/** A rule that sees the edges which lead it elsewhere. */
export function ledBy(rule: Rule, by: Mm): Rule {
  const leads = slotsOf(rule).filter((slot) => slot.is === 'edge' && slot.role === 'lead');
  const edges = leads.map(({ field }) => [field, edgeBy(inSlot(rule, { is: 'edge', field }), by)]);
  return withFields(rule, Object.fromEntries(edges));
}

/** Parts of a rule that stand where they are. The one that is `told` bears the rule's name. */
export const standing = (
  { id, axis }: { readonly id: string; readonly axis: Axis },
  parts: readonly string[],
  told: string | null,
  placeOf: (part: string) => Mm,
): RuleOf<'set'>[] =>
  parts.map((part) => ({
    ...{ id: part === told ? id : `${id}~${part}`, kind: 'set', axis },
    ...{ edge: { of: part, side: 'low' }, from: { of: 'face', side: 'low' } },
    distance: placeOf(part),
  }));
