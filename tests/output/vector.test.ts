import { DOMParser } from '@xmldom/xmldom';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { layer, line, rectangle, shape, text } from '../../src/drawing/items.ts';
import { subtract } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { archedLoop, ellipseRing } from '../../src/geometry/figures.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import { pathOfBox, pathOfRegion } from '../../src/geometry/path.ts';
import { regionOfRing } from '../../src/geometry/region.ts';
import { signedArea } from '../../src/geometry/ring.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { dxfOf } from '../../src/output/dxf/dxf.ts';
import { svgOf } from '../../src/output/svg/svg.ts';
import { type Vertex, walked } from './bows.ts';
import { letteredLine } from './letters.ts';

const sign = letteredLine('SHOW 36&', 120, { x: 10, y: 10 });
const { width } = sign;
const glyphs = sign.glyphs.filter((g) => g.character !== ' ');
const height = 140;
const drawing: Drawing = {
  width: width + 20,
  height,
  title: 'Sign <1> & "friends"',
  items: [
    layer(
      'Letters, cut',
      glyphs.map((g) => shape(g.path, { stroke: '#000000', width: 0.1 })),
    ),
  ],
};

function farthest(points: readonly Point[], ring: readonly Point[]): number {
  return Math.max(
    ...points.map((p) =>
      Math.min(...ring.map((a, i) => distanceToSegment(p, a, ring[(i + 1) % ring.length] ?? a))),
    ),
  );
}

interface Polyline {
  type: string;
  layer: string;
  shape?: boolean;
  vertices: Vertex[];
}

const entitiesOf = (dxf: string) => (new DxfParser().parseSync(dxf)?.entities ?? []) as unknown as Polyline[];

describe('DXF read back by a second library', () => {
  const rings = glyphs.flatMap((g) => ringsOfPath(g.path, 0.0005));
  const polylines = entitiesOf(dxfOf(drawing));

  it('holds every outline, closed, within 0.01 mm', () => {
    expect(polylines).toHaveLength(rings.length);
    polylines.forEach((polyline, i) => {
      const ring = rings[i]!;
      expect(polyline.type).toBe('POLYLINE');
      expect(polyline.shape).toBe(true);
      const outline = walked(polyline.vertices);
      expect(farthest(ring, outline)).toBeLessThan(0.01);
      expect(farthest(outline, ring)).toBeLessThan(0.01);
      expect(Math.sign(signedArea(outline))).toBe(Math.sign(signedArea(ring)));
    });
  });

  it('keeps layers under names that release 12 allows', () => {
    expect(new Set(polylines.map((p) => p.layer))).toEqual(new Set(['LETTERS_CUT']));
  });

  it('says in its comments which name a layer had, with codes as readers of DXF write them', () => {
    const one = line({ x: 0, y: 0 }, { x: 5, y: 0 }, { stroke: '#000000', width: 0.1 });
    const names = ['Left door', 'Größe', 'Дверь', '售票处'];
    const dxf = dxfOf({ ...drawing, items: names.map((name) => layer(name, [one])) });
    expect(entitiesOf(dxf).map((e) => e.layer)).toEqual(['LEFT_DOOR', 'GROSSE', 'NAME', 'NAME_2']);
    const told = [...dxf.matchAll(/^999\nLayer (\S+) is named: (.*)$/gm)].map(([, became, code = '']) => [
      became,
      code.replace(/\\U\+([0-9A-F]{4})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16))),
    ]);
    expect(told).toEqual([
      ['GROSSE', 'Größe'],
      ['NAME', 'Дверь'],
      ['NAME_2', '售票处'],
    ]);
  });

  it('keeps layers apart whose names differ only in what release 12 cannot write', () => {
    const one = line({ x: 0, y: 0 }, { x: 1, y: 1 });
    const dxf = dxfOf({ ...drawing, items: [layer('a b', [one]), layer('a,b', [one]), one] });
    expect(entitiesOf(dxf).map((e) => e.layer)).toEqual(['A_B', 'A_B_2', '0']);
  });

  it('cuts off what a clip cuts off', () => {
    const clip = pathOfBox({ x: 0, y: 0, w: 50, h: 50 });
    const filled = rectangle({ x: 30, y: 30, w: 40, h: 40 }, { fill: '#000000' });
    const long = line({ x: -10, y: 20 }, { x: 90, y: 20 });
    const found = entitiesOf(dxfOf({ ...drawing, items: [{ kind: 'group', clip, items: [filled, long] }] }));
    const box = found[0]!.vertices;
    expect([Math.min(...box.map((p) => p.x)), Math.max(...box.map((p) => p.x))]).toEqual([30, 50]);
    expect(found[1]!.vertices.map((p) => p.x)).toEqual([0, 50]);
  });

  it('writes arcs as arcs: a board with a round hole under a half-round head', () => {
    const board = subtract(
      regionOfRing(ringOfLoop(archedLoop({ x: 0, y: 0, w: 400, h: 500 }, 200))),
      regionOfRing(ellipseRing({ x: 150, y: 200, w: 100, h: 100 })),
    );
    const [outer, hole] = entitiesOf(dxfOf({ ...drawing, items: [shape(pathOfRegion(board), {})] }));
    expect(outer?.vertices).toHaveLength(4);
    // A half circle has the bulge 1.
    expect(outer?.vertices.map((v) => Math.round((v.bulge ?? 0) * 1e4) / 1e4).sort()).toEqual([0, 0, 0, 1]);
    expect(hole?.vertices.length).toBeLessThan(4);
    const net = [outer, hole].reduce((sum, e) => sum + signedArea(walked(e?.vertices ?? [], 2000)), 0);
    expect(net).toBeCloseTo(400 * 300 + (Math.PI * 200 * 200) / 2 - Math.PI * 50 * 50, 0);
    const svg = svgOf({ ...drawing, items: [shape(pathOfRegion(board), {})] });
    const [, d = ''] = / d="([^"]*)"/.exec(svg) ?? [];
    // As SVG has them: radius twice, then flags, then where to. y points down, so that a turn to the left is flag 0.
    expect(d).toMatch(/A200 200 0 0 0 0 /);
    expect(d.match(/[LA]/g)?.length).toBeLessThan(8);
  });

  it('writes text in plain ASCII', () => {
    const dxf = dxfOf({ ...drawing, title: 'Größe', items: [text({ x: 1, y: 2 }, 'äβ\n0\nLINE')] });
    expect(/^[\n -~]*$/.test(dxf)).toBe(true);
    expect(entitiesOf(dxf)).toHaveLength(1);
  });
});

