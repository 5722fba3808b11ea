import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { groupPieces } from '../../src/joinery/label.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import { inches } from '../../src/measure/units.ts';
import { boxStrip, flat, frame, panel, pieceOf, piecesOf, plan, shaped, sheet, strip } from './make.ts';

const labels = (parts: readonly LaidPart[], setup = {}) =>
  Object.fromEntries(plan(parts, setup).pieces.map((piece) => [piece.id, piece.label]));
const mitered = (id: string, y: number, start: number, end: number, stock = 'lath') =>
  strip(id, { x: 0, y }, { x: 500, y }, 50, {
    stock,
    ends: { start: { cut: 'miter', angle: start }, end: { cut: 'miter', angle: end } },
  });

describe('labels', () => {
  it('are a letter a stock and numbers from the longest down', () => {
    expect(
      labels([
        panel('door', { x: 0, y: 0, w: 300, h: 500 }),
        boxStrip('b', 0, 600, 200, 20, { stock: 'batten' }),
        boxStrip('c', 0, 700, 400, 50),
        boxStrip('d', 0, 800, 450, 50),
        boxStrip('e', 0, 900, 400, 50),
      ]),
    ).toEqual({ b: 'A1', d: 'B1', c: 'B2', e: 'B2', door: 'C1' });
  });

  it('leave out I and O, and go on after Z', () => {
    const stocks = Array.from({ length: 26 }, (_, i) => flat(`s${String(i).padStart(2, '0')}`, 50));
    const parts = stocks.map((stock, i) => boxStrip(stock.id, 0, i * 60, 300, 50, { stock: stock.id }));
    const found = Object.values(labels(parts, { stocks }));
    expect(found.slice(7, 9)).toEqual(['H1', 'J1']);
    expect(found.slice(23)).toEqual(['Z1', 'AA1', 'AB1']);
  });

  it('are shared by pieces that are the same turned end for end', () => {
    const found = labels([mitered('a', 0, 0, 30), mitered('b', 100, -30, 0)]);
    expect(found.a).toBe(found.b);
  });

  it('differ for left and right hands', () => {
    const found = labels([mitered('a', 0, 0, 30), mitered('b', 100, 0, -30)]);
    expect(found.a).not.toBe(found.b);
  });

  it('do not care which way an upright was drawn', () => {
    const found = labels([
      boxStrip('a', 0, 0, 50, 400),
      strip('b', { x: 125, y: 400 }, { x: 125, y: 0 }, 50),
      boxStrip('c', 200, 0, 400, 50),
    ]);
    expect(new Set(Object.values(found)).size).toBe(1);
  });

  it('see a pointed end turned end for end', () => {
    const corner = (x: number) => [
      boxStrip(`stile${x}`, x, 0, 50, 700),
      boxStrip(`sill${x}`, x + 50, 0, 500, 50),
    ];
    const found = labels([
      ...corner(0),
      strip('a', { x: 40, y: 30 }, { x: 400, y: 500 }, 40),
      ...corner(2000),
      strip('b', { x: 2400, y: 500 }, { x: 2040, y: 30 }, 40),
    ]);
    expect(found.a).toBe(found.b);
  });

  it('of molding are shared only one way round, unless its section is the same from both sides', () => {
    const found = labels([mitered('a', 0, 0, 30, 'casing'), mitered('b', 100, -30, 0, 'casing')]);
    expect(found.a).not.toBe(found.b);
    const bead = shaped('bead', 50, {
      section: [
        { x: 0, y: 0 },
        { x: 50, y: 0 },
        { x: 40, y: 15 },
        { x: 10, y: 15 },
      ],
    });
    const both = labels([mitered('a', 0, 0, 30, 'bead'), mitered('b', 100, -30, 0, 'bead')], {
      stocks: [bead],
    });
    expect(both.a).toBe(both.b);
  });

  it('group the pieces in the order of the wood', () => {
    const { pieces } = plan([
      ...Array.from({ length: 11 }, (_, i) => boxStrip(`s${i}`, 0, i * 60, 900 - i * 10, 50)),
      boxStrip('twin', 0, 800, 900, 50),
    ]);
    const groups = groupPieces(pieces);
    expect(groups.map((group) => [group.label, group.quantity])).toEqual([
      ['A1', 2],
      ...Array.from({ length: 10 }, (_, i) => [`A${i + 2}`, 1]),
    ]);
    expect(groups[0]?.pieces.map((piece) => piece.id)).toEqual(['s0', 'twin']);
  });
});

