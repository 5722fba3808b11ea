import type { Mm } from '../measure/units.ts';
import type { Bed } from './bed.ts';
import type { BedBoard } from './face.ts';

/** The platform: the mattress and the allowance around it, across and along the bed. */
export function platformSize(bed: Bed): { readonly across: Mm; readonly along: Mm } {
  return {
    across: bed.mattress.width + bed.allowance.width,
    along: bed.mattress.length + bed.allowance.length,
  };
}

/** Lengths of two pairs of boards, one of which runs past the other at all four corners. */
function pair(across: Mm, along: Mm, lap: Mm, runsPast: 'sides' | 'ends'): { side: Mm; end: Mm } {
  return runsPast === 'sides' ? { side: along + lap, end: across } : { side: along, end: across + lap };
}

/**
 * The boards of the bare bed with their true lengths. Rails stand around the platform, so the pair that
 * runs past is longer than the platform by two thicknesses; cleats lie within it, so the pair between the
 * others is shorter by two widths. "Side" is along the bed's length, whichever way the bed turns.
 */
export function boardsOf(bed: Bed): BedBoard[] {
  const { across, along } = platformSize(bed);
  const { frame, cleats } = bed;
  const rail = pair(across, along, 2 * frame.thickness, frame.runsPast);
  const within = 2 * cleats.width;
  const cleat = pair(across - within, along - within, within, cleats.runsPast);
  const rails = { width: frame.depth, thickness: frame.thickness, count: 2, material: frame.material };
  const strips = { width: cleats.width, thickness: cleats.depth, count: 2, material: frame.material };
  return [
    { name: 'side rail', length: rail.side, ...rails },
    { name: 'end rail', length: rail.end, ...rails },
    { name: 'side cleat', length: cleat.side, ...strips },
    { name: 'end cleat', length: cleat.end, ...strips },
  ];
}