describe('SVG read back by a second library', () => {
  const svg = svgOf(drawing);
  const document = new DOMParser().parseFromString(svg, 'image/svg+xml');

  it('holds every outline within 0.01 mm, y turned over', () => {
    const paths = [...document.getElementsByTagName('path')];
    expect(paths).toHaveLength(glyphs.length);
    paths.forEach((element, i) => {
      const numbers = (element.getAttribute('d') ?? '').match(/-?\d+(\.\d+)?/g)!.map(Number);
      const expected = glyphs[i]!.path.flatMap((c) => {
        if (c.op === 'Z') return [];
        const end = [c.x, height - c.y];
        return c.op === 'C' ? [c.x1, height - c.y1, c.x2, height - c.y2, ...end] : end;
      });
      expect(numbers).toHaveLength(expected.length);
      const worst = Math.max(...numbers.map((n, k) => Math.abs(n - expected[k]!)));
      expect(worst).toBeLessThan(0.01);
    });
  });

  it('escapes names and texts and keeps the layer', () => {
    expect(document.getElementsByTagName('title')[0]?.textContent).toBe('Sign <1> & "friends"');
    expect(document.getElementsByTagName('g')[0]?.getAttribute('data-layer')).toBe('Letters, cut');
    const hostile = svgOf({ ...drawing, items: [text({ x: 0, y: 0 }, '</text><script>\u0000\u0007 & "x"')] });
    const parsed = new DOMParser().parseFromString(hostile, 'image/svg+xml');
    expect(parsed.getElementsByTagName('script')).toHaveLength(0);
    expect(parsed.getElementsByTagName('text')[0]?.textContent).toBe('</text><script>   & "x"');
  });

  it('stands text upright at its place', () => {
    const turned = svgOf({ ...drawing, items: [text({ x: 30, y: 40 }, 'up', { angle: 90 })] });
    expect(turned).toContain('transform="matrix(0 -1 1 0 30 100)"');
  });

  it('names the typeface of the sheets, and what every program has in its place (SVG 2, 11.3: a generic family last)', () => {
    expect(document.documentElement?.getAttribute('font-family')).toMatch(/^Barlow,.*, sans-serif$/);
  });
});