describe('shown lengths', () => {
  const inch = { unit: 'in', fraction: '16' } as const;

  it('of pieces in one span add up to its wood', () => {
    // A rail of 20 in between two stiles, cut in three by two mullions of 1 in: 18 in of wood, 6 each, but
    // the mullions stand off the even places, so that no piece is whole sixteenths.
    const rail = boxStrip('rail', 0, 100, inches(20), 50);
    const mullions = [6.03, 13.06].map((x, i) => boxStrip(`m${i}`, inches(x), 0, inches(1), 400));
    const through = mullions.map((m, i) => ({
      id: `j${i}`,
      parts: ['rail', m.id] as [string, string],
      kind: 'butt' as const,
      through: m.id,
    }));
    const joinery = plan([rail, ...mullions], { measure: inch, joints: through });
    const rails = piecesOf(joinery, 'rail');
    expect(rails.map((piece) => piece.length / 25.4)).toEqual(
      [6.03, 6.03, 5.94].map((l) => expect.closeTo(l, 9)),
    );
    const sixteenths = rails.map((piece) => (piece.shown.length / 25.4) * 16);
    for (const n of sixteenths) expect(n).toBeCloseTo(Math.round(n), 9);
    expect(sixteenths.reduce((sum, n) => sum + n, 0)).toBeCloseTo(18 * 16, 9);
  });

  it('of strips laid between the same mullion add up too', () => {
    const stiles = [0, 10.1, 20.2, 30.3].map((x, i) => boxStrip(`s${i}`, inches(x), 0, inches(1), 500));
    const rails = [1, 11.1, 21.2].map((x, i) => boxStrip(`r${i}`, inches(x), 200, inches(9.1), 40));
    const joinery = plan([...stiles, ...rails], { measure: inch });
    const shown = rails.map((rail) => (pieceOf(joinery, rail.id).shown.length / 25.4) * 16);
    // 3 * 9.1 in = 27.3 in = 436.8 sixteenths, told as 437; each by itself would be 146, in all 438.
    expect(shown.map((n) => Math.round(n)).sort()).toEqual([145, 146, 146]);
    // What is told differently is not one piece in the list.
    expect(new Set(rails.map((rail) => pieceOf(joinery, rail.id).label)).size).toBe(2);
  });

  it('of a piece by itself is rounded by itself', () => {
    const joinery = plan([boxStrip('s', 0, 0, inches(9.1), 50)], { measure: inch });
    expect(pieceOf(joinery, 's').shown.length / 25.4).toBeCloseTo(9.125, 9);
    expect(pieceOf(joinery, 's').length / 25.4).toBeCloseTo(9.1, 9);
  });
});

describe('pieces that are measured in place', () => {
  it('are cut with the allowance, and noted', () => {
    const stile = boxStrip('stile', 0, 0, 50, 400);
    const joinery = plan([stile, boxStrip('rail', 50, 0, 500, 50, { fit: true })]);
    const rail = pieceOf(joinery, 'rail');
    expect(rail).toMatchObject({ length: 512, fit: { inPlace: true, allowance: 12 } });
    expect(rail.ends.map((end) => end.cut)).toEqual(['butt', 'plunge']);
    expect(areaOf(rail.placed)).toBeCloseTo(25000, 6);
    expect(Math.max(...rail.outline.map((p) => p.x))).toBe(512);
    expect(joinery.checks).toEqual([
      {
        code: 'piece.measured-in-place',
        severity: 'note',
        parts: ['rail'],
        at: { x: 300, y: 25 },
        figures: { length_mm: 512 },
      },
    ]);
  });
});

