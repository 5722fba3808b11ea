import { expect, it } from 'vitest';
import { grownBox } from '../../src/geometry/box.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { type Occupancy, occupancyOf } from '../../src/patterns/occupancy.ts';
import { freePlace } from '../../src/patterns/place.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';

const RUNS = runs(150);
const PAGE = { x: 5, y: -3, w: 120, h: 90 };

/** Every place in turn, weighed by boxes: what crosses the inside, and four times what lies along the border. */
function plainly(room: Box, size: { w: number; h: number }, taken: Occupancy) {
  const all: { box: Box; order: number[] }[] = [];
  for (let up = 0; up <= room.h - size.h; up += 3) {
    for (let left = 0; left <= room.w - size.w; left += 3) {
      const box = { x: room.x + room.w - size.w - left, y: room.y + up, ...size };
      const inside = taken.count(grownBox(box, -1.5));
      const border = taken.count(grownBox(box, 1.5)) - inside;
      all.push({ box, order: [inside + 4 * border, left + up, up] });
    }
  }
  const by = (a: readonly number[], b: readonly number[]): number =>
    a.map((own, i) => own - (b[i] ?? 0)).find((off) => off !== 0) ?? 0;
  return all.sort((a, b) => by(a.order, b.order))[0] ?? null;
}

it('finds the place that covers least and lies nearest to the corner, as a plain search of all places does', () => {
  const chance = chanceOf(11);
  const between = (low: number, high: number) => low + (high - low) * chance();
  const spot = () => ({ x: between(0, 130), y: between(-10, 90) });
  const line = () => [spot(), spot()] as const;
  const boxOf = (most: number): Box => ({ ...spot(), w: between(1, most), h: between(1, most) });
  for (let run = 0; run < RUNS; run++) {
    const many = Math.floor(between(0, 6));
    const ink = {
      segments: Array.from({ length: many }, line),
      light: Array.from({ length: many }, line),
      besides: [line()],
      corners: [spot()],
      areas: [],
      extents: [],
      texts: [],
      box: PAGE,
      main: PAGE,
    };
    const blocked = Array.from({ length: many }, () => boxOf(30));
    const taken = blocked.reduce((free, box) => free.blocking(box), occupancyOf(PAGE, ink, [], 2));
    const room = grownBox(PAGE, -3);
    const size = { w: between(5, 130), h: between(5, 60) };
    const found = freePlace(room, size, taken);
    const plain = plainly(room, size, occupancyOf(PAGE, ink, blocked, 2));
    expect(found).toEqual(plain && { box: plain.box, covered: plain.order[0] });
  }
});
