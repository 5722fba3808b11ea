import type { Edit } from '../../design/edit/edit.ts';
import type { Design, PartKind } from '../../design/schema.ts';
import { designPart } from '../../layout/reference.ts';

/** Kinds of which nothing but their color is seen. */
const ONLY_COLOR: ReadonlySet<PartKind> = new Set<PartKind>(['painted']);

/** The edits that give a new part another color than that of what it lies on, where nothing else would show it. */
export function editsToStandOut(design: Design, id: string): Edit[] {
  const part = design.parts.find((one) => one.id === id);
  if (!part || !ONLY_COLOR.has(part.kind)) return [];
  const under = design.parts.find((one) => one.id === designPart(part.on));
  const other = design.finishes.find((finish) => finish.id !== part.finish);
  if (under?.finish !== part.finish || !other) return [];
  return [{ kind: 'replace', list: 'parts', id, item: { ...part, finish: other.id } }];
}
