import type { SheetCut } from '../result.ts';

/**
 * What a saw calls the cut: a rip runs along the longer edge of the part that it cuts, a crosscut along the shorter
 * one; of a square part along the length of the sheet and across it. Common practice, no source.
 */
export const wayOf = ({ kind, of }: SheetCut): SheetCut['kind'] =>
  (kind === 'rip') === of.w >= of.h ? 'rip' : 'cross';

/** The edge of that part which the fence is measured from, with the sheet lying as it is drawn. */
export const fencedFrom = ({ kind }: SheetCut): 'low' | 'left' => (kind === 'rip' ? 'low' : 'left');
