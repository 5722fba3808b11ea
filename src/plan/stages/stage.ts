import { sameItems } from '../../layout/changes.ts';

/** What a stage came to, with the inputs that it followed from. */
export interface Kept<R> {
  readonly inputs: readonly unknown[];
  readonly result: R;
}

/** One stage of a graph: what it comes to by facts, or what it came to last while its inputs are the very same. */
export type Stage<F, R> = (facts: F, last: Kept<R> | undefined) => Kept<R>;

/** Stages by the facts that they make, in their order: each may follow from what was given and from those before it. */
export type Stages<F, R> = { readonly [N in keyof R]: Stage<F, R[N]> };

/** What each stage came to. Immutable: the next one is made from it. */
export type Made<R> = { readonly [N in keyof R]: Kept<R[N]> };

/**
 * A stage.
 * @param from its inputs, named once; the design is immutable, so the same value means the same content
 * @param make its result; `last` is the one before, for what is made out of that
 */
export const stage =
  <F, I extends object, R>(from: (facts: F) => I, make: (inputs: I, last: R | undefined) => R): Stage<F, R> =>
  (facts, last) => {
    const inputs = from(facts);
    const values = Object.values(inputs);
    return last && sameItems(last.inputs, values)
      ? last
      : { inputs: values, result: make(inputs, last?.result) };
  };

/** Goes through stages, all of a graph or some, from what is given and what they came to last. */
export function through<G extends object, R extends object>(
  stages: Partial<Stages<G & R, R>>,
  given: G,
  last: Partial<Made<R>>,
): { readonly facts: G & R; readonly made: Partial<Made<R>> } {
  const facts = { ...given } as G & R;
  const made: { [N in keyof R]?: Kept<R[N]> } = {};
  for (const name of Object.keys(stages) as (keyof R)[]) {
    const now = stages[name]?.(facts, last[name]);
    if (!now) continue;
    made[name] = now;
    (facts as R)[name] = now.result;
  }
  return { facts, made };
}
