import { type Copies, copiedJoints } from '../../design/copied.ts';
import type { Joint, Part } from '../../design/schema.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Arranging } from './arranged.ts';

/** The chosen joints of copies; with parts that stay, those whose boxes the copy meets. */
export function jointsOfCopies(
  { input: { design }, layout }: Arranging,
  twins: ReadonlyMap<string, string>,
  added: readonly Part[],
  nextId: (word: string) => string,
  member?: Copies['member'],
): Joint[] {
  const boxes = new Map(added.map(({ id, box }) => [id, box]));
  return copiedJoints(design.joints, {
    copyOf: (part) => twins.get(part),
    meets: (copy, stays) => {
      const [a, b] = [boxes.get(copy), layout.boxes.get(stays)];
      return a !== undefined && b !== undefined && boxesMeet(a, b);
    },
    ...(member ? { member } : {}),
    nextId: () => nextId('joint'),
  });
}
