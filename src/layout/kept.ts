import { sameItems } from './changes.ts';

interface Kept {
  readonly facts: readonly unknown[];
  readonly result: unknown;
}

/**
 * What was found of things, with the facts it followed from: given again while every fact is the very same. What was
 * found of a thing goes with it. A planner owns it and hands it in; it changes how soon a result comes, never which.
 */
export class KeptResults {
  readonly #known = new WeakMap<object, Map<string, Kept>>();

  /** @param what which result of the thing; the thing itself is a fact without being named */
  of<R>(thing: object, what: string, facts: readonly unknown[], find: () => R): R {
    const known = this.#known.get(thing) ?? new Map<string, Kept>();
    const kept = known.get(what);
    if (kept && sameItems(kept.facts, facts)) return kept.result as R;
    const result = find();
    known.set(what, { facts, result });
    this.#known.set(thing, known);
    return result;
  }

  /** What `of` would give without finding it; undefined where that is to be found. */
  known<R>(thing: object, what: string, facts: readonly unknown[]): R | undefined {
    const kept = this.#known.get(thing)?.get(what);
    return kept && sameItems(kept.facts, facts) ? (kept.result as R) : undefined;
  }
}
