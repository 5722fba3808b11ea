import fc from 'fast-check';
import { expect, it } from 'vitest';
import { layer, shape } from '../../src/drawing/items.ts';
import { pathOfPolyline } from '../../src/geometry/path.ts';
import { intersectSegments } from '../../src/geometry/segment.ts';
import { hasInk, inkInside, inkOf } from '../../src/patterns/ink.ts';

const at = fc.record({ x: fc.integer({ min: -90, max: 400 }), y: fc.integer({ min: -90, max: 400 }) });
const box = fc.record({
  x: fc.integer({ min: -100, max: 400 }),
  y: fc.integer({ min: -100, max: 400 }),
  w: fc.integer({ min: 1, max: 200 }),
  h: fc.integer({ min: 1, max: 200 }),
});

it('finds every line that a page shows, and no other (twin: each line against the four sides)', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(at, at), { minLength: 1, maxLength: 25 }), box, (lines, page) => {
      const items = lines.map((line) => shape(pathOfPolyline(line), { stroke: '#000000', width: 0.2 }));
      const ink = inkOf({ width: 400, height: 400, title: '', items: [layer('letters', items)] });
      const { x, y, w, h } = page;
      const inside = (p: { x: number; y: number }) => p.x >= x && p.x <= x + w && p.y >= y && p.y <= y + h;
      const corners = [
        { x, y },
        { x: x + w, y },
        { x: x + w, y: y + h },
        { x, y: y + h },
      ];
      const shows = lines.filter(
        ([a, b]) =>
          inside(a) ||
          inside(b) ||
          corners.some((from, i) => intersectSegments(a, b, from, corners[(i + 1) % 4] ?? from) !== null),
      );
      expect(inkInside(ink, page).segments).toHaveLength(shows.length);
      expect(hasInk(ink, page)).toBe(shows.length > 0);
    }),
  );
});
