/**
 * Numbers from 0 (included) to 1 (excluded) that look random and are the same on every run (a linear
 * congruential generator, multiplier and increment of Numerical Recipes, second edition, section 7.1).
 */
export function shuffler(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** One to `most` of a list, each once. */
export function someOf<T>(list: readonly T[], most: number, random: () => number): T[] {
  const left = [...list];
  const many = Math.min(left.length, 1 + Math.floor(random() * most));
  return Array.from({ length: many }, () => left.splice(Math.floor(random() * left.length), 1)).flat();
}
