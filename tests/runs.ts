/**
 * How many random inputs a test takes, of those that fit into a second or two; `SHOWFACE_RUNS=5` takes five times as
 * many of each, for the long run by hand.
 */
export const runs = (usual: number): number => Math.ceil(usual * Number(process.env.SHOWFACE_RUNS ?? 1));