describe('checks on pieces', () => {
  it('flag a miter that the saw cannot be turned to, once a part and at its worst', () => {
    const [check, ...rest] = plan([mitered('a', 0, 55, 60)]).checks;
    expect(rest).toEqual([]);
    expect(check).toMatchObject({ code: 'joint.over-saw', severity: 'warning', parts: ['a'] });
    expect(check?.figures).toEqual({ miter_deg: expect.closeTo(60, 9), most_deg: 50 });
  });

  it('allow a miter that is just what the saw can be turned to', () => {
    const shop = { saw: { miter: 45, bevel: 45 }, fitAllowance: 0 };
    expect(plan([frame('f', { x: 0, y: 0, w: 900, h: 900 }, 50)], { shop }).checks).toEqual([]);
  });

  it('flag a bevel that the saw cannot be tilted to', () => {
    const ends = { start: { cut: 'square' }, end: { cut: 'return' } } as const;
    const laid = strip('a', { x: 0, y: 0 }, { x: 700, y: 0 }, 60, { stock: 'casing', ends });
    const shop = { saw: { miter: 45, bevel: 30 }, fitAllowance: 0 };
    const check = plan([laid], { shop }).checks.find(({ code }) => code === 'joint.bevel-over-saw');
    expect(check?.figures).toEqual({ bevel_deg: 45, most_deg: 30 });
  });

  it('warn of pieces too short to saw, and note those to be clamped', () => {
    const { checks } = plan([
      boxStrip('a', 0, 0, 20, 15),
      boxStrip('b', 0, 100, 140, 50),
      boxStrip('c', 0, 200, 151, 50),
    ]);
    expect(
      checks.map((check) => [check.code, check.severity, check.parts[0], check.figures.length_mm]),
    ).toEqual([
      ['piece.too-short', 'warning', 'a', 20],
      ['piece.too-short', 'note', 'b', 140],
    ]);
  });
});

describe('panels', () => {
  it('taller than wide are told lying down, foot first, with their grain', () => {
    const upright = panel('p', { x: 40, y: 30, w: 300, h: 500 });
    const piece = pieceOf(plan([upright]), 'p');
    expect(piece).toMatchObject({ form: 'sheet', length: 500, width: 300, thickness: 6, grain: 'along' });
    const across = { ...upright, spec: { ...upright.spec, grain: 'across' as const } };
    expect(pieceOf(plan([across]), 'p').grain).toBe('across');
    expect(piece.ends.map((end) => end.cut)).toEqual(['square', 'square']);
  });

  it('wider than tall keep the way they hang', () => {
    const piece = pieceOf(plan([panel('p', { x: 0, y: 0, w: 500, h: 300 })]), 'p');
    expect(piece).toMatchObject({ length: 500, width: 300, grain: 'across' });
    expect(Math.max(...piece.outline.map((p) => p.x))).toBe(500);
  });

  it('of sheet without grain turn as they like', () => {
    const laid = panel('p', { x: 0, y: 0, w: 500, h: 300 }, { stock: 'mdf' });
    expect(pieceOf(plan([laid], { stocks: [sheet('mdf', false)] }), 'p').grain).toBe('any');
  });

  it('carry their openings, turned with them', () => {
    const box = { x: 100, y: 100, w: 300, h: 500 };
    const outer = [
      { x: 100, y: 100 },
      { x: 400, y: 100 },
      { x: 400, y: 600 },
      { x: 100, y: 600 },
    ];
    // An opening low on the left of the panel: 20 to 120 across, 30 to 80 up.
    const hole = [
      { x: 120, y: 130 },
      { x: 120, y: 180 },
      { x: 220, y: 180 },
      { x: 220, y: 130 },
    ];
    const piece = pieceOf(plan([panel('p', box, { region: [{ outer, holes: [hole] }] })]), 'p');
    const xs = piece.holes[0]?.map((p) => p.x) ?? [];
    const ys = piece.holes[0]?.map((p) => p.y) ?? [];
    // Lying down: 30 to 80 from its foot, and 20 to 120 from its left edge, which is up (300 wide).
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([30, 80]);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([180, 280]);
  });

  it('with a sawn outline say so', () => {
    const box = { x: 0, y: 0, w: 300, h: 300 };
    const region = [{ outer: ellipseRing(box), holes: [] }];
    const piece = pieceOf(plan([panel('p', box, { region })]), 'p');
    expect(piece.ends.map((end) => end.cut)).toEqual(['sawn', 'sawn']);
    expect(piece.length).toBeCloseTo(300, 1);
  });

  it('of two hands are two pieces', () => {
    const wedge = (x: number, mirrored: boolean) => {
      const ring = [
        { x, y: 0 },
        { x: x + 300, y: 0 },
        { x: mirrored ? x + 300 : x, y: 200 },
      ];
      return panel(`p${x}`, { x, y: 0, w: 300, h: 200 }, { region: [{ outer: ring, holes: [] }] });
    };
    const found = labels([wedge(0, false), wedge(400, true), wedge(800, false)]);
    expect(found.p0).toBe(found.p800);
    expect(found.p0).not.toBe(found.p400);
  });
});

