import { describe, expect, it } from 'vitest';
import { lightOf } from '../../src/drawing/color.ts';
import { arrisesOf } from '../../src/finish/lit/arris.ts';
import { litColor } from '../../src/finish/lit/lambert.ts';
import { bandsOf } from '../../src/finish/lit/molding.ts';
import { gleamOf } from '../../src/finish/sheen.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { MoldedLength } from '../../src/joinery/piece.ts';
import { pick } from '../../src/list/at.ts';
import type { ShapedStock } from '../../src/materials/types.ts';
import { planOf } from '../plan/starters.ts';

const LIGHT = { azimuth: 90, altitude: 30 };
const GRAY = '#808080';
const OUT = { x: 0, y: 0, z: 1 };

describe("light on a surface, by Lambert's cosine law (Photometria, 1760; from memory)", () => {
  const shareOf = (turn: number, altitude = LIGHT.altitude) => {
    const tilt = (turn * Math.PI) / 180;
    const color = litColor(GRAY, { x: 0, y: Math.sin(tilt), z: Math.cos(tilt) }, { azimuth: 90, altitude });
    return lightOf(color).r / lightOf(GRAY).r;
  };

  it('leaves the color of what looks straight out of the face', () => {
    for (const altitude of [10, 45, 80])
      expect(litColor('#2f7a94', OUT, { azimuth: 7, altitude })).toBe('#2f7a94');
  });

  it('goes with the cosine between normal and light, over what comes from all around', () => {
    // Straight at a lamp 60 degrees up: 1 / sin 60 of the face's own; 60 degrees off it and more: none of the lamp's.
    const ambient = shareOf(-90, 60);
    expect(ambient).toBeCloseTo(0.5, 1);
    for (const turn of [-20, 0, 10, 30, 50]) {
      const cosine = Math.cos(((30 - turn) * Math.PI) / 180);
      expect(shareOf(turn, 60)).toBeCloseTo(0.5 + (0.5 * cosine) / Math.sin(Math.PI / 3), 1);
    }
  });
});

describe('the flats of a molding', () => {
  const half = planOf('harbor-ticket-kiosk').tables.stocks.find(
    (stock): stock is ShapedStock => stock.id === 'half-round-half',
  );
  const length = (turn: number): MoldedLength => ({
    start: { x: 100, y: 50 },
    along: { x: Math.cos(turn), y: Math.sin(turn) },
    right: 6.35,
    onEdge: false,
    region: regionOfBox({ x: 100, y: 43.65, w: 300, h: 12.7 }),
  });

  it('look out along the radii of a half-round, from its right side to its left one', () => {
    if (!half) throw new Error('no half-round among the stocks');
    const bands = bandsOf(length(0), half);
    expect(bands.length).toBeGreaterThan(20);
    for (const { ring, normal } of bands) {
      // A circle of 1/2 in about the middle line: the normal of a chord leads through its middle.
      const near = pick(ring, 0).y - 50;
      expect(Math.hypot(normal.x, normal.y, normal.z)).toBeCloseTo(1, 9);
      expect(near / 6.35).toBeLessThan(normal.y + 0.08);
      expect(near / 6.35).toBeGreaterThan(normal.y - 0.16);
      expect([pick(ring, 2).x, pick(ring, 3).x]).toEqual([400, 400]);
    }
    const sides = bands.map(({ normal }) => normal.y);
    expect(sides).toEqual([...sides].sort((a, b) => a - b));
  });

  it('turn with the molding', () => {
    if (!half) throw new Error('no half-round among the stocks');
    const [level, turned] = [bandsOf(length(0), half), bandsOf(length(Math.PI / 3), half)];
    level.forEach(({ normal }, i) => {
      expect(Math.hypot(pick(turned, i).normal.x, pick(turned, i).normal.y)).toBeCloseTo(
        Math.abs(normal.y),
        9,
      );
      expect(pick(turned, i).normal.z).toBeCloseTo(normal.z, 9);
    });
  });
});

describe('eased edges and gleams', () => {
  it('are lighter toward the light and darker away from it', () => {
    const arrises = arrisesOf(regionOfBox({ x: 0, y: 0, w: 100, h: 50 }));
    expect(arrises).toHaveLength(4);
    const at = (y: number) => {
      const found = arrises.find(({ path }) => path.every((c) => c.op !== 'Z' && c.y === y));
      return lightOf(litColor(GRAY, found?.normal ?? OUT, LIGHT)).r;
    };
    expect(at(50)).toBeGreaterThan(lightOf(GRAY).r);
    expect(at(0)).toBeLessThan(lightOf(GRAY).r);
  });

  it('gleam most in their middle and not at their ends', () => {
    const stops = gleamOf('gloss', LIGHT, { x: 0, y: 0, w: 1000, h: 2000 })?.stops ?? [];
    expect(stops).toHaveLength(25);
    expect(stops[12]?.alpha).toBe(Math.max(...stops.map(({ alpha }) => alpha)));
    stops.forEach(({ alpha }, i) => {
      expect(alpha).toBeCloseTo(pick(stops, 24 - i).alpha, 12);
    });
    expect(stops[0]?.alpha).toBeCloseTo(0, 12);
  });
});
