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
  const brought = placed.flatMap(({ from, placings, unstopped }): [string, Box][] => {
    const laid = unstopped && isSingle(from.part) ? placings[0]?.laid : undefined;
    return laid ? [[laid.id, laid.box]] : [];
  });
  if (brought.length === 0) return solved;
  const now = new Map([...solved, ...brought]);
  for (const [id, box] of brought) {
    const before = last?.get(id);
    if (before && sameBox(before, box)) now.set(id, before);
  }
  return last?.size === now.size && [...now].every(([id, box]) => last.get(id) === box) ? last : now;
}

const sameBox = (a: Box, b: Box): boolean => a.x === b.x && a.y === b.y && a.w === b.w && a.h === b.h;
