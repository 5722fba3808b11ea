import type { Axis, Edge } from '../design/schema.ts';
import type { Mm } from '../measure/units.ts';
import { boxIn } from './boxIn.ts';
import type { Layout } from './laid.ts';
import type { LayoutInput } from './layout.ts';
import { isKnown } from './reference.ts';
import { evaluate } from './solve/linear.ts';
import { linesOf } from './solve/lines.ts';
import { spanOf } from './span.ts';
import { structureOf } from './structure.ts';

/** Where edges are in a layout, along one axis; null for edges of what is not there. */
export function edgesAt(input: LayoutInput, layout: Layout, axis: Axis): (edge: Edge) => Mm | null {
  const { design, face, stocks, sizes } = input;
  const { parts } = design;
  const byId = new Map(parts.map((part) => [part.id, part]));
  const spans = parts.map((part) => spanOf(boxIn(layout.boxes, part), axis));
  const structures = parts.map((part) => structureOf(part, axis, stocks, sizes));
  const lines = linesOf({ axis, face, stocks, parts, structures }, spans);
  const values = spans.flatMap((span) => [span.low, span.high]);
  return (edge) => (isKnown(edge.of, face, byId) ? evaluate(lines.edge(edge), values) : null);
}
