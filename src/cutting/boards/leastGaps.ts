import { at, pick, real, whole } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { leftPoint, rightPoint } from './ends.ts';
import type { Net } from './net.ts';

/**
 * A bound on the gaps of rows: in any row all ends but the two outer ones are paired. The least pairing of
 * points on a line, two of them left out, takes one walk along the line; that pieces hang together, and whose
 * two ends are whose, is not asked.
 *
 * @returns a function of how many pieces there are of each shape
 */
export function leastGapsOf({ ways, waysOf }: Net): (counts: readonly number[]) => Mm {
  const ends = waysOf
    .flatMap((list, shape) => {
      const { left, right } = pick(ways, pick(list, 0)).ends;
      return [
        { shape, ...leftPoint(left) },
        { shape, ...rightPoint(right) },
      ];
    })
    .sort((a, b) => a.slant - b.slant);
  const shapes = Int32Array.from(ends, (e) => e.shape);
  const shares = Float64Array.from(ends, (e) => e.share);
  const slants = Float64Array.from(ends, (e) => e.slant);
  return (counts) => {
    // Least cost so far by how many ends are left out and whether one waits for its partner.
    let none = 0;
    let noneOpen = Infinity;
    let one = Infinity;
    let oneOpen = Infinity;
    let two = Infinity;
    let twoOpen = Infinity;
    let before = 0;
    for (let e = 0; e < shapes.length; e++) {
      const n = at(counts, whole(shapes, e));
      if (n === 0) continue;
      const far = real(slants, e) - before;
      noneOpen += far;
      oneOpen += far;
      twoOpen += far;
      before = real(slants, e);
      const share = real(shares, e);
      for (let k = 0; k < n; k++) {
        const nextTwo = Math.min(twoOpen + share, one);
        const nextTwoOpen = Math.min(two + share, oneOpen);
        const nextOne = Math.min(oneOpen + share, none);
        const nextOneOpen = Math.min(one + share, noneOpen);
        const nextNone = noneOpen + share;
        noneOpen = none + share;
        none = nextNone;
        one = nextOne;
        oneOpen = nextOneOpen;
        two = nextTwo;
        twoOpen = nextTwoOpen;
      }
    }
    return two;
  };
}
