/** What is found of things, found once for all that are alike by their figures. */
export function findOnce<T, R>(figures: (of: T) => readonly unknown[], find: (of: T) => R): (of: T) => R {
  const known = new Map<string, R>();
  return (of) => {
    const key = figures(of).join();
    const found = known.get(key) ?? find(of);
    known.set(key, found);
    return found;
  };
}
