import type { Fact } from '../design/job/schema.ts';

/** What is said where work goes on as planned. */
const AS_PLANNED: ReadonlySet<Fact['is']> = new Set(['board', 'cut', 'sawn', 'done', 'bought']);

/**
 * Whether all that was said since some facts held is that work went on: a plan made of those still tells how the rest
 * is cut. What was taken back, or said otherwise, may change it.
 */
export function goesOn(then: readonly Fact[], now: readonly Fact[]): boolean {
  const before = new Map(then.map((fact) => [fact.id, fact.at]));
  const kept = now.filter(({ id }) => before.has(id));
  return (
    kept.length === then.length &&
    now.every(({ id, is, at }) => (before.has(id) ? before.get(id) === at : AS_PLANNED.has(is)))
  );
}
