import type { FinishInput } from '../finish/input.ts';
import type { JointFound } from '../joinery/piece.ts';
import { isGlued, type LaidPart } from '../layout/laid.ts';

/** What is glued: parts to what they lie on, and where a part is, its joints too. */
export function gluing(
  parts: readonly LaidPart[],
  joints: readonly JointFound[],
): Pick<FinishInput, 'glued' | 'joined'> {
  const glued = new Set(parts.filter(isGlued).map((laid) => laid.id));
  const joined = new Map<string, Set<string>>();
  const join = (a: string, b: string) => {
    const known = joined.get(a);
    if (known) known.add(b);
    else joined.set(a, new Set([b]));
  };
  for (const {
    parts: [a, b],
  } of joints) {
    if (a === b || (!glued.has(a) && !glued.has(b))) continue;
    join(a, b);
    join(b, a);
  }
  return { glued, joined };
}
