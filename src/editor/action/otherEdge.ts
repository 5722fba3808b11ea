import type { Axis, Edge, Rule } from '../../design/schema.ts';
import type { Layout } from '../../layout/laid.ts';
import { boundsIn } from '../state/derive.ts';

/** The places in a rule where it names an edge that its part is held to. */
export type EdgePlace = 'from' | 'low' | 'high';

/** The edges that a rule holds its parts to. */
export function edgesHeldTo(rule: Rule): Readonly<Partial<Record<EdgePlace, Edge>>> {
  switch (rule.kind) {
    case 'set':
      return { from: rule.from };
    case 'between':
    case 'center':
      return { low: rule.low, high: rule.high };
    case 'gap':
    case 'even':
    case 'mirror':
    case 'same':
    case 'reveal':
    case 'graded':
      return {};
  }
}

/** A rule with the other edge of a part in one place: of a frame its other face, of anything else its far side. */
export function withOtherEdge(
  rule: Rule,
  place: EdgePlace,
  layout: Layout,
): { readonly rule: Rule; readonly edge: Edge; readonly axis: Axis } | null {
  const edge = edgesHeldTo(rule)[place];
  const bounds = edge && boundsIn(layout, edge.of);
  if (!edge || !bounds || edge.side === 'mid' || !('axis' in rule)) return null;
  const { inner, ...outer } = edge;
  const far = edge.side === 'low' ? 'high' : 'low';
  const other: Edge = !bounds.inner ? { ...outer, side: far } : inner ? outer : { ...edge, inner: true };
  return { rule: { ...rule, [place]: other } as Rule, edge: other, axis: rule.axis };
}
