import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { isPaint } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { designPart } from '../../layout/reference.ts';

/** The edits that give new paint another color than that of what it lies on: nothing else would show it. */
export function editsToStandOut(design: Design, id: string): Edit[] {
  const part = design.parts.find((one) => one.id === id);
  if (!part || !isPaint(part)) return [];
  const under = design.parts.find((one) => one.id === designPart(part.on));
  const other = design.finishes.find((finish) => finish.id !== part.finish);
  if (under?.finish !== part.finish || !other) return [];
  return [replacing('parts', { ...part, finish: other.id })];
}
