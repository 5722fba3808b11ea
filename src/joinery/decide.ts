import type { Joint } from '../design/schema.ts';
import type { Bar } from './bar.ts';

/** What the person decided for one pair of bars. */
export interface Decision {
  readonly joint: Joint;
  readonly kind: Joint['kind'];
  /** The bar that runs through, when the person named one. */
  readonly through: Bar | null;
}

/** The design's joints, ready to be asked; joints that name unknown parts are never asked for. */
export type Decisions = (a: Bar, b: Bar) => Decision | null;

/**
 * A joint may name a part, which means every member of an array, or one laid part; what names the laid part
 * wins over what names the whole, and the last one wins over earlier ones.
 */
export function decisionsOf(joints: readonly Joint[]): Decisions {
  const byPair = new Map<string, Joint>();
  for (const joint of joints) byPair.set(pairKey(joint.parts[0], joint.parts[1]), joint);
  return (a, b) => {
    if (byPair.size === 0) return null;
    const tries = [
      [a.laid.id, b.laid.id],
      [a.laid.id, b.laid.part],
      [a.laid.part, b.laid.id],
      [a.laid.part, b.laid.part],
    ] as const;
    for (const [p, q] of tries) {
      const joint = byPair.get(pairKey(p, q));
      if (joint) return { joint, kind: joint.kind, through: throughOf(joint, a, b) };
    }
    return null;
  };
}

/** Whether a joint names these two bars, by their laid parts or by the parts that those come from. */
export function namesBoth({ parts: [p, q] }: Joint, a: Bar, b: Bar): boolean {
  const names = (id: string, bar: Bar): boolean => id === bar.laid.id || id === bar.laid.part;
  return (names(p, a) && names(q, b)) || (names(p, b) && names(q, a));
}

const pairKey = (a: string, b: string): string => (a <= b ? `${a}\n${b}` : `${b}\n${a}`);

function throughOf(joint: Joint, a: Bar, b: Bar): Bar | null {
  const names = (bar: Bar): boolean => joint.through === bar.laid.id || joint.through === bar.laid.part;
  if (names(a) === names(b)) return null;
  return names(a) ? a : b;
}