describe('solids', () => {
  it('are given for every part, in order, what is painted without thickness', () => {
    const painted: LaidPart = {
      ...panel('pane', { x: 0, y: 0, w: 100, h: 100 }),
      kind: 'painted',
      spec: { shape: { form: 'rectangle' } },
      stock: null,
      z0: 6,
      z1: 6,
    };
    const fitting: LaidPart = {
      ...panel('lamp', { x: 200, y: 0, w: 100, h: 100 }),
      kind: 'fitting',
      spec: { shape: { form: 'rectangle' }, depth: 40, mass_kg: 1, price: 5, color: '#000000' },
      stock: null,
      z0: 6,
      z1: 46,
    };
    const { solids, pieces } = plan([painted, boxStrip('s', 0, 200, 300, 50), fitting]);
    expect(solids.map(({ part, kind, z0, z1 }) => [part, kind, z0, z1])).toEqual([
      ['pane', 'painted', 6, 6],
      ['s', 'strip', 0, 19],
      ['lamp', 'fitting', 6, 46],
    ]);
    expect(pieces.map((piece) => piece.part)).toEqual(['s']);
  });
});

describe('a strip that its own cuts leave nothing of', () => {
  const ends = { start: { cut: 'miter', angle: 60 }, end: { cut: 'miter', angle: -60 } } as const;
  const short = strip('gone', { x: 0, y: 0 }, { x: 150, y: 0 }, 88.9, { ends });

  it('is an error that names its cuts, and is nothing to fix', () => {
    // Plane geometry: each cut takes 88.9 tan 60 = 154 of its 150 along one edge.
    const joinery = plan([short, boxStrip('stays', 0, 300, 400, 50)]);
    expect(joinery.checks).toContainEqual(
      expect.objectContaining({
        code: 'piece.nothing-left',
        severity: 'error',
        parts: ['gone'],
        figures: {
          length_mm: 150,
          left_deg: expect.closeTo(60, 9),
          left_with: '',
          right_deg: expect.closeTo(60, 9),
          right_with: '',
        },
      }),
    );
    expect([...joinery.gone]).toEqual(['gone']);
    expect(joinery.solids.map(({ part }) => part)).toEqual(['stays']);
    expect(joinery.pieces.map(({ part }) => part)).toEqual(['stays']);
  });

  it('is told of exactly the strips that have no piece, over random cuts', () => {
    const angle = fc.integer({ min: -75, max: 75 });
    fc.assert(
      fc.property(
        angle,
        angle,
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 10, max: 120 }),
        (a, b, long, width) => {
          const cut = { start: { cut: 'miter', angle: a }, end: { cut: 'miter', angle: b } } as const;
          const joinery = plan([strip('s', { x: 0, y: 0 }, { x: long, y: 0 }, width, { ends: cut })]);
          const told = joinery.checks.some(({ code }) => code === 'piece.nothing-left');
          expect(told).toBe(joinery.pieces.length === 0);
          // Both cuts lean the same way: between them the band keeps long - width tan, or nothing.
          if (a > 0 && b === -a) {
            const left = long - width * Math.tan((a * Math.PI) / 180);
            if (Math.abs(left) > 0.01) expect(told).toBe(left < 0);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
