import { describe, expect, it } from 'vitest';
import { newDesign } from '../../../src/design/defaults.ts';
import { shownFrom } from '../../../src/editor/document/shown.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { roomAround } from '../../../src/layout/snap/room.ts';
import { chanceOf } from '../../chance.ts';
import { runs } from '../../runs.ts';

const SIDE = 24;
const { face } = shownFrom(newDesign());
const SQUARE = { ...face, width: SIDE, height: SIDE, box: { x: 0, y: 0, w: SIDE, h: SIDE }, levels: [] };

/** Every rectangle of whole cells with a cell in it that no thing covers: none of them is asked of the room. */
function roomsByCells(p: { x: number; y: number }, boxes: readonly Box[]): Box[] {
  const free = (x: number, y: number) =>
    !boxes.some((b) => x >= b.x && x < b.x + b.w && y >= b.y && y < b.y + b.h);
  const [cx, cy] = [Math.floor(p.x), Math.floor(p.y)];
  const allFree = (x0: number, x1: number, y0: number, y1: number) => {
    for (let x = x0; x <= x1; x++) for (let y = y0; y <= y1; y++) if (!free(x, y)) return false;
    return true;
  };
  const found: Box[] = [];
  for (let x0 = 0; x0 <= cx; x0++)
    for (let x1 = cx; x1 < SIDE; x1++)
      for (let y0 = 0; y0 <= cy; y0++)
        for (let y1 = cy; y1 < SIDE; y1++)
          if (allFree(x0, x1, y0, y1)) found.push({ x: x0, y: y0, w: x1 - x0 + 1, h: y1 - y0 + 1 });
  return found;
}

describe('the free room around a point', () => {
  it('is free, and no rectangle of free cells has it inside: counted out cell by cell', () => {
    for (let seed = 0; seed < runs(12); seed++) {
      const chance = chanceOf(seed);
      const whole = (most: number) => Math.floor(chance() * most);
      const p = { x: whole(SIDE) + 0.5, y: whole(SIDE) + 0.5 };
      const boxes = Array.from({ length: 6 }, () => ({
        x: whole(20),
        y: whole(20),
        w: 1 + whole(6),
        h: 1 + whole(6),
      })).filter((b) => p.x < b.x || p.x > b.x + b.w || p.y < b.y || p.y > b.y + b.h);
      const others = boxes.map((box, i) => ({ id: `${i}`, box }));
      const room = roomAround(p, { others, face: SQUARE });
      const all = roomsByCells(p, boxes);
      const told = `${seed} ${JSON.stringify([p, boxes, room])}`;
      expect(all, told).toContainEqual(room);
      const larger = all.filter(
        (b) =>
          b.w * b.h > room.w * room.h &&
          b.x <= room.x &&
          b.y <= room.y &&
          b.x + b.w >= room.x + room.w &&
          b.y + b.h >= room.y + room.h,
      );
      expect(larger, told).toEqual([]);
    }
  });

  it('ends at the inside of a frame, and at a part that it lies on', () => {
    const outer = { id: 'frame', box: { x: 2, y: 2, w: 20, h: 20 }, inner: { x: 4, y: 4, w: 16, h: 16 } };
    const board = { id: 'board', box: { x: 6, y: 6, w: 8, h: 4 } };
    const others = [outer, board];
    expect(roomAround({ x: 10, y: 8 }, { others, face: SQUARE })).toEqual(board.box);
    expect(roomAround({ x: 10, y: 15 }, { others, face: SQUARE })).toEqual({ x: 4, y: 10, w: 16, h: 10 });
    expect(roomAround({ x: 1, y: 12 }, { others, face: SQUARE })).toEqual({ x: 0, y: 0, w: 2, h: 24 });
  });
});
