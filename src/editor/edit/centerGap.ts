import type { Edit } from '../../design/edit/edit.ts';
import type { Design, RuleOf } from '../../design/schema.ts';
import { type Span, withSpan } from '../../layout/span.ts';
import { structureOf } from '../../layout/structure.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { placeOfEdge } from '../document/edges.ts';
import type { Shown } from '../document/shown.ts';
import { stocksOf } from '../shipped/tables.ts';
import { editsToPlace } from './place.ts';

/** Why the gaps beside what is centered cannot be given by themselves. */
export type GapFixed = 'block' | 'locked' | 'stock';

/** What decides the gaps of a center rule; null where the size of its one part does and may be changed. */
export function gapFixedBy(design: Design, rule: RuleOf<'center'>): GapFixed | null {
  const [id, ...others] = rule.parts;
  const part = design.parts.find((one) => one.id === id);
  if (!part || others.length > 0) return 'block';
  if (part.locked) return 'locked';
  return structureOf(part, rule.axis, stocksOf(design), undefined).fixed === null ? null : 'stock';
}

/** The room that a center rule centers in; null where an edge of it is not there. */
export function roomOf(rule: RuleOf<'center'>, shown: Shown): Span | null {
  const low = placeOfEdge(rule.low, rule.axis, shown);
  const high = placeOfEdge(rule.high, rule.axis, shown);
  return low === null || high === null ? null : { low, high };
}

/** The edits that size the one part of a center rule so that `gap` is left on both sides of it. */
export function editsToGap(
  { design, layout }: Shown,
  rule: RuleOf<'center'>,
  { low, high }: Span,
  gap: Mm,
): Edit[] {
  const id = pick(rule.parts, 0);
  const box = layout.boxes.get(id);
  if (!box) return [];
  const next = withSpan(box, rule.axis, low + gap, high - low - 2 * gap);
  return editsToPlace(design, new Map([[id, box]]), new Map([[id, next]]));
}
