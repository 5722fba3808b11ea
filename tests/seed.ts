import fc from 'fast-check';

/**
 * The same random inputs at every run, so that a run that fails fails again and a clone is judged by its code alone.
 * `SHOWFACE_SEED=7`, or any other number, takes others: the hunt by hand.
 */
fc.configureGlobal({ seed: Number(process.env.SHOWFACE_SEED ?? 1) });
