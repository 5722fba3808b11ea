import type { Part } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { entryAt, pick } from '../list/at.ts';
import { isSingle } from './place/body.ts';
import type { Placement } from './place/place.ts';
import type { SolvedNetwork } from './solve/solveAll.ts';

/** The solved box of a part; where it came out as before, or as it is in the design, the same object. */
export function solvedBox(part: Part, { network, solved }: SolvedNetwork, last: Box | undefined): Box {
  const along = (axis: 'x' | 'y') => {
    const i = network.ofPart[axis].get(part.id);
    if (i === undefined) return undefined;
    return entryAt(pick(solved, i).placed, pick(network.components, i).index.get(part.id));
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

/** The boxes of parts with those of strips as long as their ends reach; the same as before where none has changed. */
export function boxesToEnds(
  solved: ReadonlyMap<string, Box>,
  { placed }: Placement,
  last: ReadonlyMap<string, Box> | undefined,
): ReadonlyMap<string, Box> {
  const brought = new Map<string, Box>();
  for (const { from, placings, unstopped } of placed) {
    const laid = unstopped && isSingle(from.part) ? placings[0]?.laid : undefined;
    if (!laid) continue;
    const before = last?.get(laid.id);
    brought.set(laid.id, before && sameBox(before, laid.box) ? before : laid.box);
  }
  if (brought.size === 0) return solved;
  const now = withBoxes(solved, brought);
  return last?.size === now.size && [...now].every(([id, box]) => last.get(id) === box) ? last : now;
}

/** Boxes with some of them exchanged, in their order; a drag makes them in each step. */
export function withBoxes(
  boxes: ReadonlyMap<string, Box>,
  exchanged: ReadonlyMap<string, Box>,
): ReadonlyMap<string, Box> {
  if (exchanged.size === 0) return boxes;
  const now = new Map<string, Box>();
  boxes.forEach((box, id) => {
    now.set(id, exchanged.get(id) ?? box);
  });
  return now;
}

const sameBox = (a: Box, b: Box): boolean => a.x === b.x && a.y === b.y && a.w === b.w && a.h === b.h;
