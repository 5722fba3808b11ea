import { describe, expect, it } from 'vitest';
import type { DrawItem } from '../../src/drawing/drawing.ts';
import { seenFrom } from '../../src/output/room/eye.ts';
import { roomDrawing } from '../../src/output/room/room.ts';
import { drawnBlock, uprightBlock } from '../../src/output/room/solidBox.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

const EYE = { x: 500, y: 1570, out: 6000 };

describe('what is seen of a room', () => {
  it('is in true size on the wall, and larger by similar triangles before it (Alberti, De pictura; from memory)', () => {
    const see = seenFrom(EYE);
    expect(see({ x: -700, y: 2440, out: 0 })).toEqual({ x: -700, y: 2440 });
    // Halfway to the eye everything is twice as far from the line of sight.
    expect(see({ x: 700, y: 1570 + 150, out: 3000 })).toEqual({ x: 500 + 2 * 200, y: 1570 + 2 * 150 });
    // All that leads away from the wall leads to the point before the eye.
    for (const out of [100, 2000, 4000, 5500]) {
      const p = see({ x: 1500, y: 0, out });
      expect((p.x - 500) / (p.y - 1570)).toBeCloseTo(1000 / -1570, 12);
    }
  });

  it('of a block are the sides that look to the eye: the front and, beside and below it, two more', () => {
    const sides = (x: number, y: number) =>
      drawnBlock(uprightBlock({ x, y, out: 0 }, { x: x + 100, y: y + 100, out: 100 }, '#808080'), EYE).length;
    expect([sides(450, 1520), sides(1000, 1520), sides(450, 0), sides(1000, 0), sides(-900, 2000)]).toEqual([
      1, 2, 2, 3, 3,
    ]);
  });
});

const panelItems = (item: DrawItem | undefined) => (item?.kind === 'group' ? item.items : []);

/** The room as it is drawn at one angle. */
const panelsOf = (items: readonly DrawItem[]) =>
  items.flatMap((item) => (item.kind === 'group' ? [item] : [])).filter(({ move }) => move !== undefined);

describe('the bed in its room', () => {
  it.each(STARTERS)('%s: stands in all three positions, its ceiling and floor in true size', (id) => {
    const plan = planOf(id);
    const { width, items } = roomDrawing(plan);
    const panels = panelsOf(items);
    expect(panels).toHaveLength(3);
    expect(new Set(panels.map(({ move }) => move?.y)).size).toBe(1);
    expect(width).toBeGreaterThan(3 * plan.face.width);
    // The face half way down, by turning a corner about the pivot as a complex number and by similar triangles.
    const { bed, fold } = { ...plan.design, fold: plan.fold };
    const [, half] = panels;
    const [inside] = panelItems(half);
    const border = inside?.kind === 'group' ? inside.items.at(-2) : undefined;
    const corners = border?.kind === 'path' ? border.path.flatMap((c) => (c.op === 'Z' ? [] : [c])) : [];
    const eye = { x: plan.face.width / 2, y: 1570, out: Math.max(6000, fold.floorSpace + 4500) };
    const expected = [0, plan.face.height].flatMap((y) =>
      (y === 0 ? [0, plan.face.width] : [plan.face.width, 0]).map((x) => {
        const [up, out] = [y - bed.pivot.aboveEdge, bed.pivot.fromFace];
        const [from, high] = [
          bed.pivot.fromWall + (up + out) * Math.SQRT1_2,
          bed.pivot.height + (up - out) * Math.SQRT1_2,
        ];
        const k = eye.out / (eye.out - from);
        return [eye.x + (x - eye.x) * k, eye.y + (high - eye.y) * k];
      }),
    );
    expect(corners).toHaveLength(4);
    corners.forEach((corner, i) => {
      expect(corner.x).toBeCloseTo(expected[i]?.[0] ?? Number.NaN, 6);
      expect(corner.y).toBeCloseTo(expected[i]?.[1] ?? Number.NaN, 6);
    });
  });
});
