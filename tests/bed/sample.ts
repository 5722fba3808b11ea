import type { Bed } from '../../src/bed/bed.ts';
import { inches } from '../../src/measure/units.ts';

/**
 * An upright bed for a 38 x 75 in mattress of 5 in: 1 1/2 x 7 1/4 in frame, 1/2 in platform on 1 1/2 in
 * cleats whose tops lie 4 in below the frame's top. Pivot 14 in above the floor.
 */
export function sampleBed(changes: Partial<Bed> = {}): Bed {
  return {
    pivotAlong: 'end',
    mattress: { width: inches(38), length: inches(75), thickness: inches(5) },
    allowance: { width: inches(0.5), length: 0 },
    frame: { thickness: inches(1.5), depth: inches(7.25), runsPast: 'sides', material: 'pine' },
    platform: { thickness: inches(0.5), material: 'plywood' },
    cleats: { below: inches(4), width: inches(1.5), depth: inches(1.5), runsPast: 'sides' },
    skin: null,
    pivot: { height: inches(14), fromFace: inches(3), fromWall: inches(9), aboveEdge: inches(4) },
    legs: {
      where: 'beside',
      length: inches(11),
      section: inches(2),
      fromEnd: inches(6),
      fromSide: inches(3),
    },
    ceiling: inches(96),
    wallBoard: { thickness: 0, height: 0 },
    beside: { left: null, right: null },
    ...changes,
  };
}
