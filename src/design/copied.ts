import { partOfReference } from './references.ts';
import type { Joint } from './schema.ts';

/** How copies stand to what they were copied from. */
export interface Copies {
  /** Id of each copied part's copy; undefined for parts that were not copied. */
  readonly copyOf: (part: string) => string | undefined;
  /** Whether a copy still meets a part that stays, so that their joint is worth choosing again. */
  readonly meets: (copy: string, stays: string) => boolean;
  /** A member of a copied array, such as `2,0`, in the copy; its own place unless it is mirrored. */
  readonly member?: (part: string, place: string) => string;
  readonly nextId: () => string;
}

/** The chosen joints of copies: those between copied parts, and those with parts that stay where they still meet. */
export function copiedJoints(joints: readonly Joint[], copies: Copies): Joint[] {
  return joints.flatMap((joint): Joint[] => {
    const bases = joint.parts.map((p) => partOfReference(p)[0] ?? p);
    const copied = bases.map(copies.copyOf);
    const copy = copied.find((id) => id !== undefined);
    const stays = bases.find((_, i) => copied[i] === undefined);
    if (copy === undefined || (stays !== undefined && !copies.meets(copy, stays))) return [];
    const [a, b] = joint.parts;
    const through = joint.through === undefined ? {} : { through: renamed(joint.through, copies) };
    return [{ ...joint, id: copies.nextId(), parts: [renamed(a, copies), renamed(b, copies)], ...through }];
  });
}

/** A reference to a part, or to a member of an array, that names the copy. */
function renamed(reference: string, { copyOf, member }: Copies): string {
  const [part] = partOfReference(reference);
  const copy = part === undefined ? undefined : copyOf(part);
  if (part === undefined || copy === undefined) return reference;
  const place = reference.slice(part.length + 1, -1);
  return reference === part ? copy : `${copy}[${member ? member(part, place) : place}]`;
}
