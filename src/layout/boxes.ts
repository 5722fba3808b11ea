import type { Part } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { SolvedNetwork } from './solve/solveAll.ts';

/** The solved box of a part; where it came out as before, or as it is in the design, the same object. */
export function solvedBox(part: Part, { network, solved }: SolvedNetwork, last: Box | undefined): Box {
  const along = (axis: 'x' | 'y') => {
    const i = network.ofPart[axis].get(part.id);
    if (i === undefined) return undefined;
    return solved[i]?.placed[network.components[i]?.index.get(part.id) ?? -1];
  };
  const across = along('x');
  const up = along('y');
  const box = {
    x: across?.start ?? part.box.x,
    y: up?.start ?? part.box.y,
    w: across?.size ?? part.box.w,
    h: up?.size ?? part.box.h,
  };
  if (last && sameBox(last, box)) return last;
  return sameBox(part.box, box) ? part.box : box;
}

const sameBox = (a: Box, b: Box): boolean => a.x === b.x && a.y === b.y && a.w === b.w && a.h === b.h;
