import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { layersOf } from '../../src/output/packet/pages/layers.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf } from '../plan/starters.ts';

const box = fc.record({
  x: fc.integer({ min: 0, max: 60 }),
  y: fc.integer({ min: 0, max: 60 }),
  w: fc.integer({ min: 10, max: 60 }),
  h: fc.integer({ min: 10, max: 60 }),
});
const heights = fc.record({ low: fc.integer({ min: 0, max: 4 }), thick: fc.integer({ min: 1, max: 2 }) });

describe('layers of a face', () => {
  it('hold each part one above the highest of those that lie under it, against a count of longest ways', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(box, heights), { maxLength: 12 }), (all) => {
        const solids = all.map(
          ([own, { low, thick }], i): Solid => ({
            ...{ part: `p${i}`, kind: 'strip', region: regionOfBox(own), z0: low, z1: low + thick },
            ...{ stock: null, finish: null, on: 'rim' },
          }),
        );
        const isUnder = (a: number, b: number) => {
          const [[p, { low, thick }], [q, other]] = [all[a]!, all[b]!];
          const across = Math.min(p.x + p.w, q.x + q.w) - Math.max(p.x, q.x);
          const up = Math.min(p.y + p.h, q.y + q.h) - Math.max(p.y, q.y);
          return low + thick <= other.low && across > 0 && up > 0 && across * up > 1;
        };
        const longest = (b: number): number =>
          Math.max(0, ...all.map((_, a) => (isUnder(a, b) ? longest(a) + 1 : 0)));
        const layers = layersOf(solids);
        expect(layers.flat()).toHaveLength(all.length);
        layers.forEach((layer, i) => {
          for (const { part } of layer) expect(longest(Number(part.slice(1)))).toBe(i);
        });
      }),
    );
  });

  it('are drawn where parts cover each other: names that the elevation has no place for stand there', () => {
    const pages = packetPages(planOf('harbor-ticket-kiosk'));
    const told = (title: string) =>
      pages
        .filter(({ drawing }) => drawing.title === title)
        .flatMap(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item.text));
    const layers = told(EN.titles.layers);
    expect(layers).toEqual(expect.arrayContaining([expect.stringMatching(/^Layer 1 of 3/)]));
    expect(layers).toEqual(expect.arrayContaining(['Left door', 'Left door frame', 'Right door']));
  });
});
