import { describe, expect, it } from 'vitest';
import { neighborsOf } from '../../src/geometry/meeting.ts';
import { boxesMeet } from '../../src/geometry/region.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { chanceOf } from '../chance.ts';

describe('boxes near a box', () => {
  it('are those that one by one are found to be, in rising order', () => {
    const chance = chanceOf(5);
    const boxes = Array.from({ length: 120 }, (): Box | null =>
      chance() < 0.1 ? null : { x: 100 * chance(), y: 100 * chance(), w: 9 * chance(), h: 9 * chance() },
    );
    const find = neighborsOf(boxes, 3);
    boxes.forEach((box, i) => {
      const grown = box && { x: box.x - 3, y: box.y - 3, w: box.w + 6, h: box.h + 6 };
      const one = boxes.flatMap((other, k) =>
        k !== i && grown && other && boxesMeet(grown, other) ? [k] : [],
      );
      expect(find[i]).toEqual(one);
    });
  });

  it('reach as far to the right and up as to the left and down', () => {
    const at = (x: number, y: number): Box => ({ x, y, w: 10, h: 10 });
    const boxes = [at(0, 0), at(29, 0), at(-29, 0), at(0, 29), at(0, -29), at(31, 0), at(0, 31), null];
    const find = neighborsOf(boxes, 20);
    expect(find[0]).toEqual([1, 2, 3, 4]);
    expect(find[7]).toEqual([]);
  });
});
