import { momentAt } from '../../../src/load/moment.ts';

import { sampleBed } from '../../bed/sample.ts';
import { type Row, type Section, WORKED } from '../table.ts';

/** Mass in kg, height of the leaf in mm, degrees from upright, and m g (h/2) sin a worked by hand in N m. */
const LEAVES: readonly [number, number, number, number][] = [
  [20, 2000, 0, 0],
  [20, 2000, 30, 98.0665],
  [20, 2000, 90, 196.133],
  [12.5, 1600, 45, 69.34348],
  [7, 900, 60, 26.75235],
];

function rows(): Row[] {
  const bed = sampleBed();
  const { aboveEdge, fromFace } = bed.pivot;
  return LEAVES.map(([mass, height, angle, expected]): Row => {
    // Hinged at its foot: the leaf's middle stands half its height over the pivot and in line with it.
    const center = { part: 'leaf', mass, x: 0, y: aboveEdge + height / 2, z: -fromFace };
    return {
      check: `even leaf of ${mass} kg, ${height} mm high, ${angle} degrees from upright: moment, N m`,
      source: `statics: m g (h/2) sin a; ${WORKED}`,
      expected,
      found: momentAt(bed, [center], angle),
      tolerance: 1e-4,
    };
  });
}

export const lifting: Section = { number: 11, title: 'Lifting: statics of a leaf', rows };
