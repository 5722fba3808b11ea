/**
 * What is worked out of a shape, kept by all that it follows from: `key` names the work with its settings and
 * holds the shape's corners. Work is done on the shape at the origin, whichever letter asks first, so that
 * what comes out depends on nothing but the key, and equal letters come out equal.
 */
export type ShapeMemory = <R>(key: string, work: () => R) => R;

/** As many letters as the tool takes in all, three colors of each. */
const MOST_SHAPES = 6000;

/** Keeps the results last asked for: at least `most`, at most twice as many. */
export function shapeMemory(most: number = MOST_SHAPES): ShapeMemory {
  let young = new Map<string, unknown>();
  let old = new Map<string, unknown>();
  return <R>(key: string, work: () => R): R => {
    // A key always names the same work, and so the same type.
    if (young.has(key)) return young.get(key) as R;
    const result = old.has(key) ? (old.get(key) as R) : work();
    if (young.size >= most) [young, old] = [new Map(), young];
    young.set(key, result);
    return result;
  };
}
